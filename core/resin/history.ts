import { brent } from '#core/numeric/brent.ts';
import { hermite } from '#core/numeric/hermite.ts';
import { tgOf } from './kinetics.ts';
import type { CureHistory, ResinModel } from './model.ts';
import { GELLED_VISCOSITY_Pa_s, viscosity } from './viscosity.ts';

/** State of a body at one time. */
export interface CureReading {
  readonly conversion: number;
  readonly temperature_K: number;
  readonly tg_K: number;
  /** null from the gel point on. */
  readonly viscosity_Pa_s: number | null;
  /** Flow budget spent since the start of the history, 1/Pa. */
  readonly theta_per_Pa: number;
}

/** First and last time of a history, s. */
export function spanOf(history: CureHistory): { readonly start_s: number; readonly end_s: number } {
  return { start_s: history.time_s[0]!, end_s: history.time_s[history.time_s.length - 1]! };
}

/**
 * State at a time, by cubic Hermite interpolation between the accepted steps of the integrator (its error is of the order
 * of the step error that was accepted).
 *
 * @param model the model the history was computed with.
 * @throws RangeError when the time lies outside the history.
 */
export function readState(history: CureHistory, time_s: number, model: ResinModel): CureReading {
  const step = stepAt(history, time_s);
  const conversion = Math.min(1, Math.max(0, conversionIn(history, step, time_s)));
  const temperature_K = temperatureIn(history, step, time_s);
  return {
    conversion,
    temperature_K,
    tg_K: tgOf(model, conversion),
    viscosity_Pa_s: viscosity(model, conversion, temperature_K),
    theta_per_Pa: thetaIn(history, step, time_s),
  };
}

/**
 * First time a quantity of the state reaches a level from below, to within 0.01 s of the interpolated history. A rise and
 * fall inside one accepted step is not seen.
 *
 * @param quantity of (conversion, temperature_K), as `(a) => a` or `(a, T) => tgOf(model, a) - T`.
 * @returns the start of the history if it is there already, null if it never gets there.
 */
export function firstTime(
  history: CureHistory,
  quantity: (conversion: number, temperature_K: number) => number,
  level: number,
): number | null {
  const { time_s, conversion, temperature_K } = history;
  if (quantity(conversion[0]!, temperature_K[0]!) >= level) return time_s[0]!;
  for (let i = 1; i < time_s.length; i++) {
    if (quantity(conversion[i]!, temperature_K[i]!) < level) continue;
    const excess = (time: number) =>
      quantity(conversionIn(history, i - 1, time), temperatureIn(history, i - 1, time)) - level;
    if (excess(time_s[i - 1]!) >= 0) return time_s[i - 1]!;
    return brent(excess, time_s[i - 1]!, time_s[i]!, 0.01);
  }
  return null;
}

/**
 * Flow budget left until gel, 1/Pa: theta at gel (or at the end of the history, if it does not gel) less theta now.
 *
 * @throws RangeError when the time lies outside the history.
 */
export function thetaLeft(history: CureHistory, time_s: number): number {
  const total = history.theta_per_Pa[history.theta_per_Pa.length - 1]!;
  return Math.max(0, total - thetaIn(history, stepAt(history, time_s), time_s));
}

/**
 * First time the flow budget spent reaches a level (1/Pa), to within 0.01 s; null if it never does.
 */
export function timeOfTheta(history: CureHistory, theta_per_Pa: number): number | null {
  const { time_s, theta_per_Pa: spent } = history;
  if (theta_per_Pa <= spent[0]!) return time_s[0]!;
  for (let i = 1; i < time_s.length; i++) {
    if (spent[i]! < theta_per_Pa) continue;
    return brent((time) => thetaIn(history, i - 1, time) - theta_per_Pa, time_s[i - 1]!, time_s[i]!, 0.01);
  }
  return null;
}

function stepAt(history: CureHistory, time_s: number): number {
  const times = history.time_s;
  const last = times.length - 1;
  if (!(time_s >= times[0]! && time_s <= times[last]!)) {
    throw new RangeError(`time_s is ${time_s}; the history runs from ${times[0]} to ${times[last]}`);
  }
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (times[middle]! <= time_s) low = middle;
    else high = middle;
  }
  return low;
}

function between(
  history: CureHistory,
  values: Float64Array,
  slopes: Float64Array,
  step: number,
  time: number,
): number {
  const start = history.time_s[step]!;
  const end = history.time_s[step + 1];
  if (end === undefined) return values[step]!;
  return hermite(
    values[step]!,
    slopes[step]!,
    values[step + 1]!,
    slopes[step + 1]!,
    end - start,
    time - start,
  );
}

const conversionIn = (history: CureHistory, step: number, time: number): number =>
  between(history, history.conversion, history.conversionRate_per_s, step, time);

const temperatureIn = (history: CureHistory, step: number, time: number): number =>
  between(history, history.temperature_K, history.temperatureRate_K_s, step, time);

/** theta's slope is the fluidity; the step's own gain bounds it, so that it never runs backwards. */
function thetaIn(history: CureHistory, step: number, time: number): number {
  const { theta_per_Pa: spent, viscosity_Pa_s: eta, time_s } = history;
  const end = time_s[step + 1];
  if (end === undefined) return spent[step]!;
  const start = time_s[step]!;
  const slope = (i: number) => (eta[i]! >= GELLED_VISCOSITY_Pa_s ? 0 : 1 / eta[i]!);
  const value = hermite(
    spent[step]!,
    slope(step),
    spent[step + 1]!,
    slope(step + 1),
    end - start,
    time - start,
  );
  return Math.min(spent[step + 1]!, Math.max(spent[step]!, value));
}
