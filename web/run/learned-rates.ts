/** What the pours kept on this device teach about the shop's own speeds. Offered, never put in unasked. Pure. */
import { learnSpread, type TimedStep } from '#core/pour/chance/learn.ts';
import { DEFAULT_SPREADS, type StepSpread, type TimedKind } from '#core/pour/chance/spreads.ts';
import { foldRun } from '#core/pour/run/fold-run.ts';
import type { FrozenPour } from '#core/pour/run/frozen-pour.ts';
import type { RunEvent } from '#core/pour/run/run-event.ts';
import type { ShopRates } from '#core/pour/shop-rates.ts';
import { afterRows } from './after-rows.ts';

export interface PouredRun {
  readonly pour: FrozenPour;
  readonly events: readonly RunEvent[];
}

export interface LearnedRate {
  readonly kind: TimedKind;
  /** Against the shop's rates as they are now. */
  readonly spread: StepSpread;
  /** Of this many runs, one figure each. */
  readonly runs: number;
  readonly rates: Partial<ShopRates>;
}

/** The rates a kind of step hangs on: those that grow with its duration, and those that shrink with it. */
const HANGS_ON: Readonly<
  Record<
    TimedKind,
    { readonly times: readonly (keyof ShopRates)[]; readonly speeds: readonly (keyof ShopRates)[] }
  >
> = {
  mix: { times: ['mix_s', 'mixExtra_s_per_kg', 'tint_s'], speeds: [] },
  pour: { times: [], speeds: ['pour_kg_per_s', 'spread_m2_per_s'] },
  meld: { times: ['meld_s_per_m2', 'leastMeld_s'], speeds: [] },
  'wrap edges': { times: [], speeds: ['wrap_m_per_s'] },
  torch: { times: ['leastTorch_s'], speeds: ['torch_m2_per_s'] },
  'scrape drips': { times: [], speeds: ['scrape_m_per_s'] },
};

/** Shorter than this share of the plan, steps were ticked off together rather than done: they teach nothing. */
const TICKED_OFF = 0.1;

/** Every kind that was done at least once, by the runs in the order they were poured. */
export function learnedRates(runs: readonly PouredRun[], now: ShopRates): readonly LearnedRate[] {
  return (Object.keys(HANGS_ON) as TimedKind[]).flatMap((kind) => {
    const timed = runs.flatMap(({ pour, events }): TimedStep[] => {
      const rows = afterRows(pour.plan, foldRun(pour.plan.steps, events)).filter(
        ({ step, actual, planned }) =>
          step.kind === kind &&
          actual !== null &&
          planned.lasts_s > 0 &&
          actual.lasts_s > TICKED_OFF * planned.lasts_s,
      );
      if (rows.length === 0) return [];
      // as this run would have been planned with the shop's rates of today
      const as = scale(kind, now, pour.inputs.rates);
      const planned_s = as * rows.reduce((sum, { planned }) => sum + planned.lasts_s, 0);
      return [{ planned_s, actual_s: rows.reduce((sum, { actual }) => sum + actual!.lasts_s, 0) }];
    });
    if (timed.length === 0) return [];
    const spread = learnSpread(timed, DEFAULT_SPREADS.steps[kind]);
    return [{ kind, spread, runs: timed.length, rates: changed(kind, now, spread.factor) }];
  });
}

/** How much longer a step takes by one set of rates than by another, by the first rate it hangs on. */
function scale(kind: TimedKind, now: ShopRates, then: ShopRates): number {
  const { times, speeds } = HANGS_ON[kind];
  const [time] = times;
  const [speed] = speeds;
  const ratio =
    speed !== undefined ? then[speed] / now[speed] : time === undefined ? 1 : now[time] / then[time];
  return Number.isFinite(ratio) && ratio > 0 ? ratio : 1;
}

function changed(kind: TimedKind, now: ShopRates, factor: number): Partial<ShopRates> {
  const { times, speeds } = HANGS_ON[kind];
  return Object.fromEntries([
    ...times.map((key) => [key, threeFigures(now[key] * factor)]),
    ...speeds.map((key) => [key, threeFigures(now[key] / factor)]),
  ]) as Partial<ShopRates>;
}

const threeFigures = (value: number) => Number(value.toPrecision(3));
