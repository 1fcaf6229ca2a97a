import { type Column, type EndLoss, linearLoss, surroundingsAt } from '#core/numeric/column.ts';
import { integrateColumn, type Tolerance } from '#core/numeric/rosenbrock.ts';
import { COLDEST_K, HOTTEST_K, requirePositive, requireRange } from './check.ts';
import { surfaceCoefficient } from './convection.ts';
import { reactionOf } from './kinetics.ts';
import { tabulatedLoss } from './loss-table.ts';
import type { AirTemperature, Board, CureHistory, CureState, ResinModel } from './model.ts';
import { startRecording } from './recording.ts';

/** Convection and radiation of a level film a few kelvin above a still shop, W/m2/K (see `convection.ts`). */
export const FILM_COEFFICIENT_W_m2K = 9;
/** Area/perimeter that free convection from a film is computed with, m: that of a top 1 m square. */
export const FILM_LENGTH_m = 0.25;
/** Underside of a board on supports, facing down: less convection, same radiation, W/m2/K. */
export const UNDERSIDE_COEFFICIENT_W_m2K = 6;
/** A film's history reaches this far when its full cure is asked for, s (30 days). */
export const FULL_CURE_SPAN_s = 30 * 86_400;

export interface FilmSetup {
  readonly model: ResinModel;
  /** Wet film, 1e-5 to 0.1 m. */
  readonly thickness_m: number;
  readonly board: Board;
  readonly air: AirTemperature;
  /** The film's state when it is poured: that of its cup. */
  readonly start: CureState;
  /** Default: the air at `start_s`. */
  readonly boardStart_K?: number;
  readonly start_s: number;
  readonly duration_s: number;
  /**
   * A fixed coefficient, 0 to 1e6. Default: free convection and radiation of a plate facing up at the film's excess over
   * the air at `start_s`, 7.5 at 1 K, 9.5 at 10 K, 12.5 at 40 K. Give a number for a draughty shop (moving air 15 to 25).
   */
  readonly surfaceCoefficient_W_m2K?: number;
  /** Default `UNDERSIDE_COEFFICIENT_W_m2K`. */
  readonly undersideCoefficient_W_m2K?: number;
  /** Equal layers of the film, 1 to 50; default 4. */
  readonly filmNodes?: number;
  /** Equal layers of the board, 1 to 200; default 8. */
  readonly boardNodes?: number;
  readonly tolerance?: Tolerance;
  /** Amine hydrogen / epoxide equivalents; default 1. With another value pass `modelOffRatio`'s model. */
  readonly balance?: number;
}

/**
 * Cure of a poured film on its board: one-dimensional heat conduction by finite volumes through film and board, reaction in
 * each layer of the film, convection and radiation to the air above and below. The history is the mean over the
 * film's depth; `hottest_K` is the hottest layer. Edges and the run-off on faces are not part of it.
 *
 * @throws RangeError when an input is out of its range (they are stated at each field) or the air series is not increasing.
 */
export function cureFilm(setup: FilmSetup): CureHistory {
  const { model, start } = setup;
  const filmNodes = setup.filmNodes ?? 4;
  const boardNodes = setup.boardNodes ?? 8;
  checkBody(start, setup.start_s, setup.duration_s);
  requireRange('filmNodes', filmNodes, 1, 50);
  requireRange('boardNodes', boardNodes, 1, 200);
  const surroundings = surroundingsOf(setup.air);
  const airStart = surroundingsAt(surroundings, setup.start_s);
  const boardStart = setup.boardStart_K ?? airStart;
  requireRange('boardStart_K', boardStart, COLDEST_K, HOTTEST_K);

  const half = setup.thickness_m / filmNodes / (2 * model.conductivity_W_mK);
  const loss = filmLoss(setup.surfaceCoefficient_W_m2K, half, airStart);
  const column = filmColumn(setup, filmNodes, boardNodes, loss);
  const temperature = new Float64Array(filmNodes + boardNodes).fill(boardStart, filmNodes);
  temperature.fill(start.temperature_K, 0, filmNodes);
  const conversion = new Float64Array(filmNodes).fill(start.conversion);
  const recording = startRecording(model);
  integrateColumn(
    column,
    conversion,
    temperature,
    {
      start: setup.start_s,
      end: setup.start_s + setup.duration_s,
      surroundings,
      ...(setup.tolerance === undefined ? {} : { tolerance: setup.tolerance }),
    },
    (time, a, T, aRate, TRate) => {
      let hottest = T[0]!;
      let meanA = 0;
      let meanT = 0;
      let meanARate = 0;
      let meanTRate = 0;
      for (let i = 0; i < filmNodes; i++) {
        meanA += a[i]!;
        meanT += T[i]!;
        meanARate += aRate[i]!;
        meanTRate += TRate[i]!;
        if (T[i]! > hottest) hottest = T[i]!;
      }
      recording.push(
        time,
        meanA / filmNodes,
        meanT / filmNodes,
        meanARate / filmNodes,
        meanTRate / filmNodes,
        hottest,
      );
    },
  );
  return recording.finish();
}

/** What of a film its column is made from. */
export type FilmLayers = Pick<
  FilmSetup,
  'model' | 'thickness_m' | 'board' | 'undersideCoefficient_W_m2K' | 'balance'
>;

/** Film and board as a chain of nodes, per m2; `surfaceLoss` is that of the top layer's middle (see `filmLoss`). */
export function filmColumn(
  setup: FilmLayers,
  filmNodes: number,
  boardNodes: number,
  surfaceLoss: EndLoss,
): Column {
  const { model, board } = setup;
  requireRange('thickness_m', setup.thickness_m, 1e-5, 0.1);
  requireRange('board.thickness_m', board.thickness_m, 1e-4, 1);
  requirePositive('board.conductivity_W_mK', board.conductivity_W_mK);
  requirePositive('board.density_kg_m3', board.density_kg_m3);
  requirePositive('board.heatCapacity_J_kgK', board.heatCapacity_J_kgK);
  requirePositive('conductivity_W_mK', model.conductivity_W_mK);
  requirePositive('density_kg_m3', model.density_kg_m3);
  const under = setup.undersideCoefficient_W_m2K ?? UNDERSIDE_COEFFICIENT_W_m2K;
  requireRange('undersideCoefficient_W_m2K', under, 0, 1e6);
  const nodes = filmNodes + boardNodes;
  const film = setup.thickness_m / filmNodes;
  const layer = board.thickness_m / boardNodes;
  // Resistance from a layer's middle to its face, m2 K/W.
  const halfFilm = film / (2 * model.conductivity_W_mK);
  const halfBoard = layer / (2 * board.conductivity_W_mK);
  const capacity = new Float64Array(nodes).fill(board.density_kg_m3 * board.heatCapacity_J_kgK * layer);
  capacity.fill(model.density_kg_m3 * model.heatCapacity_J_kgK * film, 0, filmNodes);
  const conductance = new Float64Array(nodes - 1).fill(0.5 / halfBoard);
  conductance.fill(0.5 / halfFilm, 0, filmNodes - 1);
  conductance[filmNodes - 1] = 1 / (halfFilm + halfBoard);
  return {
    capacity,
    conductance,
    heat: new Float64Array(filmNodes).fill(model.density_kg_m3 * model.heat_J_kg * film),
    reaction: reactionOf(model, setup.balance),
    firstLoss: surfaceLoss,
    lastLoss: linearLoss(under === 0 ? 0 : 1 / (1 / under + halfBoard)),
  };
}

/** Loss of the top layer per m2, its own half thickness (m2 K/W) in series; without a coefficient free convection and radiation. */
export function filmLoss(coefficient: number | undefined, halfFilm: number, air_K: number): EndLoss {
  if (coefficient !== undefined) {
    requireRange('surfaceCoefficient_W_m2K', coefficient, 0, 1e6);
    return linearLoss(coefficient === 0 ? 0 : 1 / (1 / coefficient + halfFilm));
  }
  let h = FILM_COEFFICIENT_W_m2K;
  return tabulatedLoss((excess) => {
    let flux = 0;
    for (let pass = 0; pass < 30; pass++) {
      const next = excess / (1 / h + halfFilm);
      h = surfaceCoefficient('up', air_K + excess - next * halfFilm, air_K, FILM_LENGTH_m);
      if (Math.abs(next - flux) <= 1e-7 * next) return next;
      flux = next;
    }
    return flux;
  });
}

/** Checks of a start and a span shared by film and cup. */
export function checkBody(start: CureState, start_s: number, duration_s: number): void {
  requireRange('start.conversion', start.conversion, 0, 1);
  requireRange('start.temperature_K', start.temperature_K, COLDEST_K, HOTTEST_K);
  requireRange('start_s', start_s, -1e9, 1e9);
  requireRange('duration_s', duration_s, 0, 1e9);
}

/** Warmest air answered for, K (100 C). */
const HOTTEST_AIR_K = 373.15;

/** Air as the integrator takes it. Throws RangeError for a temperature outside 223.15 to 373.15 K. */
export function surroundingsOf(air: AirTemperature): { time: readonly number[]; value: readonly number[] } {
  for (const temperature of air.temperature_K) {
    requireRange('air.temperature_K', temperature, COLDEST_K, HOTTEST_AIR_K);
  }
  return { time: air.time_s, value: air.temperature_K };
}
