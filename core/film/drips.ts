/**
 * Drips: a film hanging under an edge gathers into drops (Rayleigh-Taylor in a thin film; Fermigier, Limat, Wesfreid, Boudinet
 * and Quilliet 1992, J. Fluid Mech. 236, 349; Yiantsios and Higgins 1989, Phys. Fluids A 1, 1484, from memory). Thin-film
 * formulas: against full Stokes flow the growth is 7 % high at 0.5 mm, 26 % at 1 mm and twice too high at 2 mm; the pitch is 2 %, 6 % and
 * 18 % short.
 */
import { capillaryLength_m, DEFAULT_LIQUID, type Liquid, specificWeight_N_m3 } from './constants.ts';
import { notNegative, positive } from './domain.ts';
import { type FlowBudget, thetaAt, thetaTotal, timeWhenThetaSpent } from './flow-budget.ts';

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
 * When drips show under a film that hangs from a time on, s: four e-folds later on the flow budget. Undefined when the
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
  const shown = thetaAt(series, from_s) + DRIP_E_FOLDS / dripGrowth_Pa(thickness_m, liquid);
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
