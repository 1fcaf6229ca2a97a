/**
 * The clock of a run. It counts seconds since the first cup's parts met and never jumps back. A device has two clocks: the wall clock, which
 * a person or the network may set, and a monotonic one, which starts anew with each page and on some devices stands still while
 * they sleep. Each tick hands both in; what they disagree on is told apart here, and where that cannot be known it is asked.
 */
import { within } from '#core/quantity/domain.ts';

/** Both clocks of the device at one moment. */
export interface ClockSample {
  readonly wall_ms: number;
  readonly mono_ms: number;
  /** Names the life of the page that `mono_ms` counts in; another one: it was reloaded, or the device restarted. */
  readonly page: string;
  /** The screen was kept on and the page in front since the last tick: it cannot have slept. */
  readonly awake: boolean;
}

/** What is kept between ticks, and over a reload. */
export interface ClockState {
  readonly elapsed_s: number;
  readonly sample: ClockSample;
}

export type ClockDoubt =
  /** The wall clock went ahead while nobody watched: slept, or set forward. Counted as time gone by. */
  | { readonly kind: 'slept or set forward'; readonly by_s: number }
  /** The wall clock went back over a reload: at least nothing is counted. */
  | { readonly kind: 'set back while away'; readonly by_s: number };

export interface ClockTick {
  readonly state: ClockState;
  /** To be asked of the maker; null: both clocks agree, or the answer is certain. */
  readonly doubt: ClockDoubt | null;
}

/** Clocks that differ by less than this in one tick agree; drift of quartz is a millionth. */
export const AGREE_s = 2;

export function startClock(sample: ClockSample, elapsed_s = 0): ClockState {
  within('elapsed_s', elapsed_s, -86_400, 864_000, 's');
  return { elapsed_s, sample };
}

/**
 * One tick. In the same page the monotonic clock decides while the page was awake, so setting the wall clock changes nothing; the wall
 * clock decides how long it slept. Over a reload only the wall clock is left. Time never runs backward.
 *
 * @throws RangeError for a reading that is not finite.
 */
export function tickClock(state: ClockState, sample: ClockSample): ClockTick {
  for (const key of ['wall_ms', 'mono_ms'] as const)
    if (!Number.isFinite(sample[key]))
      throw new RangeError(`${key} = ${sample[key]}: allowed any finite value`);
  const wall_s = (sample.wall_ms - state.sample.wall_ms) / 1000;
  const samePage = sample.page === state.sample.page;
  const mono_s = samePage ? Math.max(0, (sample.mono_ms - state.sample.mono_ms) / 1000) : 0;
  const ahead_s = wall_s - mono_s;
  const on = (by_s: number, doubt: ClockDoubt | null = null): ClockTick => ({
    state: { elapsed_s: state.elapsed_s + by_s, sample },
    doubt,
  });
  if (samePage && (sample.awake || Math.abs(ahead_s) < AGREE_s)) return on(mono_s);
  if (ahead_s >= AGREE_s) {
    // a reload of a few seconds is no matter to ask about
    const asks = ahead_s >= ASK_FROM_s;
    return on(wall_s, asks ? { kind: 'slept or set forward', by_s: ahead_s } : null);
  }
  if (samePage) return on(mono_s);
  return ahead_s <= -AGREE_s
    ? on(0, { kind: 'set back while away', by_s: -ahead_s })
    : on(Math.max(0, wall_s));
}

/** Time lost or won that is worth a question. */
export const ASK_FROM_s = 120;

/** The maker's answer to a doubt: the clock had only been set, or the true time away was so long. Never before zero. */
export function correctClock(state: ClockState, by_s: number): ClockState {
  within('by_s', by_s, -86_400, 86_400, 's');
  return { ...state, elapsed_s: state.elapsed_s + by_s };
}
