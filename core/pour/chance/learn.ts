/**
 * What the shop's own runs teach about its steps: robust middle and spread of actual over planned durations. Offered to the next
 * plan, never put in unasked.
 */
import { quantileOfSorted } from '#core/numeric/quantile.ts';
import { positive, within } from '#core/quantity/domain.ts';
import type { StepSpread } from './spreads.ts';

export interface TimedStep {
  readonly planned_s: number;
  readonly actual_s: number;
}

/** Runs a shop default counts for: one odd day moves little, ten runs nearly decide. Our own choice, no source. */
export const DEFAULT_WEIGHS_runs = 3;

/** Scale that makes the median absolute deviation of a normal its standard deviation: 1 / quantile(3/4) (Hampel 1974). */
const MAD_TO_SD = 1.482602218505602;

const LEAST_LN = 0.02;
const MOST_LN = 1.5;

/**
 * Middle: median of ln(actual / planned). Spread: median absolute deviation times 1.4826 (Hampel 1974, J. Am. Stat. Assoc. 69, 383),
 * both drawn toward the shop default, which weighs as much as three runs. Half of all runs may be nonsense (a step ticked off an
 * hour late) before either breaks.
 *
 * @param steps of one kind, most recent last; at most the last 50 count, for hands change.
 * @returns the default itself, with 0 runs, when there are none.
 * @throws RangeError for a duration that is not above 0.
 */
export function learnSpread(steps: readonly TimedStep[], fallback: StepSpread): StepSpread {
  within('factor of the default', fallback.factor, 0.1, 10);
  const logs = steps.slice(-50).map(({ planned_s, actual_s }) => {
    positive('planned_s', planned_s, 's');
    positive('actual_s', actual_s, 's');
    return Math.log(actual_s / planned_s);
  });
  const runs = logs.length;
  if (runs === 0) return { ...fallback, runs: 0 };
  const middle = median(logs);
  const scale = runs < 2 ? fallback.ln : MAD_TO_SD * median(logs.map((log) => Math.abs(log - middle)));
  const weight = runs / (runs + DEFAULT_WEIGHS_runs);
  const toward = (learned: number, given: number) => weight * learned + (1 - weight) * given;
  return {
    factor: Math.min(10, Math.max(0.1, Math.exp(toward(middle, Math.log(fallback.factor))))),
    ln: Math.min(MOST_LN, Math.max(LEAST_LN, Math.sqrt(toward(scale ** 2, fallback.ln ** 2)))),
    runs,
  };
}

function median(values: readonly number[]): number {
  return quantileOfSorted(
    [...values].sort((a, b) => a - b),
    0.5,
  );
}
