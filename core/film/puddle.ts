/**
 * A puddle spreading by its own weight on a level dry surface: the similarity solutions of Huppert 1982 (J. Fluid Mech. 121,
 * 43-58; abstract read, constants recomputed from the volume integral). Valid once the puddle is several times as
 * wide as it was when poured and until it thins to the wetting limit, where it stops. Radius goes with Theta^(1/8): the
 * answers hardly depend on the viscosity.
 */

import { notNegative, positive, within } from '#core/quantity/domain.ts';
import { DEFAULT_LIQUID, type Liquid, specificWeight_N_m3 } from './constants.ts';
import { wettingLimit_m } from './self-damming.ts';

/** (1024/(81 pi^3))^(1/8) = 0.89391: round puddle. */
export const ROUND_PUDDLE_CONSTANT = (1024 / (81 * Math.PI ** 3)) ** (1 / 8);

/**
 * [(1/5)(3/10)^(1/3) sqrt(pi) G(1/3)/G(5/6)]^(-3/5) = 1.41124: straight ridge, with its gamma functions to double
 * precision (G(1/3) 2.678938534707747, G(5/6) 1.128787029908126).
 */
export const RIDGE_CONSTANT =
  (0.2 * 0.3 ** (1 / 3) * Math.sqrt(Math.PI) * (2.678938534707747 / 1.128787029908126)) ** (-3 / 5);

/**
 * Radius of a round puddle, m: 0.89391 (rho g V^3 Theta/3)^(1/8). Worked: 100 mL, Theta 60 -> 131 mm.
 * @param volume_m3 above 0 @param theta_per_Pa above 0
 * @throws RangeError outside these.
 */
export function puddleRadius_m(
  volume_m3: number,
  theta_per_Pa: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  positive('volume_m3', volume_m3, 'm3');
  positive('theta_per_Pa', theta_per_Pa, '1/Pa');
  return (
    ROUND_PUDDLE_CONSTANT * ((specificWeight_N_m3(liquid) * volume_m3 ** 3 * theta_per_Pa) / 3) ** (1 / 8)
  );
}

/**
 * Thickness of a round puddle at a distance from its middle, m: h_c (1 - r^2/R^2)^(1/3) with h_c = 4V/(3 pi R^2); 0 beyond R.
 * Worked: 100 mL, Theta 240, middle -> 1.743 mm.
 * @param distance_m from 0 @param volume_m3 above 0 @param theta_per_Pa above 0
 * @throws RangeError outside these.
 */
export function puddleThickness_m(
  distance_m: number,
  volume_m3: number,
  theta_per_Pa: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  notNegative('distance_m', distance_m, 'm');
  const radius_m = puddleRadius_m(volume_m3, theta_per_Pa, liquid);
  const inside = 1 - (distance_m / radius_m) ** 2;
  return inside <= 0 ? 0 : ((4 * volume_m3) / (3 * Math.PI * radius_m ** 2)) * inside ** (1 / 3);
}

/**
 * Flow budget that a poured column of radius R0 is already worth, 1/Pa: add it to Theta to start from a real shape.
 * (R0/0.89391)^8 * 3/(rho g V^3); next to nothing for R0 below a third of the puddle.
 * @param startRadius_m from 0 @param volume_m3 above 0
 * @throws RangeError outside these.
 */
export function puddleStartTheta_per_Pa(
  startRadius_m: number,
  volume_m3: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  notNegative('startRadius_m', startRadius_m, 'm');
  positive('volume_m3', volume_m3, 'm3');
  return ((startRadius_m / ROUND_PUDDLE_CONSTANT) ** 8 * 3) / (specificWeight_N_m3(liquid) * volume_m3 ** 3);
}

/**
 * Half-width of a straight ridge poured along a line, m: 1.41124 (rho g A^3 Theta/3)^(1/5).
 * Worked: 50 mm2 to each side, Theta 60 -> 43.2 mm.
 * @param sideArea_m2 cross-section to ONE side of the line (half of the ridge), above 0 @param theta_per_Pa above 0
 * @throws RangeError outside these.
 */
export function ridgeHalfWidth_m(
  sideArea_m2: number,
  theta_per_Pa: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  positive('sideArea_m2', sideArea_m2, 'm2');
  positive('theta_per_Pa', theta_per_Pa, '1/Pa');
  return RIDGE_CONSTANT * ((specificWeight_N_m3(liquid) * sideArea_m2 ** 3 * theta_per_Pa) / 3) ** (1 / 5);
}

/**
 * Radius at which a puddle stops on a dry surface, m: sqrt(V/(pi e)), e the wetting limit of the advancing angle.
 * @param volume_m3 above 0 @param contactAngle_deg above 0, to 180
 * @throws RangeError outside these.
 */
export function puddleStopRadius_m(
  volume_m3: number,
  contactAngle_deg: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  positive('volume_m3', volume_m3, 'm3');
  positive('contactAngle_deg', within('contactAngle_deg', contactAngle_deg, 0, 180, 'degrees'), 'degrees');
  return Math.sqrt(volume_m3 / (Math.PI * wettingLimit_m(contactAngle_deg, liquid)));
}
