/**
 * The flow budget Theta = integral of dt/viscosity, in 1/Pa. A film this thin flows without inertia, so every speed in it is
 * proportional to 1/viscosity, and when the viscosity is the same all over the film and changes with time only, each
 * constant-viscosity result holds with t/viscosity replaced by Theta. (The device is used for cooling lava domes by
 * Sakimoto and Zuber 1995, J. Fluid Mech. 301, 65.) It fails where viscosity differs from place to place: cups of
 * different age, warm spots, a skin.
 */
import { notNegative, positive, within } from '#core/quantity/domain.ts';

/** A sampled viscosity history and the budget spent up to each sample. The last sample is where flow ends (gel). */
export interface FlowBudget {
  readonly time_s: readonly number[];
  readonly viscosity_Pa_s: readonly number[];
  /** Spent since the first sample; starts at 0 and never falls. */
  readonly theta_per_Pa: readonly number[];
}

/** (1 - exp(-x))/x, continued through x = 0. */
function meanDecay(x: number): number {
  return x === 0 ? 1 : -Math.expm1(-x) / x;
}

/**
 * Budget spent along a viscosity history. Between samples the viscosity is taken as exponential in time, and that
 * interval is integrated exactly, so samples may be far apart wherever the logarithm of viscosity is nearly straight.
 * @param time_s at least two rising times, s
 * @param viscosity_Pa_s as many positive finite viscosities, Pa s; end the series at gel instead of passing Infinity
 * @throws RangeError if the lists differ in length, hold fewer than two samples, times do not rise, or a viscosity is not
 * positive and finite.
 */
export function thetaOfSeries(time_s: readonly number[], viscosity_Pa_s: readonly number[]): FlowBudget {
  if (time_s.length < 2 || time_s.length !== viscosity_Pa_s.length)
    throw new RangeError(
      `time_s has ${time_s.length} and viscosity_Pa_s ${viscosity_Pa_s.length} samples: allowed two or more, as many of each`,
    );
  const theta: number[] = [0];
  let spent = 0;
  for (let i = 0; i < time_s.length; i++) {
    if (!Number.isFinite(time_s[i])) throw new RangeError(`time_s[${i}] = ${time_s[i]}: allowed finite, s`);
    positive(`viscosity_Pa_s[${i}]`, viscosity_Pa_s[i]!, 'Pa s');
    if (i === 0) continue;
    const step_s = time_s[i]! - time_s[i - 1]!;
    if (!(step_s > 0))
      throw new RangeError(
        `time_s[${i}] = ${time_s[i]}: allowed above time_s[${i - 1}] = ${time_s[i - 1]} s`,
      );
    spent += spentWithin(step_s, viscosity_Pa_s[i - 1]!, viscosity_Pa_s[i]!, 1);
    theta.push(spent);
  }
  return { time_s: [...time_s], viscosity_Pa_s: [...viscosity_Pa_s], theta_per_Pa: theta };
}

/** Budget spent in the first `part` (0..1) of an interval whose viscosity is exponential in time. */
function spentWithin(step_s: number, from_Pa_s: number, to_Pa_s: number, part: number): number {
  const growth = Math.log(to_Pa_s / from_Pa_s);
  return ((step_s * part) / from_Pa_s) * meanDecay(growth * part);
}

/** Index i of the interval [i, i + 1] that holds the value in a rising list; the value lies within the list's ends. */
function intervalOf(list: readonly number[], value: number): number {
  let low = 0;
  let high = list.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (list[middle]! <= value) low = middle;
    else high = middle;
  }
  return low;
}

/** All the budget of a series, 1/Pa. */
export function thetaTotal(series: FlowBudget): number {
  return series.theta_per_Pa.at(-1)!;
}

/**
 * Budget spent by a time, 1/Pa; exact for viscosity that is exponential between samples. After the last sample nothing
 * flows, so the answer stays at the total.
 * @throws RangeError if the time lies before the first sample or is not finite.
 */
export function thetaAt(series: FlowBudget, time_s: number): number {
  within('time_s', time_s, series.time_s[0]!, Number.MAX_VALUE, 's');
  if (time_s >= series.time_s.at(-1)!) return thetaTotal(series);
  const i = intervalOf(series.time_s, time_s);
  const step_s = series.time_s[i + 1]! - series.time_s[i]!;
  const part = (time_s - series.time_s[i]!) / step_s;
  return (
    series.theta_per_Pa[i]! +
    spentWithin(step_s, series.viscosity_Pa_s[i]!, series.viscosity_Pa_s[i + 1]!, part)
  );
}

/**
 * Budget still to come after a time, 1/Pa: the clock behind every film answer.
 * @throws RangeError as {@link thetaAt}.
 */
export function thetaLeftAt(series: FlowBudget, time_s: number): number {
  return Math.max(0, thetaTotal(series) - thetaAt(series, time_s));
}

/**
 * Time at which a given budget has been spent, s; inverse of {@link thetaAt}.
 * @throws RangeError unless 0 <= theta_per_Pa <= the total of the series.
 */
export function timeWhenThetaSpent(series: FlowBudget, theta_per_Pa: number): number {
  within('theta_per_Pa', theta_per_Pa, 0, thetaTotal(series), '1/Pa');
  const i = intervalOf(series.theta_per_Pa, theta_per_Pa);
  const start_s = series.time_s[i]!;
  const step_s = series.time_s[i + 1]! - start_s;
  const growth = Math.log(series.viscosity_Pa_s[i + 1]! / series.viscosity_Pa_s[i]!);
  const scaled = ((theta_per_Pa - series.theta_per_Pa[i]!) * series.viscosity_Pa_s[i]!) / step_s;
  const part = growth === 0 ? scaled : -Math.log1p(-Math.min(growth * scaled, 1)) / growth;
  return start_s + step_s * Math.min(Math.max(part, 0), 1);
}

/**
 * Time after which a given budget is still to come, s. With 0 it is the end of the series.
 * @throws RangeError unless 0 <= thetaLeft_per_Pa <= the total of the series.
 */
export function timeWhenThetaLeft(series: FlowBudget, thetaLeft_per_Pa: number): number {
  within('thetaLeft_per_Pa', thetaLeft_per_Pa, 0, thetaTotal(series), '1/Pa');
  return timeWhenThetaSpent(series, thetaTotal(series) - thetaLeft_per_Pa);
}

/**
 * Budget of a viscosity mu0 exp(t/tau), 1/Pa: (tau/mu0)(1 - exp(-t/tau)). Closed form, exact.
 * Worked: 2 Pa s, tau 600 s, 900 s -> 233.061 1/Pa.
 * @param initialViscosity_Pa_s above 0 @param timeConstant_s above 0 @param time_s from 0
 * @throws RangeError outside these.
 */
export function thetaExponential(
  initialViscosity_Pa_s: number,
  timeConstant_s: number,
  time_s: number,
): number {
  const all = thetaExponentialTotal(initialViscosity_Pa_s, timeConstant_s);
  return -all * Math.expm1(-notNegative('time_s', time_s, 's') / timeConstant_s);
}

/**
 * All the budget that a viscosity mu0 exp(t/tau) will ever give, 1/Pa: tau/mu0. From time t on the budget still to come is
 * the same with mu(t) in place of mu0.
 * @throws RangeError unless both arguments are positive and finite.
 */
export function thetaExponentialTotal(initialViscosity_Pa_s: number, timeConstant_s: number): number {
  return (
    positive('timeConstant_s', timeConstant_s, 's') /
    positive('initialViscosity_Pa_s', initialViscosity_Pa_s, 'Pa s')
  );
}

/**
 * Budget of a viscosity mu0 (1 - t/tg)^-n that runs away at gel, 1/Pa:
 * (tg/(mu0 (n + 1))) (1 - (1 - t/tg)^(n + 1)). Closed form, exact.
 * Worked: 2 Pa s, gel at 1800 s, n = 2, at gel -> 300 1/Pa.
 * @param initialViscosity_Pa_s above 0 @param gelTime_s above 0 @param exponent from 0 @param time_s 0 to gelTime_s
 * @throws RangeError outside these.
 */
export function thetaGelLaw(
  initialViscosity_Pa_s: number,
  gelTime_s: number,
  exponent: number,
  time_s: number,
): number {
  positive('initialViscosity_Pa_s', initialViscosity_Pa_s, 'Pa s');
  positive('gelTime_s', gelTime_s, 's');
  const power = notNegative('exponent', exponent, '') + 1;
  const part = within('time_s', time_s, 0, gelTime_s, 's') / gelTime_s;
  return (-gelTime_s / (initialViscosity_Pa_s * power)) * Math.expm1(power * Math.log1p(-part));
}
