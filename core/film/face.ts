/**
 * Draining of a vertical face. Jeffreys 1930 (Proc. Camb. Phil. Soc. 26, 204-205; abstract read, formula from memory, checked by a
 * kinematic-wave solution in reference/film-face.test.ts): at depth z below the top edge a film thins to
 * sqrt(z/(rho g Theta)) whatever was put on, until that meets what was put on. A Newtonian film, not fed from the top;
 * a thixotropic edge mix holds more, so these are low estimates for it.
 */

import { notNegative, positive, within } from '#core/quantity/domain.ts';
import { DEFAULT_LIQUID, type Liquid, specificWeight_N_m3 } from './constants.ts';

/**
 * Film thickness at a depth below the top edge of a face that has drained, m: sqrt(z/(rho g Theta)). Falls as Theta^(-1/2).
 * Worked: 38 mm, Theta 240 -> 0.121 mm.
 * @param depth_m from 0 @param theta_per_Pa above 0
 * @throws RangeError outside these.
 */
export function jeffreysThickness_m(
  depth_m: number,
  theta_per_Pa: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  notNegative('depth_m', depth_m, 'm');
  return Math.sqrt(depth_m / (specificWeight_N_m3(liquid) * positive('theta_per_Pa', theta_per_Pa, '1/Pa')));
}

export interface FaceInput {
  /** Height of the face, m, above 0. */
  readonly height_m: number;
  /** Thickness of the film when it was last worked to an even coat, m, above 0. */
  readonly appliedThickness_m: number;
  /** Flow budget still to come at that moment, 1/Pa, from 0. */
  readonly thetaLeft_per_Pa: number;
  readonly liquid?: Liquid;
}

export interface FaceFilm {
  /** Resin that stays, m2 (m3 per metre of edge). */
  readonly retained_m2: number;
  /** Resin that runs off the bottom, m2. */
  readonly drained_m2: number;
  /** Mean thickness over the face, m. */
  readonly mean_m: number;
  /** Thickness at half height, m. */
  readonly middle_m: number;
  /** Thickness at the bottom edge, m: the thickest. */
  readonly bottom_m: number;
  /** Depth to which thinning has come down from the top, m; may exceed the height. */
  readonly thinnedTo_m: number;
}

/**
 * What a face holds at gel when it was worked to an even coat with a given flow budget left: the less is left, the more it
 * holds. Expected accuracy: the formula is exact for the model; +-22 % from the viscosity.
 * Worked: 38 mm, 1 mm put on, Theta 240 -> 3.07 mL per metre, mean 0.081 mm.
 * @throws RangeError outside the ranges of {@link FaceInput}.
 */
export function faceFilm(input: FaceInput): FaceFilm {
  const height_m = positive('height_m', input.height_m, 'm');
  const applied_m = positive('appliedThickness_m', input.appliedThickness_m, 'm');
  const theta = notNegative('thetaLeft_per_Pa', input.thetaLeft_per_Pa, '1/Pa');
  const liquid = input.liquid ?? DEFAULT_LIQUID;
  const thinnedTo_m = specificWeight_N_m3(liquid) * applied_m * applied_m * theta;
  const retained_m2 =
    thinnedTo_m >= height_m
      ? (2 / 3) * height_m * jeffreysThickness_m(height_m, theta, liquid)
      : applied_m * (height_m - thinnedTo_m / 3);
  const at = (depth_m: number): number =>
    depth_m >= thinnedTo_m ? applied_m : Math.min(applied_m, jeffreysThickness_m(depth_m, theta, liquid));
  return {
    retained_m2,
    drained_m2: Math.max(0, applied_m * height_m - retained_m2),
    mean_m: Math.min(applied_m, retained_m2 / height_m),
    middle_m: at(height_m / 2),
    bottom_m: at(height_m),
    thinnedTo_m,
  };
}

/**
 * Flow budget at which a face must be worked to end with a wanted mean thickness, 1/Pa: wait until no more than this is left.
 * Inverse of {@link faceFilm}.
 * @param height_m above 0, m @param appliedThickness_m above 0, m
 * @param meanThickness_m above 0, up to the applied thickness, m
 * @throws RangeError outside these.
 */
export function thetaLeftForFaceMean(
  height_m: number,
  appliedThickness_m: number,
  meanThickness_m: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  positive('height_m', height_m, 'm');
  positive('appliedThickness_m', appliedThickness_m, 'm');
  positive(
    'meanThickness_m',
    within('meanThickness_m', meanThickness_m, 0, appliedThickness_m, 'm (the applied thickness)'),
    'm',
  );
  const weight = specificWeight_N_m3(liquid);
  const kept = meanThickness_m / appliedThickness_m;
  return kept >= 2 / 3
    ? (3 * height_m * (1 - kept)) / (weight * appliedThickness_m ** 2)
    : (4 * height_m) / (9 * weight * meanThickness_m ** 2);
}

/**
 * How far the surface of a film slides down a face while a flow budget is spent, m: rho g h^2 Theta/2 (elementary). The
 * thickness is taken as constant. Worked: 0.2 mm, Theta 60 -> 12.9 mm.
 * @param thickness_m from 0, m @param theta_per_Pa from 0
 * @throws RangeError outside these.
 */
export function sagLength_m(
  thickness_m: number,
  theta_per_Pa: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  return (
    (specificWeight_N_m3(liquid) *
      notNegative('thickness_m', thickness_m, 'm') ** 2 *
      notNegative('theta_per_Pa', theta_per_Pa, '1/Pa')) /
    2
  );
}

/**
 * Thickness of film that slides no further than a gap while a flow budget is spent, m: sqrt(2 gap/(rho g Theta)). With the
 * 1.6 mm gap between the stripes of a sag test (ASTM D4400) it is the heaviest stripe that does not cross.
 * @param gap_m above 0 @param theta_per_Pa above 0
 * @throws RangeError outside these.
 */
export function sagLimitThickness_m(
  gap_m: number,
  theta_per_Pa: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  positive('theta_per_Pa', theta_per_Pa, '1/Pa');
  return Math.sqrt((2 * positive('gap_m', gap_m, 'm')) / (specificWeight_N_m3(liquid) * theta_per_Pa));
}

/**
 * Yield stress that a thickened mix needs to hang on a vertical face without sliding, Pa: rho g h (force balance).
 * Worked: 1 mm -> 10.8 Pa.
 * @param thickness_m from 0
 * @throws RangeError outside this.
 */
export function yieldStressToHold_Pa(thickness_m: number, liquid: Liquid = DEFAULT_LIQUID): number {
  return specificWeight_N_m3(liquid) * notNegative('thickness_m', thickness_m, 'm');
}
