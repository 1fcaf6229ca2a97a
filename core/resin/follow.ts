import { brent } from '#core/numeric/brent.ts';
import { type Column, type EndLoss, linearLoss } from '#core/numeric/column.ts';
import { hermite, hermitePeak } from '#core/numeric/hermite.ts';
import { integrateColumn, STOP, type Tolerance } from '#core/numeric/rosenbrock.ts';
import { BOARDS } from './boards.ts';
import { cupLoss, cupShape, scaledLoss } from './cup-loss.ts';
import { filmColumn, filmLoss } from './film.ts';
import { reactionOf } from './kinetics.ts';
import type { ResinModel } from './model.ts';

/** A film on 18 mm MDF, or a cup, in steady air and starting at its temperature: what label figures and cup tests are about. */
export type Body =
  | { readonly film_m: number; readonly temperature_K: number }
  | {
      readonly mass_kg: number;
      readonly diameter_m?: number | undefined;
      readonly temperature_K: number;
      /** Default: as the air. */
      readonly start_K?: number | undefined;
    };

/** A quantity of the state, and the level whose first passing is asked for. */
export interface Watch {
  readonly quantity: (conversion: number, temperature_K: number) => number;
  readonly level: number;
  /** Growth of the quantity per unit of ln t that is assumed at least where it is not reached in time; positive. */
  readonly slowest: number;
}

/** What was seen of a body that was followed. */
export interface Seen {
  /** ln of the time (s) each watch is reached; beyond the limit carried on by the last growth per unit of ln t. */
  readonly reachedLn: readonly number[];
  /** State at each sample time. */
  readonly samples: readonly { readonly conversion: number; readonly temperature_K: number }[];
  /** Highest mean temperature, and when. */
  readonly peak_K: number;
  readonly peak_s: number;
}

export interface Question {
  readonly watches: readonly Watch[];
  readonly samples_s: readonly number[];
  /** Follow until the peak has passed (or `limit_s`). */
  readonly peak: boolean;
  /** Longest time followed for the watches and the peak, s. */
  readonly limit_s: number;
}

/** For fits: times within half a percent, far below what a label figure means by itself. */
export const FOLLOW_TOLERANCE: Tolerance = { relative: 1e-4, conversion: 1e-5, temperature: 1e-2 };

/** Films thinner than this are one layer, thicker ones three. */
const LAYERED_FROM_m = 0.004;
const BOARD_NODES = 6;

/**
 * A body made ready to be followed with many models that share conductivity and density: its heat loss is tabulated once. The same
 * equations as `cureFilm` and `cureCup`, without their histories and with fewer layers; a watch stops the run as soon as all is
 * seen. About 0.1 ms a run.
 */
export function prepareBody(body: Body, base: ResinModel): (model: ResinModel, question: Question) => Seen {
  if ('film_m' in body) {
    const layers = body.film_m < LAYERED_FROM_m ? 1 : 3;
    const half = body.film_m / layers / (2 * base.conductivity_W_mK);
    const loss = filmLoss(undefined, half, body.temperature_K);
    return (model, question) => {
      const film = { model, thickness_m: body.film_m, board: BOARDS['mdf-18'] };
      const column = filmColumn(film, layers, BOARD_NODES, loss);
      return follow(column, layers, body.temperature_K, body.temperature_K, question);
    };
  }
  const shape = cupShape(body.mass_kg / base.density_kg_m3, body.diameter_m);
  const loss = cupLoss(shape, base.conductivity_W_mK, body.temperature_K);
  return (model, question) =>
    follow(
      cupColumn(model, body.mass_kg, loss),
      1,
      body.start_K ?? body.temperature_K,
      body.temperature_K,
      question,
    );
}

function cupColumn(model: ResinModel, mass_kg: number, loss: EndLoss): Column {
  return {
    capacity: Float64Array.of(mass_kg * model.heatCapacity_J_kgK),
    conductance: new Float64Array(0),
    heat: Float64Array.of(mass_kg * model.heat_J_kg),
    reaction: reactionOf(model),
    firstLoss: scaledLoss(loss, model.cupLossFactor ?? 1),
    lastLoss: linearLoss(0),
  };
}

/** K the mean must have fallen for its peak to be over. */
const PAST_PEAK_K = 1.5;

function follow(column: Column, layers: number, start_K: number, air_K: number, asked: Question): Seen {
  const { watches, samples_s, limit_s } = asked;
  const nodes = column.capacity.length;
  const reached = new Array<number>(watches.length).fill(Number.NaN);
  const samples = samples_s.map(() => ({ conversion: 0, temperature_K: start_K }));
  const lastSample = samples_s.length === 0 ? 0 : Math.max(...samples_s);
  const best = new Array<number>(watches.length).fill(Number.NEGATIVE_INFINITY);
  let left = watches.length;
  let peak_K = start_K;
  let peak_s = 0;
  let before = { t: 0, a: 0, T: start_K, fa: 0, fT: 0 };
  const temperature = new Float64Array(nodes).fill(air_K, layers);
  temperature.fill(start_K, 0, layers);
  integrateColumn(
    column,
    new Float64Array(layers),
    temperature,
    {
      start: 0,
      end: Math.max(limit_s, lastSample),
      surroundings: { time: [0], value: [air_K] },
      tolerance: FOLLOW_TOLERANCE,
    },
    (t, aNodes, TNodes, aRates, TRates) => {
      const now = { t, a: mean(aNodes, layers), T: mean(TNodes, layers), fa: 0, fT: 0 };
      now.fa = mean(aRates, layers);
      now.fT = mean(TRates, layers);
      const h = t - before.t;
      const from = before;
      const aAt = (s: number) => clip(hermite(from.a, from.fa, now.a, now.fa, h, s));
      const TAt = (s: number) => hermite(from.T, from.fT, now.T, now.fT, h, s);
      if (now.T > peak_K) {
        peak_K = now.T;
        peak_s = t;
      }
      if (h > 0 && from.fT > 0 && now.fT < 0) {
        const at = hermitePeak(from.T, from.fT, now.T, now.fT, h);
        if (TAt(at) >= peak_K) {
          peak_K = TAt(at);
          peak_s = from.t + at;
        }
      }
      for (let i = 0; i < watches.length; i++) {
        if (!Number.isNaN(reached[i]!)) continue;
        const { quantity, level } = watches[i]!;
        const value = quantity(now.a, now.T);
        if (value > best[i]!) best[i] = value;
        if (value < level) continue;
        left--;
        if (h === 0 || quantity(from.a, from.T) >= level) reached[i] = Math.log(Math.max(t, 1));
        else
          reached[i] = Math.log(
            Math.max(1, from.t + brent((s) => quantity(aAt(s), TAt(s)) - level, 0, h, 1e-6 * t)),
          );
      }
      samples_s.forEach((at, i) => {
        if (h > 0 && at > from.t && at <= t)
          samples[i] = { conversion: aAt(at - from.t), temperature_K: TAt(at - from.t) };
      });
      before = now;
      const peaked = !asked.peak || (now.T < peak_K - PAST_PEAK_K && now.fT < 0);
      return left === 0 && peaked && t >= lastSample ? STOP : undefined;
    },
  );
  const { t, a, T, fa, fT } = before;
  watches.forEach(({ quantity, level, slowest }, i) => {
    if (!Number.isNaN(reached[i]!)) return;
    const grown = 1000 * (quantity(clip(a + fa * t * 1e-3), T + fT * t * 1e-3) - quantity(a, T));
    reached[i] = Math.log(Math.max(t, 1)) + (level - best[i]!) / Math.max(grown, slowest);
  });
  return { reachedLn: reached, samples, peak_K, peak_s };
}

function mean(values: Float64Array, count: number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) sum += values[i]!;
  return sum / count;
}

const clip = (conversion: number): number => Math.min(1, Math.max(0, conversion));
