/** The film that stops flowing first, over the draws of its resin: every stage and the last moments a tool may touch. */

import type { Liquid } from '#core/film/constants.ts';
import { thetaToLevel } from '#core/film/levelling.ts';
import type { EndLoss } from '#core/numeric/column.ts';
import { cureCup } from '#core/resin/cup.ts';
import { rangeOf } from '#core/resin/ensemble.ts';
import { cureFilm, FULL_CURE_SPAN_s } from '#core/resin/film.ts';
import { readState, timeOfTheta } from '#core/resin/history.ts';
import type {
  AirTemperature,
  Board,
  CureHistory,
  CureState,
  ResinModel,
  TimeRange,
} from '#core/resin/model.ts';
import { type FilmStages, filmStages } from '#core/resin/stages.ts';
import { airFrom, later } from './clocks.ts';

export interface FilmRequest {
  readonly thickness_m: number;
  readonly board: Board;
  readonly board_K: number;
  readonly air: AirTemperature;
  readonly resin: CureState;
  readonly cup_kg: number;
  /** On the plan's clock: the cup's parts meet, and it is empty. */
  readonly mixed_s: number;
  readonly emptied_s: number;
}

export interface Tolerances {
  readonly relative: number;
  readonly conversion: number;
  readonly temperature: number;
}

/** For the draws: stage times within about half a percent, far inside what the draws differ by. */
export const DRAW_TOLERANCE: Tolerances = { relative: 1e-4, conversion: 1e-5, temperature: 0.01 };

/** State a cup has when it is empty: what its film starts with. `loss` as `CupSetup` takes it. */
export function stateWhenEmpty(
  model: ResinModel,
  request: FilmRequest,
  tolerance?: Tolerances,
  loss?: EndLoss,
): CureState {
  const { air, resin, cup_kg, mixed_s, emptied_s } = request;
  const stands_s = emptied_s - mixed_s;
  const history = cureCup({
    model,
    mass_kg: cup_kg,
    air: airFrom(air, mixed_s),
    start: resin,
    start_s: 0,
    duration_s: stands_s,
    ...(tolerance === undefined ? {} : { tolerance }),
    ...(loss === undefined ? {} : { loss }),
  });
  const { conversion, temperature_K } = readState(history, stands_s, model);
  return { conversion, temperature_K };
}

/** The film of one cup on its own clock, 0 = the cup is empty. */
export function filmOf(
  model: ResinModel,
  request: FilmRequest,
  options: { readonly duration_s?: number; readonly tolerance?: Tolerances } = {},
): CureHistory {
  const { tolerance, duration_s = FULL_CURE_SPAN_s } = options;
  return cureFilm({
    model,
    thickness_m: request.thickness_m,
    board: request.board,
    boardStart_K: request.board_K,
    air: airFrom(request.air, request.emptied_s),
    start: stateWhenEmpty(model, request, tolerance),
    start_s: 0,
    duration_s,
    ...(tolerance === undefined ? {} : { tolerance }),
  });
}

/**
 * Last moment on the film's clock at which marks of a pitch still fall to 1 % by gel; null when even the first moment is too
 * late (film too thin, or pitch too long).
 */
export function lastTouch_s(
  history: CureHistory,
  pitch_m: number,
  thickness_m: number,
  liquid: Liquid,
): number | null {
  const total = history.theta_per_Pa[history.theta_per_Pa.length - 1]!;
  const spent = total - thetaToLevel(pitch_m, thickness_m, 0.01, liquid);
  return spent < 0 ? null : timeOfTheta(history, spent);
}

export type StageTimes = { readonly [K in keyof Omit<FilmStages, 'peak_K' | 'peak_s'>]: TimeRange | null };

export interface FilmTimes {
  /** On the plan's clock. */
  readonly stages: StageTimes;
  /** Last touch for marks 50 mm apart; null: in more than 5 % of the draws they stay whenever they are made. */
  readonly torch: TimeRange | null;
}

/** The same times when the film is on the board later by so much, s. */
export function filmTimesLater(times: FilmTimes, by_s: number): FilmTimes {
  const moved = (range: TimeRange | null) => (range === null ? null : later(range, by_s));
  const stages = Object.entries(times.stages).map(([key, range]) => [key, moved(range)]);
  return { stages: Object.fromEntries(stages) as StageTimes, torch: moved(times.torch) };
}

export const TORCH_PITCH_m = 0.05;

/** Ranges of the film's times over the draws; each draw's film starts as that draw's own cup ends. */
export function filmTimes(models: readonly ResinModel[], request: FilmRequest): FilmTimes {
  const air = airFrom(request.air, request.emptied_s);
  const each = models.map((model) => {
    const history = filmOf(model, request, { tolerance: DRAW_TOLERANCE });
    const { peak_K: _peak, peak_s: _at, ...stages } = filmStages(history, model, air);
    return { stages, torch: lastTouch_s(history, TORCH_PITCH_m, request.thickness_m, model) };
  });
  const told = (times: readonly (number | null)[]) => {
    const range = rangeOf(times);
    return range === null ? null : later(range, request.emptied_s);
  };
  const keys = Object.keys(each[0]!.stages) as (keyof StageTimes)[];
  const stages = Object.fromEntries(keys.map((key) => [key, told(each.map((draw) => draw.stages[key]))]));
  const stays = each.filter((draw) => draw.torch === null).length;
  return {
    stages: stages as StageTimes,
    torch: stays > 0.05 * each.length ? null : told(each.map((draw) => draw.torch ?? 0)),
  };
}
