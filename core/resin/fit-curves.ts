import { type Band, bandOf, type CurveOptions } from './card-curves.ts';
import { drawModels } from './ensemble.ts';
import { type Body, prepareBody } from './follow.ts';
import { tgOf } from './kinetics.ts';
import { type Figure, isCupFigure, middleOf, UNSAID } from './label.ts';
import { sayFigure } from './label-terms.ts';
import type { ResinCard, ResinModel } from './model.ts';
import { OBSERVED, sayObservation } from './observation-terms.ts';
import type { Observation } from './observations.ts';
import { viscosityRatio } from './viscosity.ts';

/** What a chart shows against time: the cup's temperature (K), the film's viscosity against fresh, or its Tg above itself (K). */
export type FitQuantity = 'cup temperature' | 'film thickening' | 'film hardness';

export interface FitPoint {
  readonly time_s: number;
  /** null: the figure gives a time only; draw it as a line. */
  readonly value: number | null;
  readonly said: string;
  readonly source: 'label' | 'shop';
  readonly withdrawn: boolean;
}

/** One chart of the fit: the band of the draws over time, and the figures it was fitted to. */
export interface FitCurve {
  readonly quantity: FitQuantity;
  readonly body: Body;
  readonly time_s: readonly number[];
  readonly band: readonly Band[];
  readonly points: readonly FitPoint[];
}

/** Thicker than this is drawn as this: from gel on a viscosity has no number. */
export const MOST_THICKENING = 1000;
const POINTS = 60;

interface Placed {
  readonly quantity: FitQuantity;
  readonly body: Body;
  readonly points: readonly FitPoint[];
}

/**
 * The fit drawn over its data: one chart for each body (film or cup, with its temperature) and quantity that a label figure or an
 * observation is about. About 0.1 s a chart with the usual 60 draws.
 */
export function fitCurves(card: ResinCard, options: CurveOptions = {}): FitCurve[] {
  const models = drawModels(card, options.draws ?? 60, options.seed ?? 1);
  const charts = new Map<string, Placed>();
  const placed = [
    ...(card.figures ?? []).flatMap((figure) => placeFigure(figure, card.model)),
    ...(card.observations ?? []).flatMap((seen) => placeObservation(seen, card.model)),
  ];
  for (const one of placed) {
    const key = `${one.quantity} ${JSON.stringify(one.body)}`;
    const before = charts.get(key);
    charts.set(key, before === undefined ? one : { ...one, points: [...before.points, ...one.points] });
  }
  return [...charts.values()].map(({ quantity, body, points }) => {
    const latest = Math.max(...points.map((point) => point.time_s));
    const time_s = grid(quantity, latest);
    const follow = prepareBody(body, card.model);
    const each = models.map((model) => {
      const limit_s = time_s[time_s.length - 1]!;
      const { samples } = follow(model, { watches: [], samples_s: time_s, peak: false, limit_s });
      return samples.map(({ conversion, temperature_K }) =>
        readingOf(quantity, model, conversion, temperature_K),
      );
    });
    return { quantity, body, time_s, points, band: time_s.map((_, i) => bandOf(each.map((one) => one[i]!))) };
  });
}

/** Even in time for cups and thickening, even in ln t for hardness. */
function grid(quantity: FitQuantity, latest_s: number): number[] {
  if (quantity !== 'film hardness') {
    return Array.from({ length: POINTS }, (_, i) => ((i + 1) / POINTS) * 1.6 * latest_s);
  }
  const from = latest_s / 50;
  return Array.from({ length: POINTS }, (_, i) => from * 150 ** (i / (POINTS - 1)));
}

function readingOf(quantity: FitQuantity, model: ResinModel, a: number, T: number): number {
  if (quantity === 'cup temperature') return T;
  if (quantity === 'film hardness') return tgOf(model, a) - T;
  return Math.min(MOST_THICKENING, viscosityRatio(model, a) ?? MOST_THICKENING);
}

function placeFigure(figure: Figure, model: ResinModel): Placed[] {
  const temperature_K = figure.temperature_K ?? UNSAID.temperature_K;
  const film: Body = { film_m: figure.film_m ?? UNSAID.film_m, temperature_K };
  const point = (value: number | null): FitPoint => ({
    time_s: middleOf(figure),
    value,
    said: sayFigure(figure),
    source: 'label',
    withdrawn: false,
  });
  switch (figure.kind) {
    case 'viscosity':
    case 'largest film':
      return [];
    case 'working time':
    case 'pot life': {
      if (!isCupFigure(figure)) {
        return [{ quantity: 'film thickening', body: film, points: [point(model.workingRatio)] }];
      }
      const body: Body = { mass_kg: figure.mass_kg ?? UNSAID.mass_kg, temperature_K };
      const value = figure.end === '40 C' ? 313.15 : figure.end === '50 C' ? 323.15 : null;
      return [{ quantity: 'cup temperature', body, points: [point(value)] }];
    }
    case 'recoat opens':
    case 'dry hard':
      return [{ quantity: 'film hardness', body: film, points: [point(model.dryHardOffset_K)] }];
    case 'recoat closes':
    case 'handle':
    case 'full cure':
      return [{ quantity: 'film hardness', body: film, points: [point(null)] }];
  }
}

function placeObservation(seen: Observation, model: ResinModel): Placed[] {
  const mark = (time_s: number, value: number | null): FitPoint => ({
    time_s,
    value,
    said: sayObservation(seen),
    source: 'shop',
    withdrawn: seen.withdrawn,
  });
  if ('film_m' in seen) {
    const body: Body = { film_m: seen.film_m, temperature_K: seen.air_K };
    if (seen.kind === 'working end')
      return [{ quantity: 'film thickening', body, points: [mark(seen.time_s, model.workingRatio)] }];
    if (seen.kind === 'gel')
      return [{ quantity: 'film thickening', body, points: [mark(seen.time_s, MOST_THICKENING)] }];
    const value = seen.kind === 'touch' ? OBSERVED.touchOffset_K : null;
    return [{ quantity: 'film hardness', body, points: [mark(seen.time_s, value)] }];
  }
  const start_K = seen.kind === 'cup temperatures' ? seen.readings[0]!.temperature_K : seen.start_K;
  const body: Body = {
    mass_kg: seen.mass_kg,
    temperature_K: seen.air_K,
    ...(seen.diameter_m === undefined ? {} : { diameter_m: seen.diameter_m }),
    ...(start_K === undefined ? {} : { start_K }),
  };
  const points =
    seen.kind === 'cup temperatures'
      ? seen.readings.map((reading) => mark(reading.time_s, reading.temperature_K))
      : [mark(seen.time_s, seen.kind === 'cup time' ? seen.reaches_K : null)];
  return [{ quantity: 'cup temperature', body, points }];
}
