/** When a cup must be out and a film stops being workable, for one resin in one shop: cured no further than needed. */
import { type EndLoss, surroundingsAt } from '#core/numeric/column.ts';
import { cureCup, lossOfCup } from '#core/resin/cup.ts';
import { scaledLoss } from '#core/resin/cup-loss.ts';
import { cureFilm, surroundingsOf } from '#core/resin/film.ts';
import type { AirTemperature, ResinModel } from '#core/resin/model.ts';
import { cupStages, filmStages } from '#core/resin/stages.ts';
import { airFrom } from '../clocks.ts';
import { CUP_SPAN_s } from '../cup-times.ts';
import {
  DRAW_TOLERANCE,
  type FilmRequest,
  lastTouch_s,
  stateWhenEmpty,
  TORCH_PITCH_m,
} from '../film-times.ts';

/** Film times later than this are told as this; a pour is long over. */
export const FILM_SPAN_s = 2 * 86_400;

export function shifted(air: AirTemperature, by_K: number): AirTemperature {
  return by_K === 0
    ? air
    : { time_s: air.time_s, temperature_K: air.temperature_K.map((temperature) => temperature + by_K) };
}

/** The film of a pour whose shop is off by so much, and whose first cup stood so many times as long. */
export function filmMoved(request: FilmRequest, by_K: number, stood: number): FilmRequest {
  return {
    ...request,
    air: shifted(request.air, by_K),
    board_K: request.board_K + by_K,
    resin: { ...request.resin, temperature_K: request.resin.temperature_K + by_K },
    emptied_s: request.mixed_s + (request.emptied_s - request.mixed_s) * stood,
  };
}

/** Layers of film and board. */
interface Layers {
  readonly film: number;
  readonly board: number;
}
export const FINE: Layers = { film: 4, board: 8 };
/** What cold, warmth and standing change is read off a coarser film: its own time is 1 % off, what it changes by hardly. */
export const COARSE: Layers = { film: 1, board: 4 };

export interface FilmEnds {
  readonly workingEnd_s: number | null;
  readonly gel_s: number | null;
  /** Null: marks stay whenever they are made. */
  readonly torch_s: number | null;
}

/**
 * Working end, last touch and gel, s from when the cup's parts meet; null: not within two days. Nothing of them lies past gel (the
 * flow budget stands still there), so the film is followed no further than it.
 *
 * @param expected_s about when it gels; a wrong one costs time, not accuracy.
 */
export function filmEnds(
  model: ResinModel,
  request: FilmRequest,
  expected_s = FILM_SPAN_s,
  layers: Layers = FINE,
  lossOf: LossOf = computed,
): FilmEnds {
  const cupAir_K = startsIn(airFrom(request.air, request.mixed_s));
  const start = stateWhenEmpty(model, request, DRAW_TOLERANCE, lossOf(model, request.cup_kg, cupAir_K));
  const air = airFrom(request.air, request.emptied_s);
  const stood_s = request.emptied_s - request.mixed_s;
  const from = (time_s: number | null) => (time_s === null ? null : time_s + stood_s);
  return followed(expected_s - stood_s, FILM_SPAN_s, (duration_s, last) => {
    const { thickness_m, board, board_K: boardStart_K } = request;
    const history = cureFilm({
      model,
      thickness_m,
      board,
      boardStart_K,
      air,
      start,
      start_s: 0,
      duration_s,
      filmNodes: layers.film,
      boardNodes: layers.board,
      tolerance: DRAW_TOLERANCE,
    });
    const { workingEnd_s, gel_s } = filmStages(history, model, air);
    if (gel_s === null && !last) return null;
    const torch_s = lastTouch_s(history, TORCH_PITCH_m, thickness_m, model);
    return { workingEnd_s: from(workingEnd_s), gel_s: from(gel_s), torch_s: from(torch_s) };
  });
}

/** Loss of a standing cup in air of a temperature, see `CupSetup.loss`. */
export type LossOf = (model: ResinModel, mass_kg: number, air_K: number) => EndLoss;

/** Computes each loss once: draws of one card differ in how a cup of them cools by a factor at most. */
export function lossesKept(): LossOf {
  const kept = new Map<string, EndLoss>();
  return (model, mass_kg, air_K) => {
    const key = [mass_kg, air_K, model.density_kg_m3, model.conductivity_W_mK].join();
    const plain = kept.get(key) ?? lossOfCup({ model: { ...model, cupLossFactor: 1 }, mass_kg }, air_K);
    kept.set(key, plain);
    return scaledLoss(plain, model.cupLossFactor ?? 1);
  };
}

const computed: LossOf = (model, mass_kg, air_K) => lossOfCup({ model, mass_kg }, air_K);

const startsIn = (air: AirTemperature) => surroundingsAt(surroundingsOf(air), 0);

/** Pour-now time of a cup on its own clock, s; null: not within four hours. `expected_s` as in `filmEnds`. */
export function pourNow_s(
  model: ResinModel,
  mass_kg: number,
  request: FilmRequest,
  expected_s = CUP_SPAN_s,
  lossOf: LossOf = computed,
): number | null {
  const air = airFrom(request.air, request.mixed_s);
  const loss = lossOf(model, mass_kg, startsIn(air));
  const { time_s } = followed(expected_s, CUP_SPAN_s, (duration_s, last) => {
    const history = cureCup({
      model,
      mass_kg,
      air,
      start: request.resin,
      start_s: 0,
      duration_s,
      tolerance: DRAW_TOLERANCE,
      loss,
    });
    const found_s = cupStages(history, model).pourNow_s;
    return found_s === null && !last ? null : { time_s: found_s };
  });
  return time_s;
}

/** Cures over a span a little longer than expected, then over ever longer ones, until what is looked for is in it. */
function followed<T>(
  expected_s: number,
  span_s: number,
  cure: (duration_s: number, last: boolean) => T | null,
): T {
  for (let duration_s = 1.3 * Math.max(60, expected_s); ; duration_s *= 2.5) {
    const last = duration_s >= span_s;
    const found = cure(Math.min(duration_s, span_s), last);
    if (found !== null) return found;
  }
}
