import type { ResinCardDocumentInput } from './card-document.ts';
import { QUICK_DOCUMENT, REGULAR_DOCUMENT } from './generic-documents.ts';
import { QUICK_FIT, REGULAR_FIT } from './generic-fits.ts';
import type { ResinCard, ResinModel } from './model.ts';
import { readCard } from './read-card.ts';

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
 *  - working ratio 2 (viscosity doubled): common practice, no source; dry hard where the label's recoat time puts it.
 *
 * The two are documents like any other card (`generic-documents.ts`), fitted the same way; the fit is kept as plain data
 * (`generic-fits.ts`), because fitting at every start would cost each page and each forecast a quarter of a second. Only the middle
 * model is not the fit's own but the rounder set above, which lies within the posterior (see reference/label-fit.test.ts): the
 * checks against published tables are made with it.
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
  surfaceTension_N_m: 0.035,
} as const satisfies Partial<ResinModel>;

function generic(
  document: ResinCardDocumentInput,
  fit: Pick<ResinCard, 'posterior' | 'spread' | 'account'>,
  model: ResinModel,
  largestFilm_m: number,
): ResinCard {
  const read = readCard(document);
  if (!read.ok) throw new RangeError(`a generic card does not read: ${read.problems[0]!.message}`);
  const { id, name, description, label, texts } = read.value;
  return {
    id,
    name,
    description,
    model,
    ...fit,
    mix: label.mix,
    label: texts,
    figures: label.figures,
    observations: [],
    heatPrior_J_kg: model.heat_J_kg,
    largestFilm_m,
    colourantLimit: label.colourantLimit!,
  };
}

export const QUICK_20: ResinCard = generic(
  QUICK_DOCUMENT,
  QUICK_FIT,
  {
    ...shared,
    kRef_per_s: 1.856e-4,
    heat_J_kg: 320_000,
    viscosityRef_Pa_s: 1.2,
    dryHardOffset_K: 9.5,
  },
  0.003,
);

export const REGULAR_50: ResinCard = generic(
  REGULAR_DOCUMENT,
  REGULAR_FIT,
  {
    ...shared,
    kRef_per_s: 7.333e-5,
    heat_J_kg: 300_000,
    viscosityRef_Pa_s: 0.9,
    dryHardOffset_K: 12,
  },
  0.006,
);

/** The cards a new shop starts with. */
export const GENERIC_CARDS: readonly ResinCard[] = [QUICK_20, REGULAR_50];
