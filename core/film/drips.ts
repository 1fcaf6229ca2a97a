/**
 * Drips: a film hanging under an edge gathers into drops (Rayleigh-Taylor in a thin film; Fermigier, Limat, Wesfreid, Boudinet
 * and Quilliet 1992, J. Fluid Mech. 236, 349; Yiantsios and Higgins 1989, Phys. Fluids A 1, 1484, from memory). fastestDrips
 * holds for any film; the thin-film formulas beside it: against full Stokes flow the growth is 7 % high at 0.5 mm, 26 % at 1 mm and twice too high at 2 mm; the pitch is 2 %, 6 % and
 * 18 % short.
 */

import { notNegative, positive } from '#core/quantity/domain.ts';
import { capillaryLength_m, DEFAULT_LIQUID, type Liquid, specificWeight_N_m3 } from './constants.ts';
import { type FlowBudget, thetaAt, thetaTotal, timeWhenThetaSpent } from './flow-budget.ts';
import { depthFactor } from './levelling.ts';

/** Growths by e after which drips are plain to see: 4, a factor of 50 (a rule of judgement). */
export const DRIP_E_FOLDS = 4;

/** Below this flow budget left, 1/Pa, drips no longer form afresh: scrape or tape before it (a rule of judgement). */
export const DRIP_SCRAPE_THETA_per_Pa = 10;

/** Largest drop that hangs from a film with zero contact angle, in capillary lengths (own solution of the Young-Laplace
 * equation; volume agrees with 18.98 of Padday and Pitt 1973, from memory). */
export const HANGING_DROP = { volume: 18.964, baseRadius: 3.219, height: 2.153 } as const;

/**
 * Pitch of drips under an edge, m: 2 pi sqrt(2) lc, the wavelength that grows fastest. 16.0 mm for the default liquid.
 * @throws RangeError unless density and surface tension are positive.
 */
export function dripPitch_m(liquid: Liquid = DEFAULT_LIQUID): number {
  return 2 * Math.PI * Math.SQRT2 * capillaryLength_m(liquid);
}

/**
 * Growth of the fastest drip pattern per unit of flow budget, Pa: (rho g)^2 h^3/(12 gamma). Worked: 0.5 mm -> 0.0346.
 * @param thickness_m hanging film, from 0; within 10 % up to 0.5 mm
 * @throws RangeError outside this.
 */
export function dripGrowth_Pa(thickness_m: number, liquid: Liquid = DEFAULT_LIQUID): number {
  notNegative('thickness_m', thickness_m, 'm');
  return (specificWeight_N_m3(liquid) * thickness_m ** 3) / (12 * capillaryLength_m(liquid) ** 2);
}

export interface FastestDrips {
  /** Growth per unit of flow budget, Pa. */
  readonly growth_Pa: number;
  readonly pitch_m: number;
}

/**
 * The drip pattern that grows fastest under a film of any thickness: the greatest of
 * (rho g - gamma k^2)/(2k) (sinh x cosh x - x)/(cosh^2 x + x^2), x = k h, over k from 0 to 1/lc: Orchard's exact Stokes result with
 * the weight turned round. Golden section to 1e-9 in k. Worked: 1 mm -> 0.2197 Pa, pitch 17.0 mm (thin-film formula 0.2771, 16.0 mm).
 * @param thickness_m above 0
 * @throws RangeError outside this.
 */
export function fastestDrips(thickness_m: number, liquid: Liquid = DEFAULT_LIQUID): FastestDrips {
  positive('thickness_m', thickness_m, 'm');
  const length_m = capillaryLength_m(liquid);
  const weight = specificWeight_N_m3(liquid);
  // u = k lc; growth = rho g lc (1 - u^2)/(2u) factor
  const growth = (u: number): number =>
    ((weight * length_m * (1 - u * u)) / (2 * u)) * depthFactor((u * thickness_m) / length_m);
  const golden = (Math.sqrt(5) - 1) / 2;
  let low = 1e-6;
  let high = 1;
  let a = high - golden * (high - low);
  let b = low + golden * (high - low);
  while (high - low > 1e-9) {
    if (growth(a) < growth(b)) {
      low = a;
      a = b;
      b = low + golden * (high - low);
    } else {
      high = b;
      b = a;
      a = high - golden * (high - low);
    }
  }
  const u = (low + high) / 2;
  return { growth_Pa: growth(u), pitch_m: (2 * Math.PI * length_m) / u };
}

/**
 * Hanging film that just shows drips by the time a flow budget is spent, m: (48 gamma/((rho g)^2 Theta))^(1/3), four
 * e-folds. Worked: Theta 240 -> 0.392 mm. Thinner films set smooth.
 * @param theta_per_Pa above 0
 * @throws RangeError outside this.
 */
export function dripThickness_m(theta_per_Pa: number, liquid: Liquid = DEFAULT_LIQUID): number {
  positive('theta_per_Pa', theta_per_Pa, '1/Pa');
  return (
    ((12 * DRIP_E_FOLDS * capillaryLength_m(liquid) ** 2) / (specificWeight_N_m3(liquid) * theta_per_Pa)) **
    (1 / 3)
  );
}

/**
 * When drips show under a film that hangs from a time on, s: four e-folds of the fastest pattern later on the flow budget. Undefined when the
 * film sets first.
 * @param thickness_m above 0 @param from_s within the series
 * @throws RangeError outside these.
 */
export function dripTime_s(
  series: FlowBudget,
  thickness_m: number,
  from_s: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number | undefined {
  positive('thickness_m', thickness_m, 'm');
  const shown = thetaAt(series, from_s) + DRIP_E_FOLDS / fastestDrips(thickness_m, liquid).growth_Pa;
  return shown <= thetaTotal(series) ? timeWhenThetaSpent(series, shown) : undefined;
}

/** The largest drop an edge holds and what a metre of edge stores before drops fall. */
export interface HangingDrop {
  readonly volume_m3: number;
  readonly mass_kg: number;
  readonly baseRadius_m: number;
  readonly height_m: number;
  /** One such drop per pitch, m3 per metre of edge: an estimate, about 6.9 mL/m for the default liquid. */
  readonly storedPerMetre_m2: number;
}

/**
 * The largest hanging drop: 18.964 lc^3, base radius 3.219 lc, height 2.153 lc. Run-off above storedPerMetre_m2 falls to the
 * floor; below it, it sets as nibs at the drip pitch.
 * @throws RangeError unless density and surface tension are positive.
 */
export function hangingDrop(liquid: Liquid = DEFAULT_LIQUID): HangingDrop {
  const length_m = capillaryLength_m(liquid);
  const volume_m3 = HANGING_DROP.volume * length_m ** 3;
  return {
    volume_m3,
    mass_kg: volume_m3 * liquid.density_kg_m3,
    baseRadius_m: HANGING_DROP.baseRadius * length_m,
    height_m: HANGING_DROP.height * length_m,
    storedPerMetre_m2: volume_m3 / dripPitch_m(liquid),
  };
}
