/** When a cup must be out and a film stops being workable, for one resin in one shop: cured no further than needed. */
import { cureCup } from '#core/resin/cup.ts';
import { cureFilm } from '#core/resin/film.ts';
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
const FINE: Layers = { film: 4, board: 8 };
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
): FilmEnds {
  const start = stateWhenEmpty(model, request, DRAW_TOLERANCE);
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

/** Pour-now time of a cup on its own clock, s; null: not within four hours. `expected_s` as in `filmEnds`. */
export function pourNow_s(
  model: ResinModel,
  mass_kg: number,
  request: FilmRequest,
  expected_s = CUP_SPAN_s,
): number | null {
  const air = airFrom(request.air, request.mixed_s);
  const { time_s } = followed(expected_s, CUP_SPAN_s, (duration_s, last) => {
    const history = cureCup({
      model,
      mass_kg,
      air,
      start: request.resin,
      start_s: 0,
      duration_s,
      tolerance: DRAW_TOLERANCE,
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
