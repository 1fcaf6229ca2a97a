import type { ResinCard, ResinModel, ResinSpread } from './model.ts';

/**
 * Two generic cards. Their shape (m = 1, order 2.3, rho 0.5) and one time scale each were fitted to what labels of such resins
 * commonly say (working time of a 2.5 mm film on 18 mm MDF at 24 C, recoat as a dry-hard figure); the rest are priors for a
 * room-temperature DGEBA/amine coating mix:
 *  - activation 55 +- 6 kJ/mol: published 44 to 64 for amine cure (DSC and gel times), and a workshop rule of doubling
 *    in 10 C means 51;
 *  - heat: from the mix ratio (`heatFromRatio`), +- 8 %;
 *  - heat capacity 1900 J/kg/K, conductivity 0.20 W/m/K, density 1100 kg/m3, surface tension 0.035 N/m: from memory;
 *  - viscosity 0.5 to 2 Pa s at 25 C, 50 to 60 kJ/mol: from memory; Castro and Macosko's A 1.5, B 1;
 *  - gel 0.60: Stockmayer with 10 eq-% monofunctional diluent and tetrafunctional amine gives 0.609;
 *  - Tg -36 to 57 C, lambda 0.44, frozen 12 K past Tg, width 2 K: priors for diluted coating mixes;
 *  - working ratio 2 (viscosity doubled), dry hard at Tg = T + 8 K: common practice, no source.
 */
const shared = {
  rho: 0.5,
  order: 2.3,
  activation_J_mol: 55_000,
  heatCapacity_J_kgK: 1900,
  conductivity_W_mK: 0.2,
  density_kg_m3: 1100,
  viscosityActivation_J_mol: 55_000,
  viscosityA: 1.5,
  viscosityB: 1,
  gelConversion: 0.6,
  tgStart_K: 237.15,
  tgFull_K: 330.15,
  tgLambda: 0.44,
  vitrificationOffset_K: 12,
  vitrificationWidth_K: 2,
  workingRatio: 2,
  dryHardOffset_K: 8,
  surfaceTension_N_m: 0.035,
} as const satisfies Partial<ResinModel>;

/** Posterior of working time and recoat together, all else at its prior (see `ensemble.ts` for how they are drawn). */
const spread: Omit<ResinSpread, 'kRefLn'> = {
  rhoLn: 0.75,
  order: 0.34,
  activation_J_mol: 6000,
  heatLn: 0.08,
  viscosityRefLn: 0.3,
  workingRatioLn: 0.35,
  gelConversion: 0.02,
  tgFull_K: 6,
  dryHardOffset_K: 6,
};

export const QUICK_20: ResinCard = {
  id: 'quick-20',
  name: 'Quick 20',
  description:
    'Fast top-coat resin: about 20 minutes in a 2.5 mm film at 24 C, next coat after 4 to 6 hours.',
  model: { ...shared, kRef_per_s: 1.856e-4, heat_J_kg: 320_000, viscosityRef_Pa_s: 1.2 },
  spread: { ...spread, kRefLn: 0.27 },
  mix: { volumeA: 2, volumeB: 1, densityA_kg_m3: 1130, densityB_kg_m3: 1000 },
  label: [
    { kind: 'working time', text: '20 min at 24 C in a 2.5 mm film' },
    { kind: 'recoat opens', text: '4 to 6 h at 24 C' },
    { kind: 'largest film', text: '3 mm' },
  ],
  largestFilm_m: 0.003,
  colourantLimit: 0.06,
};

export const REGULAR_50: ResinCard = {
  id: 'regular-50',
  name: 'Regular 50',
  description:
    'Regular table-top resin: about 52 minutes in a 2.5 mm film at 24 C, next coat after about a day.',
  model: { ...shared, kRef_per_s: 7.333e-5, heat_J_kg: 300_000, viscosityRef_Pa_s: 0.9 },
  spread: { ...spread, kRefLn: 0.26 },
  mix: { volumeA: 1, volumeB: 1, densityA_kg_m3: 1120, densityB_kg_m3: 980 },
  label: [
    { kind: 'working time', text: '52 min at 24 C in a 2.5 mm film' },
    { kind: 'recoat opens', text: '24 h at 24 C' },
    { kind: 'full cure', text: '7 d at 24 C' },
    { kind: 'largest film', text: '6 mm' },
  ],
  largestFilm_m: 0.006,
  colourantLimit: 0.06,
};

/** The cards a new shop starts with. */
export const GENERIC_CARDS: readonly ResinCard[] = [QUICK_20, REGULAR_50];
