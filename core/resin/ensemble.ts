import { quantileOfSorted } from '#core/numeric/quantile.ts';
import { latinHypercube, normalQuantile, randomStream } from '#core/numeric/random.ts';
import type { Tolerance } from '#core/numeric/rosenbrock.ts';
import { BOARDS } from './boards.ts';
import { requireRange } from './check.ts';
import { conversionIntegral } from './closed-forms.ts';
import { cureFilm, FILM_COEFFICIENT_W_m2K } from './film.ts';
import {
  type AirTemperature,
  REFERENCE_K,
  type ResinCard,
  type ResinModel,
  type ResinSpread,
  type TimeRange,
} from './model.ts';
import { drawPosterior } from './posterior.ts';
import { filmStages } from './stages.ts';
import { conversionForRatio } from './viscosity.ts';

/** A label's working time means itself to about 12 % (one standard deviation of its logarithm). Common practice, no source. */
export const LABEL_TIME_LN = 0.12;

/** A range, and how many of the draws get there at all. */
export interface ReachedRange extends TimeRange {
  /** Share of the draws that reach the event in the span, 0 to 1. */
  readonly reached: number;
}

/**
 * A cheap posterior of a resin: `count` models, the first of them the card's own.
 *
 * rho, order, activation, heat, viscosity, working ratio, gel point, full Tg and dry-hard offset are drawn from the card's
 * spread by a Latin hypercube (normal, logarithmic where the spread says Ln, cut at 2.6 standard deviations and to the
 * model's own domain; the working ratio R through ln(R - 1), so that it stays above 1: 2 with 0.35 means 1.3 to 4). A
 * working time pins k1 against all these rather than k1 itself, so k1 is then solved for: the working time of a 2.5 mm
 * film on 18 mm MDF at 24 C must be the card's own times exp(normal). So working times scatter as the label does, while
 * cups, gel and hardness scatter with all that a working time leaves open.
 *
 * The spread's `kRefLn` is the total (marginal) deviation of ln k1. What rho, order, working ratio and gel point do not
 * explain of it is left to the normal factor, but that is at least `LABEL_TIME_LN` (or `kRefLn` itself where a card is
 * known better than a label). About 0.3 ms a draw: draw once, use for every film and cup.
 *
 * @param count 1 to 10 000.
 * @param seed whole number; the same seed gives the same draws.
 * @throws RangeError outside these.
 */
export function drawModels(card: ResinCard, count: number, seed: number): ResinModel[] {
  requireRange('count', count, 1, 10_000);
  const { model, spread } = card;
  const models: ResinModel[] = [model];
  if (count === 1) return models;
  if (card.posterior !== undefined) {
    return [...models, ...drawPosterior(card.posterior, model, count - 1, seed)];
  }
  const timing = timingSpread(model, spread);
  const target_s = filmWorkingTime(model, isothermalWorkingTime(model));
  for (const point of latinHypercube(count - 1, 10, randomStream(seed))) {
    const z = (dimension: number) => Math.min(2.6, Math.max(-2.6, normalQuantile(point[dimension]!)));
    const drawn: ResinModel = {
      ...model,
      rho: model.rho * Math.exp(spread.rhoLn * z(0)),
      order: within(model.order + spread.order * z(1), 1, 5),
      activation_J_mol: within(model.activation_J_mol + spread.activation_J_mol * z(2), 20_000, 120_000),
      heat_J_kg: model.heat_J_kg * Math.exp(spread.heatLn * z(3)),
      viscosityRef_Pa_s: model.viscosityRef_Pa_s * Math.exp(spread.viscosityRefLn * z(4)),
      workingRatio: scaledRatio(model, spread.workingRatioLn * z(5)),
      gelConversion: within(model.gelConversion + spread.gelConversion * z(6), 0.3, 0.9),
      tgFull_K: Math.max(model.tgStart_K + 10, model.tgFull_K + spread.tgFull_K * z(7)),
      dryHardOffset_K: model.dryHardOffset_K + spread.dryHardOffset_K * z(8),
    };
    models.push(withWorkingTime(drawn, target_s * Math.exp(timing * z(9))));
  }
  return models;
}

/** Working ratio moved by `move` in its logarithm at the middle, through ln(R - 1). */
function scaledRatio(model: ResinModel, move: number): number {
  const excess = model.workingRatio - 1;
  return 1 + excess * Math.exp((move * model.workingRatio) / excess);
}

const COARSE: Tolerance = { relative: 1e-4, conversion: 1e-5, temperature: 1e-2 };
const LABEL_AIR: AirTemperature = { time_s: [0], temperature_K: [REFERENCE_K] };

/** Working time of the label's film (2.5 mm on 18 mm MDF at 24 C), s. One film node and six board nodes: 1 % is enough here. */
function filmWorkingTime(model: ResinModel, expected_s: number): number {
  for (let span = 1.5 * expected_s; ; span *= 3) {
    const history = cureFilm({
      model,
      thickness_m: 0.0025,
      board: BOARDS['mdf-18'],
      air: LABEL_AIR,
      start: { conversion: 0, temperature_K: REFERENCE_K },
      start_s: 0,
      duration_s: span,
      filmNodes: 1,
      boardNodes: 6,
      surfaceCoefficient_W_m2K: FILM_COEFFICIENT_W_m2K,
      tolerance: COARSE,
    });
    const end = filmStages(history, model, LABEL_AIR).workingEnd_s;
    if (end !== null) return end;
    if (span > 1e8) throw new RangeError(`a film of ${model.kRef_per_s} per s never thickens`);
  }
}

const isothermalWorkingTime = (model: ResinModel): number => workingIntegral(model) / model.kRef_per_s;

/** The model with the k1 that gives the label's film this working time, to 0.5 %: secant on the logarithms. */
function withWorkingTime(model: ResinModel, target_s: number): ResinModel {
  const at = (lnK: number) => {
    const tried = { ...model, kRef_per_s: Math.exp(lnK) };
    return Math.log(filmWorkingTime(tried, Math.max(target_s, isothermalWorkingTime(tried))) / target_s);
  };
  // Isothermal start; self-heating makes the film faster, so the slope of ln t against ln k is -1 or steeper.
  let lnK = Math.log(workingIntegral(model) / target_s);
  let error = at(lnK);
  let slope = -1.2;
  for (let pass = 0; pass < 12 && Math.abs(error) > 0.005; pass++) {
    const next = lnK - within(error / slope, -0.5, 0.5);
    const nextError = at(next);
    slope = within((nextError - error) / (next - lnK), -6, -0.7);
    lnK = next;
    error = nextError;
  }
  return { ...model, kRef_per_s: Math.exp(lnK) };
}

/** k1 times the isothermal working time: I(a_w). */
function workingIntegral(model: ResinModel): number {
  return conversionIntegral(model.rho, model.order, conversionForRatio(model, model.workingRatio));
}

/** Deviation of ln k1 that is timing, not compensation. */
function timingSpread(model: ResinModel, spread: ResinSpread): number {
  const half = (up: Partial<ResinModel>, down: Partial<ResinModel>) =>
    0.5 * Math.log(workingIntegral({ ...model, ...up }) / workingIntegral({ ...model, ...down }));
  const parts = [
    half({ rho: model.rho * Math.exp(spread.rhoLn) }, { rho: model.rho * Math.exp(-spread.rhoLn) }),
    half(
      { order: within(model.order + spread.order, 1, 5) },
      { order: within(model.order - spread.order, 1, 5) },
    ),
    half(
      { workingRatio: scaledRatio(model, spread.workingRatioLn) },
      { workingRatio: scaledRatio(model, -spread.workingRatioLn) },
    ),
    half(
      { gelConversion: within(model.gelConversion + spread.gelConversion, 0.3, 0.9) },
      { gelConversion: within(model.gelConversion - spread.gelConversion, 0.3, 0.9) },
    ),
  ];
  const explained = parts.reduce((sum, part) => sum + part * part, 0);
  const left = Math.sqrt(Math.max(0, spread.kRefLn ** 2 - explained));
  return Math.max(left, Math.min(LABEL_TIME_LN, spread.kRefLn));
}

function within(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}

/**
 * 5, 50 and 95 % quantiles of times over an ensemble. A null (not reached in the span) counts as later than every time, so
 * the low quantile, which safety limits use, is right as long as 5 % reach it. Where the middle or the high quantile falls among the
 * nulls it is given as the latest time reached, and `reached` below 1 says that it is a lower bound.
 *
 * @returns null when fewer than 5 % of the draws reach it.
 * @throws RangeError on an empty list or a time that is not finite.
 */
export function rangeOf(times: readonly (number | null)[]): ReachedRange | null {
  if (times.length === 0) throw new RangeError('no times to take a range of');
  const sorted = times.filter((time) => time !== null).sort((a, b) => a - b);
  for (const time of sorted) {
    if (!Number.isFinite(time)) throw new RangeError(`time ${time} must be finite`);
  }
  const reached = sorted.length / times.length;
  if (reached < 0.05 || sorted.length === 0) return null;
  const latest = sorted[sorted.length - 1]!;
  const padded = times.map((_, i) => sorted[i] ?? latest);
  return {
    low_s: quantileOfSorted(padded, 0.05),
    mid_s: quantileOfSorted(padded, 0.5),
    high_s: quantileOfSorted(padded, 0.95),
    reached,
  };
}
