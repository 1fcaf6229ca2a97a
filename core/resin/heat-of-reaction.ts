import { requirePositive, requireRange } from './check.ts';
import type { MixRatio } from './model.ts';

/** Heat per epoxide equivalent, J/eq. 100 to 110 kJ/eq for epoxide + amine (Klute and Viehmann 1961: 102.5; from memory). */
export const HEAT_PER_EPOXIDE_J_eq = 103_000;

/** Epoxy equivalent of a diluted coating resin (part A), g/eq; from memory. With it the label's ratio gives H to about 8 %. */
export const COATING_EPOXY_EQUIVALENT_g_eq = 195;

/**
 * Heat of full reaction per kg of mix from its mass ratio, taken as the balanced ratio, J/kg: dH/(EEW (1 + w)).
 *
 * @param massRatio w, kg of B to 1 kg of A, 0.01 to 5.
 * @throws RangeError outside.
 */
export function heatFromRatio(
  massRatio: number,
  epoxyEquivalent_g_eq: number = COATING_EPOXY_EQUIVALENT_g_eq,
  heatPerEquivalent_J_eq: number = HEAT_PER_EPOXIDE_J_eq,
): number {
  requireRange('massRatio', massRatio, 0.01, 5);
  requirePositive('epoxyEquivalent_g_eq', epoxyEquivalent_g_eq);
  requirePositive('heatPerEquivalent_J_eq', heatPerEquivalent_J_eq);
  return (1000 * heatPerEquivalent_J_eq) / (epoxyEquivalent_g_eq * (1 + massRatio));
}

/** kg of B to 1 kg of A from parts by volume and densities. All positive; RangeError otherwise. */
export function massRatioOf(mix: MixRatio): number {
  requirePositive('volumeA', mix.volumeA);
  requirePositive('volumeB', mix.volumeB);
  requirePositive('densityA_kg_m3', mix.densityA_kg_m3);
  requirePositive('densityB_kg_m3', mix.densityB_kg_m3);
  return (mix.volumeB * mix.densityB_kg_m3) / (mix.volumeA * mix.densityA_kg_m3);
}

/** Temperature rise without loss at full conversion, K: H/cp. */
export function adiabaticRise(heat_J_kg: number, heatCapacity_J_kgK: number): number {
  requireRange('heat_J_kg', heat_J_kg, 0, 2e6);
  requirePositive('heatCapacity_J_kgK', heatCapacity_J_kgK);
  return heat_J_kg / heatCapacity_J_kgK;
}
