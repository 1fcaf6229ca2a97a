/**
 * When each step must be done, read from the model: closing times are the safe (5 %) figures.
 *
 * - mix, pour: the cup's pour-now time (core/resin/stage-criteria.ts), and the resin must be spread while the film that is oldest can still
 *   be worked (a wet edge). Mixing closes early enough to still pour.
 * - meld: the working end of the oldest film.
 * - wrap edges: open when the film is down. Edges worked late hold more resin, because less flow budget is left to drain them
 *   (Jeffreys 1930), but what is pushed over the edge comes from the top film and has to close behind the glove, so
 *   they close at the working end of the oldest film and not when it stops levelling.
 * - torch: the last touch after which a 50 mm wave still falls to 1 % (Orchard 1962), or working end, whichever is earlier.
 * - scrape drips: until gel.
 */
import { formatLength, formatPercent, formatTemperature } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import type { TimeRange } from '#core/resin/model.ts';
import { CUP_CRITERIA } from '#core/resin/stage-criteria.ts';
import { TORCH_PITCH_m } from './film-times.ts';
import type { Window } from './plan.ts';

/** Stands for a stage that the film does not reach within 30 days, so that no time is infinite. */
export const NOT_WITHIN_SPAN_s = 30 * 86_400;

export interface FilmLimits {
  /** Number of the cup whose film stops flowing first. */
  readonly cup: number;
  readonly workingEnd: TimeRange | null;
  /** Last touch for marks 50 mm apart; null: they stay whenever they are made. */
  readonly torch: TimeRange | null;
  readonly gel: TimeRange | null;
}

export interface CupLimits {
  readonly number: number;
  readonly pourNow: TimeRange | null;
  /** Emptying and spreading. */
  readonly empty_s: number;
  readonly spread_s: number;
}

/** A window, and the time past which the step does not fit: the middle of a cup's pour-now time, else the safe close. */
export interface Limit {
  readonly window: Window;
  readonly hard_s: number;
}

const never: TimeRange = {
  low_s: NOT_WITHIN_SPAN_s,
  mid_s: NOT_WITHIN_SPAN_s,
  high_s: NOT_WITHIN_SPAN_s,
};

function windowTo(opens_s: number, range: TimeRange, by_s: number, limit: string): Window {
  return {
    opens_s,
    closes_s: range.low_s + by_s,
    closesMid_s: range.mid_s + by_s,
    closesHigh_s: range.high_s + by_s,
    limit,
    basis: 'model',
  };
}

const stops = (film: FilmLimits) => `film of cup ${film.cup} stops flowing`;

const heats = (cup: number, system: System) =>
  `cup ${cup} reaches ${formatTemperature(CUP_CRITERIA.pourNow.temperature_K, system)} or ${formatPercent(CUP_CRITERIA.pourNow.conversion)} cured`;

/** Pouring and spreading a cup: whichever closes first, the cup itself or the oldest film. */
export function pourWindow(opens_s: number, cup: CupLimits, film: FilmLimits, system: System = 'us'): Limit {
  const byCup = cup.pourNow ?? never;
  const byFilm = film.workingEnd ?? never;
  const hard_s = Math.min(byCup.mid_s + cup.spread_s, byFilm.low_s);
  if (byCup.low_s + cup.spread_s <= byFilm.low_s)
    return {
      window: windowTo(opens_s, byCup, cup.spread_s, heats(cup.number, system)),
      hard_s,
    };
  return { window: windowTo(opens_s, byFilm, 0, stops(film)), hard_s };
}

/** Mixing: its cup must still be poured after it. */
export function mixWindow(opens_s: number, cup: CupLimits, film: FilmLimits, system: System = 'us'): Limit {
  const { window, hard_s } = pourWindow(opens_s, cup, film, system);
  const before = cup.empty_s + cup.spread_s;
  return {
    window: {
      ...window,
      closes_s: window.closes_s - before,
      closesMid_s: window.closesMid_s - before,
      closesHigh_s: window.closesHigh_s - before,
    },
    hard_s: hard_s - before,
  };
}

function soft(window: Window): Limit {
  return { window, hard_s: window.closes_s };
}

export function meldWindow(down_s: number, film: FilmLimits): Limit {
  return soft(windowTo(down_s, film.workingEnd ?? never, 0, stops(film)));
}

export function wrapWindow(down_s: number, film: FilmLimits): Limit {
  return soft(windowTo(down_s, film.workingEnd ?? never, 0, stops(film)));
}

export function torchWindow(opens_s: number, film: FilmLimits, system: System = 'us'): Limit {
  const pitch = formatLength(TORCH_PITCH_m, system, { fraction: 2 });
  const working = film.workingEnd ?? never;
  if (film.torch === null)
    return soft(
      windowTo(opens_s, working, 0, `${stops(film)}; so thin that torch waves ${pitch} long stay anyway`),
    );
  if (film.torch.low_s < working.low_s)
    return soft(windowTo(opens_s, film.torch, 0, `later torch marks ${pitch} long would stay`));
  return soft(windowTo(opens_s, working, 0, stops(film)));
}

export function scrapeWindow(opens_s: number, film: FilmLimits): Limit {
  return soft(windowTo(opens_s, film.gel ?? never, 0, 'drips gel'));
}

/** Hands off until the next coat may go on: a wait, which ends late rather than early. */
export function handsOffWindow(start_s: number, recoatOpens: TimeRange): Limit {
  return soft({
    opens_s: start_s,
    closes_s: recoatOpens.mid_s,
    closesMid_s: recoatOpens.mid_s,
    closesHigh_s: recoatOpens.high_s,
    limit: 'recoat opens',
    basis: 'model',
  });
}
