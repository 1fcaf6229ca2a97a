import { conversionIntegral } from './closed-forms.ts';
import type { ResinModel } from './model.ts';
import { conversionForRatio } from './viscosity.ts';

/**
 * The coordinates a resin is fitted and drawn in. All but the first are what their name says (Ln: natural logarithm). The first
 * is not k1 but ln of the isothermal working time at 24 C, I(a_w)/k1: label and shop time a film, so in it the
 * strong bent ridge k1 - rho - n - working ratio becomes nearly straight, and a normal distribution fits.
 *
 * `mean` and `sd` are the priors for a room-temperature coating mix (see `cards.ts`); rho, order, working ratio and dry-hard
 * offset are those that labels of such resins were found to need, k1 (`K1_PRIOR`) is held only very loosely.
 */
export const COORDINATES = [
  { name: 'timingLn', mean: Number.NaN, sd: 0.1, about: 'how fast it is' },
  { name: 'rhoLn', mean: Math.log(0.3), sd: 0.9, about: 'how much it speeds itself up' },
  { name: 'order', mean: 2, sd: 0.4, about: 'how slowly it finishes' },
  { name: 'workingRatioLn', mean: Math.log(2.2), sd: 0.35, about: 'how thick "no longer workable" is' },
  { name: 'dryHardOffset_K', mean: 8, sd: 6, about: 'how hard the label calls dry' },
  { name: 'activation_kJ_mol', mean: 55, sd: 6, about: 'how much warmth speeds it up' },
  { name: 'heatLn', mean: Number.NaN, sd: 0.08, about: 'how much heat it makes' },
  { name: 'heatCapacity_J_kgK', mean: 1900, sd: 100, about: 'how much heat it takes to warm it' },
  { name: 'gelConversion', mean: 0.6, sd: 0.02, about: 'how far it has reacted when it gels' },
  { name: 'viscosityA', mean: 1.5, sd: 0.3, about: 'how it thickens' },
  { name: 'tgFull_K', mean: 330.15, sd: 6, about: 'how hard it gets in the end' },
  { name: 'tgStart_K', mean: 237.15, sd: 6, about: 'the glass transition of the fresh mix' },
  { name: 'tgLambda', mean: 0.44, sd: 0.05, about: 'how hardness follows reaction' },
  { name: 'vitrificationOffset_K', mean: 12, sd: 4, about: 'when hardness stops the reaction' },
  { name: 'cupLossLn', mean: 0, sd: Math.log(1.15), about: 'how a cup loses heat' },
  { name: 'viscosityLn', mean: 0, sd: 0.4, about: 'how thick it is when fresh' },
] as const satisfies readonly { name: string; mean: number; sd: number; about: string }[];

export type CoordinateName = (typeof COORDINATES)[number]['name'];
export const COORDINATE_COUNT = COORDINATES.length;
export const indexOf = (name: CoordinateName): number => COORDINATES.findIndex((each) => each.name === name);

/** ln k1: middle between quick and slow coating resins, and a factor of e either way. Common practice, no source. */
export const K1_PRIOR = { meanLn: Math.log(1.1e-4), sdLn: 1 } as const;

/** A fresh coating mix at 24 C when nothing is said, Pa s (0.5 to 2; from memory). */
export const VISCOSITY_PRIOR_Pa_s = 1;

const TIMING = 0;
const [RHO, ORDER, RATIO, DRY, ENERGY, HEAT, CAPACITY, GEL, BEND, TG1, TG0, LAMBDA, FROZEN, LOSS, ETA] = [
  1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15,
] as const;

/** A film counts as workable until it is at least this much thicker. */
const LEAST_RATIO = 1.15;

/** k1 times the isothermal working time: I(a_w). */
export function workingIntegral(model: ResinModel): number {
  return conversionIntegral(model.rho, model.order, conversionForRatio(model, model.workingRatio));
}

/**
 * The model at a point; constants that are no coordinate are those of `base`. Coordinates far outside their prior are
 * held at the edge of the model's domain, so that every point has a model.
 */
export function modelAt(point: ArrayLike<number>, base: ResinModel): ResinModel {
  const tgStart_K = within(point[TG0]!, 200, 290);
  const model: ResinModel = {
    ...base,
    kRef_per_s: 1,
    rho: Math.exp(within(point[RHO]!, -5, 4)),
    order: within(point[ORDER]!, 1, 4.5),
    workingRatio: Math.max(LEAST_RATIO, Math.exp(Math.min(point[RATIO]!, 4))),
    dryHardOffset_K: point[DRY]!,
    activation_J_mol: 1000 * within(point[ENERGY]!, 20, 120),
    heat_J_kg: Math.exp(within(point[HEAT]!, 9, 14)),
    heatCapacity_J_kgK: within(point[CAPACITY]!, 1000, 3500),
    gelConversion: within(point[GEL]!, 0.4, 0.85),
    viscosityA: within(point[BEND]!, 0.3, 5),
    tgFull_K: within(point[TG1]!, tgStart_K + 30, 450),
    tgStart_K,
    tgLambda: within(point[LAMBDA]!, 0.15, 0.95),
    vitrificationOffset_K: within(point[FROZEN]!, -10, 40),
    cupLossFactor: Math.exp(within(point[LOSS]!, -1, 1)),
    viscosityRef_Pa_s: Math.exp(within(point[ETA]!, -4, 5)),
  };
  return { ...model, kRef_per_s: workingIntegral(model) * Math.exp(-within(point[TIMING]!, 0, 16)) };
}

/** The point of a model. */
export function pointOf(model: ResinModel): number[] {
  return [
    Math.log(workingIntegral(model) / model.kRef_per_s),
    Math.log(model.rho),
    model.order,
    Math.log(model.workingRatio),
    model.dryHardOffset_K,
    model.activation_J_mol / 1000,
    Math.log(model.heat_J_kg),
    model.heatCapacity_J_kgK,
    model.gelConversion,
    model.viscosityA,
    model.tgFull_K,
    model.tgStart_K,
    model.tgLambda,
    model.vitrificationOffset_K,
    Math.log(model.cupLossFactor ?? 1),
    Math.log(model.viscosityRef_Pa_s),
  ];
}

function within(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
