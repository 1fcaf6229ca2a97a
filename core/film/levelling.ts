/**
 * Levelling of marks in a film on a flat board. Linear theory of Orchard 1962 (Appl. Sci. Res. A11, 451-464): a small wave of
 * wavelength lambda on a film of thickness h dies as exp(-r Theta). Valid for marks shallow against h and against lambda.
 * The closed form was checked against a direct solution of the Stokes equations (see reference/film-levelling.test.ts).
 */

import { notNegative, positive, within } from '#core/quantity/domain.ts';
import { DEFAULT_LIQUID, type Liquid, specificWeight_N_m3 } from './constants.ts';
import { type FlowBudget, thetaTotal, timeWhenThetaLeft } from './flow-budget.ts';

/** Thickness up to which longer waves always level more slowly, in capillary lengths (found numerically: true to 4.5, not at 5). */
export const ORDERED_THICKNESS_CAPILLARY_LENGTHS = 4;

/** (sinh y - y)/y^3, by its power series: no cancellation for small y. */
function sinhExcess(y: number): number {
  const square = y * y;
  let term = 1 / 6;
  let sum = term;
  for (let k = 4; term > sum * 1e-17; k += 2) {
    term *= square / (k * (k + 1));
    sum += term;
  }
  return sum;
}

/**
 * What the floor under a film leaves of a wave's speed: (sinh x cosh x - x)/(cosh^2 x + x^2), x = k h from 0. x^3 2/3 for a thin film,
 * 1 for a deep one. Exact for Stokes flow under a free surface (Orchard 1962).
 */
export function depthFactor(x: number): number {
  const y = 2 * x;
  if (y < 2) return (sinhExcess(y) * y ** 3) / (1 + Math.cosh(y) + (y * y) / 2);
  const e = Math.exp(-y);
  return (1 - e * e - 2 * y * e) / ((1 + e) ** 2 + y * y * e);
}

function waveNumber(wavelength_m: number): number {
  return (2 * Math.PI) / positive('wavelength_m', wavelength_m, 'm');
}

/**
 * Rate at which a wave levels, per unit of flow budget, so in Pa (divide by the viscosity for 1/s):
 * r = (rho g + gamma k^2)/(2k) * (sinh x cosh x - x)/(cosh^2 x + x^2), k = 2 pi/lambda, x = k h.
 * Any ratio of thickness to wavelength; relative rounding error about 1e-15.
 * Worked: 10 mm, 1.5 mm -> 4.2443 Pa, at 5 Pa s 0.849 1/s.
 * @param wavelength_m above 0, m @param thickness_m above 0, m
 * @throws RangeError outside these.
 */
export function orchardRate(
  wavelength_m: number,
  thickness_m: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  const k = waveNumber(wavelength_m);
  const x = k * positive('thickness_m', thickness_m, 'm');
  return positive('rate', ((drive(k, liquid) / 2) * depthFactor(x)) / k, 'Pa (arguments too extreme)');
}

/** rho g + gamma k^2, N/m3: weight and surface tension together. A surface tension of zero is allowed here. */
function drive(k: number, liquid: Liquid): number {
  return (
    specificWeight_N_m3(liquid) + notNegative('surfaceTension_N_m', liquid.surfaceTension_N_m, 'N/m') * k * k
  );
}

/**
 * The thin-film limit of {@link orchardRate} met in coating books, Pa: (rho g k^2 + gamma k^4) h^3/3. For comparison only:
 * too fast by 5 % at k h = 0.167, 20 % at 0.334, and 2.6 times for a 10 mm mark in 1.5 mm.
 * @throws RangeError unless wavelength and thickness are positive and finite.
 */
export function orchardRateThin(
  wavelength_m: number,
  thickness_m: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  const k = waveNumber(wavelength_m);
  return (drive(k, liquid) * k * k * positive('thickness_m', thickness_m, 'm') ** 3) / 3;
}

/**
 * Flow budget that a wave needs to fall to a fraction of its height, 1/Pa: ln(1/fraction)/r.
 * Worked: 50 mm, 1.5 mm, to 1 % -> 24.3 1/Pa.
 * @param wavelength_m above 0, m @param thickness_m above 0, m @param fraction above 0, to 1
 * @throws RangeError outside these.
 */
export function thetaToLevel(
  wavelength_m: number,
  thickness_m: number,
  fraction: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  return decay(fraction) / orchardRate(wavelength_m, thickness_m, liquid);
}

function decay(fraction: number): number {
  return -Math.log(within('fraction', fraction, Number.MIN_VALUE, 1, ''));
}

/**
 * Flow budget spent when the last mark may be made that still levels to a fraction of its height by the end, 1/Pa:
 * the total less {@link thetaToLevel}. Undefined when even a mark made at the start would stay.
 * @param thetaTotal_per_Pa from 0
 * @throws RangeError outside the domains of thetaToLevel.
 */
export function lastTouchTheta(
  thetaTotal_per_Pa: number,
  wavelength_m: number,
  thickness_m: number,
  fraction: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number | undefined {
  const last =
    notNegative('thetaTotal_per_Pa', thetaTotal_per_Pa, '1/Pa') -
    thetaToLevel(wavelength_m, thickness_m, fraction, liquid);
  return last >= 0 ? last : undefined;
}

/**
 * Latest time at which a mark may be made (trowel, comb, torch, edge work) and still level to a fraction of its height by
 * the end of the series, s. Undefined when even a mark made at the first sample would stay. Expected accuracy: that of the
 * viscosity near gel; use a series that ends at gel.
 * @param wavelength_m pitch of the marks, above 0, m @param thickness_m above 0, m @param fraction above 0, to 1
 * @throws RangeError outside these.
 */
export function lastTouchTime(
  series: FlowBudget,
  wavelength_m: number,
  thickness_m: number,
  fraction: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number | undefined {
  const needed = thetaToLevel(wavelength_m, thickness_m, fraction, liquid);
  return needed <= thetaTotal(series) ? timeWhenThetaLeft(series, needed) : undefined;
}

/**
 * Longest wave that still falls to a fraction of its height within the flow budget left, m. Shorter ones level too. Found by
 * bisection from the thin-film answer, which is never too short, to 1e-12 relative.
 * Waves longer than this stay: uneven distribution, not tool marks.
 * @param thickness_m above 0, up to 4 capillary lengths (7.2 mm for the default liquid): in deeper pools long waves may
 * level sooner than short ones and one limit does not say it
 * @param thetaLeft_per_Pa above 0, 1/Pa @param fraction above 0, below 1
 * @throws RangeError outside these.
 */
export function longestLevellingWave(
  thickness_m: number,
  thetaLeft_per_Pa: number,
  fraction: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  const weight = specificWeight_N_m3(liquid);
  const tension = positive('surfaceTension_N_m', liquid.surfaceTension_N_m, 'N/m');
  const deepest = ORDERED_THICKNESS_CAPILLARY_LENGTHS * Math.sqrt(tension / weight);
  positive('thickness_m', within('thickness_m', thickness_m, 0, deepest, 'm'), 'm');
  within('fraction', fraction, Number.MIN_VALUE, 1 - Number.EPSILON, '');
  const needed = decay(fraction) / positive('thetaLeft_per_Pa', thetaLeft_per_Pa, '1/Pa');
  // thin film: gamma k^4 + rho g k^2 = 3 needed/h^3, a quadratic in k^2 written without cancellation
  const c = (3 * needed) / thickness_m ** 3;
  const square = (2 * c) / (weight + Math.sqrt(weight * weight + 4 * tension * c));
  let long = positive('wavelength', (2 * Math.PI) / Math.sqrt(square), 'm (arguments too extreme)');
  let short = long;
  while (orchardRate(short, thickness_m, liquid) < needed) {
    long = short;
    short /= 2;
  }
  while (long - short > 1e-13 * long) {
    const middle = (long + short) / 2;
    if (middle <= short || middle >= long) break;
    if (orchardRate(middle, thickness_m, liquid) < needed) long = middle;
    else short = middle;
  }
  return short;
}
