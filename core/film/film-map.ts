/**
 * Thickness map: a film that flows over a whole top by its own weight until the flow budget is spent,
 *   h_Theta = (rho g/3) div(h^3 (grad h - S)),
 * with cut-outs, dams, wetted and dry edges, a tilted bench and the puddles as poured (thin-film equation without surface tension: features over
 * 50 mm are over 95 % weight, shorter ones level anyway; arrises come in through the film they hold). Solved by alternating implicit sweeps
 * along rows and columns (locally one-dimensional splitting, Yanenko 1971; from memory), the order turning every step. Films stay positive,
 * resin is kept exactly: what leaves is counted at its edge. First order in Theta (steps of `growth` of the budget since
 * the last pour or the last working of edges), between first and second in cell size. The variable is Theta, so any viscosity history serves.
 * A front on bare board moves at most one cell a step. A round puddle spreads with Theta^(1/8), a straight front with Theta^(1/5), so a front
 * n cells from its middle keeps up while growth is under 8/n or 5/n: with steps of 3 % up to about 260 cells of puddle
 * radius and about 160 cells of a straight front. Larger ones, or finer cells, need a smaller `growth`.
 * Not in it: the limit of wetting at which a puddle stops on a dry board, viscosity that differs between cups.
 */

import type { Piece } from '#core/piece/piece.ts';
import { notNegative, within } from '#core/quantity/domain.ts';
import { DEFAULT_LIQUID, type Liquid, specificWeight_N_m3 } from './constants.ts';
import { filmBorders } from './map-borders.ts';
import type { EdgeFlow } from './map-edges.ts';
import { filmGrid } from './map-grid.ts';
import { type MapPuddle, pourEven, pourPuddle } from './map-pour.ts';
import { type FilmMapResult, filmMapResult } from './map-result.ts';
import { sweep, sweepTilted } from './map-sweep.ts';
import { mapStore } from './map-vector.ts';
import { STEEPEST_SLOPE } from './tilt.ts';

export interface FilmMapRequest {
  readonly piece: Pick<Piece, 'outline' | 'cutOuts'>;
  /** Size of cell wanted, m. */
  readonly cell_m: number;
  /** Flow budget from the first pour to gel (or to the moment shown), 1/Pa, from 0. */
  readonly theta_per_Pa: number;
  /** Film spread evenly at the start, m, from 0; none when left out. */
  readonly evenFilm_m?: number;
  readonly puddles?: readonly MapPuddle[];
  /** By edge name and name of cut-out; dammed when left out. */
  readonly edges?: Readonly<Record<string, EdgeFlow>>;
  /** Fall of the bench per metre along x and y, positive where it goes down, -0.05 to 0.05. */
  readonly slope?: { readonly x: number; readonly y: number };
  readonly liquid?: Liquid;
  /** Step as a share of the budget since the last pour or working of edges, 0.001 to 0.2; 0.03 when left out (films within about 0.5 %). */
  readonly growth?: number;
}

export interface FilmMapProgress {
  /** Share of the budget spent, 0 to 1. */
  readonly share: number;
  readonly theta_per_Pa: number;
  readonly steps: number;
}

/** Steps between two reports. */
const REPORT_EVERY = 4;

/**
 * Works the map out a few steps at a time: every `next()` reports progress, the last returns the result. Stop calling to cancel.
 * Deterministic. 0.6 by 1.2 m at 2.5 mm cells to Theta 240 takes about 0.2 s.
 * @throws RangeError outside the ranges of the request, for an edge name the piece has not, or when nothing is poured.
 */
export function* filmMap(request: FilmMapRequest): Generator<FilmMapProgress, FilmMapResult, void> {
  const stop = notNegative('theta_per_Pa', request.theta_per_Pa, '1/Pa');
  const growth = within('growth', request.growth ?? 0.03, 0.001, 0.2, '');
  const slope = request.slope ?? { x: 0, y: 0 };
  within('slope.x', slope.x, -STEEPEST_SLOPE, STEEPEST_SLOPE, '(fall over run)');
  within('slope.y', slope.y, -STEEPEST_SLOPE, STEEPEST_SLOPE, '(fall over run)');
  const even_m = notNegative('evenFilm_m', request.evenFilm_m ?? 0, 'm');
  const grid = filmGrid(request.piece, request.cell_m);
  const mobility = specificWeight_N_m3(request.liquid ?? DEFAULT_LIQUID) / 3;
  const border = filmBorders(grid, request.edges ?? {});
  const { h, store } = mapStore(grid.inside.length, grid.longestLine);
  let poured_m3 = even_m > 0 ? pourEven(h, grid, even_m) : 0;
  const waiting = [...(request.puddles ?? [])].sort((a, b) => (a.theta_per_Pa ?? 0) - (b.theta_per_Pa ?? 0));
  for (const puddle of waiting) within('puddle theta_per_Pa', puddle.theta_per_Pa ?? 0, 0, stop, '1/Pa');
  if (even_m === 0 && waiting.length === 0)
    throw new RangeError('evenFilm_m = 0 and no puddles: allowed one of them');
  const finest_m = Math.min(grid.cellX_m, grid.cellY_m);
  const moves = (by: number, turn: number): void => {
    const cell_m = turn === 0 ? grid.cellX_m : grid.cellY_m;
    const lines = turn === 0 ? grid.alongX : grid.alongY;
    const fall = turn === 0 ? slope.x : slope.y;
    const k = (mobility * by) / (4 * cell_m * cell_m);
    if (fall === 0) sweep(h, lines, border, k, store);
    else sweepTilted(h, lines, border, k, (mobility * by * fall) / cell_m, store);
  };
  let theta = 0;
  let steps = 0;
  while (theta < stop || waiting.length > 0) {
    while (waiting.length > 0 && (waiting[0]!.theta_per_Pa ?? 0) <= theta)
      poured_m3 += pourPuddle(h, grid, waiting.shift()!);
    const worked = border.work(theta) ?? stop;
    border.letGo(h, theta);
    const from = theta;
    const until = Math.min(waiting[0]?.theta_per_Pa ?? stop, worked);
    let thickest_m = 0;
    for (const film_m of h) if (film_m > thickest_m) thickest_m = film_m;
    const first = thickest_m > 0 ? finest_m ** 2 / (2 * mobility * thickest_m ** 3) : until;
    while (theta < until) {
      const wanted = Math.max(first, growth * (theta - from));
      const last = wanted >= until - theta;
      const by = last ? until - theta : wanted;
      moves(by, steps % 2);
      moves(by, (steps + 1) % 2);
      theta = last ? until : theta + by;
      steps++;
      border.letGo(h, theta);
      if (steps % REPORT_EVERY === 0) yield { share: theta / stop, theta_per_Pa: theta, steps };
    }
  }
  return filmMapResult({ grid, h, poured_m3, lost_m: border.lost_m, letGo: border.places(), steps });
}

/** The whole map at once, without reports. */
export function filmMapAtOnce(request: FilmMapRequest): FilmMapResult {
  const run = filmMap(request);
  for (;;) {
    const next = run.next();
    if (next.done) return next.value;
  }
}
