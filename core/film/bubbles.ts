/**
 * Rise of small air bubbles to the surface of a film: Stokes' law, rho g d^2/(18 mu), for a bubble whose skin is held
 * still by surface-active traces; one half faster for a clean one (Hadamard 1911, Rybczynski 1911; from memory).
 * Rising is not breaking: large late bubbles reach the surface and stay.
 */

import { notNegative, positive } from '#core/quantity/domain.ts';
import { DEFAULT_LIQUID, type Liquid, specificWeight_N_m3 } from './constants.ts';

/** How the skin of the bubble behaves; 'rigid' is the safe assumption in a formulated resin. */
export type BubbleSkin = 'rigid' | 'mobile';

const drag = (skin: BubbleSkin): number => (skin === 'rigid' ? 18 : 12);

/** Bubbles from about this diameter are seen in a clear film, m (0.10 to 0.15 mm; common practice, no source). */
export const VISIBLE_BUBBLE_m = 1.2e-4;

/**
 * Smallest bubble that escapes from the bottom of a film, m: sqrt(18 h/(rho g Theta)) (12 for a mobile skin). Smaller ones stay.
 * Worked: 3 mm, Theta 240 -> 0.144 mm.
 * @param depth_m from 0 @param theta_per_Pa above 0
 * @throws RangeError outside these.
 */
export function smallestEscapingBubble_m(
  depth_m: number,
  theta_per_Pa: number,
  skin: BubbleSkin = 'rigid',
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  notNegative('depth_m', depth_m, 'm');
  positive('theta_per_Pa', theta_per_Pa, '1/Pa');
  return Math.sqrt((drag(skin) * depth_m) / (specificWeight_N_m3(liquid) * theta_per_Pa));
}

/**
 * Flow budget that a bubble needs to rise through a depth, 1/Pa: 18 h/(rho g d^2); times the viscosity it is a time.
 * Worked: 0.5 mm bubble, 3 mm, at 1 Pa s -> 20 s.
 * @param depth_m from 0 @param diameter_m above 0
 * @throws RangeError outside these.
 */
export function thetaToRise_per_Pa(
  depth_m: number,
  diameter_m: number,
  skin: BubbleSkin = 'rigid',
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  notNegative('depth_m', depth_m, 'm');
  positive('diameter_m', diameter_m, 'm');
  return (drag(skin) * depth_m) / (specificWeight_N_m3(liquid) * diameter_m ** 2);
}
