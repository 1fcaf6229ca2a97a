import type { ResinModel } from './model.ts';

/**
 * A resin of which nothing is known: the middle of every prior (`COORDINATES`), and the constants that no label tells:
 * conductivity 0.20 W/m/K, density 1100 kg/m3, surface tension 0.035 N/m, viscosity's activation 55 kJ/mol (50 to 60; all from
 * memory), Castro and Macosko's B 1, width of vitrification 2 K.
 */
export const PRIOR_MODEL: ResinModel = {
  kRef_per_s: 1.1e-4,
  rho: 0.3,
  order: 2,
  activation_J_mol: 55_000,
  heat_J_kg: 310_000,
  heatCapacity_J_kgK: 1900,
  conductivity_W_mK: 0.2,
  density_kg_m3: 1100,
  viscosityRef_Pa_s: 1,
  viscosityActivation_J_mol: 55_000,
  viscosityA: 1.5,
  viscosityB: 1,
  gelConversion: 0.6,
  tgStart_K: 237.15,
  tgFull_K: 330.15,
  tgLambda: 0.44,
  vitrificationOffset_K: 12,
  vitrificationWidth_K: 2,
  workingRatio: 2.2,
  dryHardOffset_K: 8,
  surfaceTension_N_m: 0.035,
};
