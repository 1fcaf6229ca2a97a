import { positive } from '#core/quantity/domain.ts';

/** Standard acceleration of free fall, m/s2 (exact by the 1901 CGPM convention). */
export const GRAVITY_m_s2 = 9.80665;

/** The two properties of an uncured resin, besides its viscosity, that decide how a film flows. */
export interface Liquid {
  readonly density_kg_m3: number;
  readonly surfaceTension_N_m: number;
}

/** Density of an unfilled mixed epoxy, kg/m3 (1100 to 1160 is usual; from memory). */
export const DENSITY_kg_m3 = 1100;

/** Surface tension of a fresh epoxy-amine mix, N/m, when the resin's own is not known. */
export const SURFACE_TENSION_N_m = 0.035;

/**
 * Spread of the surface tension of epoxy-amine mixes, N/m: 0.031 to 0.032 at mixing, 0.040 to 0.046 hours later
 * (Dearlove 1978, J. Appl. Polym. Sci., read in its abstract).
 */
export const SURFACE_TENSION_RANGE_N_m = { low: 0.03, high: 0.045 } as const;

export const DEFAULT_LIQUID: Liquid = {
  density_kg_m3: DENSITY_kg_m3,
  surfaceTension_N_m: SURFACE_TENSION_N_m,
};

/**
 * Weight of a cubic metre of the liquid, N/m3: rho g.
 * @throws RangeError unless the density is positive and finite.
 */
export function specificWeight_N_m3(liquid: Liquid = DEFAULT_LIQUID): number {
  return positive('density_kg_m3', liquid.density_kg_m3, 'kg/m3') * GRAVITY_m_s2;
}

/**
 * Capillary length, m: sqrt(gamma/(rho g)); below it surface tension shapes a film, above it weight does.
 * 1.8013 mm for the default liquid. Exact definition (de Gennes, Brochard-Wyart and Quere 2004, ch. 2; from memory).
 * @throws RangeError unless density and surface tension are positive and finite.
 */
export function capillaryLength_m(liquid: Liquid = DEFAULT_LIQUID): number {
  const tension = positive('surfaceTension_N_m', liquid.surfaceTension_N_m, 'N/m');
  return Math.sqrt(tension / specificWeight_N_m3(liquid));
}
