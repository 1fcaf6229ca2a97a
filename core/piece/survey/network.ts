/** Least squares on a set of points some of whose coordinates are known: the arithmetic behind `adjustOutline`. */
import { singularValues } from '#core/numeric/svd.ts';
import { predict_m } from './observation.ts';
import type { Reading } from './survey.ts';

/**
 * A direction told this much less sharply than the best one is not told at all: readings in millimetres would leave it in
 * metres.
 */
const LOOSE = 1e-4;

export interface Network {
  /** x and y of each point in turn, m. */
  readonly places: Float64Array;
  /** Adjusted less measured, m, in the order of the readings. */
  readonly residuals_m: readonly number[];
  /** Sum of (residual / sigma)^2. */
  readonly weightedSquares: number;
  readonly unknowns: number;
  readonly rank: number;
  /** Readings less rank. */
  readonly dof: number;
  /** sqrt(weightedSquares / dof); null without a check. 1 when the readings scatter as their sigmas say. */
  readonly s0: number | null;
  /** Covariance of all coordinates for the sigmas given, m2; 0 for held ones, loose directions left out. */
  readonly covariance: readonly Float64Array[];
  /** Unit vectors over all coordinates along which the points can move without any reading noticing. */
  readonly loose: readonly Float64Array[];
  /** Share of each reading that the others check, 0 to 1. */
  readonly checked: readonly number[];
  /** Steps taken. */
  readonly steps: number;
  readonly converged: boolean;
}

/**
 * Adjusts the free coordinates so that the sum of (adjusted - measured)^2 / sigma^2 is least: Gauss and Newton's step from the
 * singular values of the weighted slopes, halved until the sum falls. Ghilani and Wolf, Adjustment Computations, ch. 11 and 14.
 * Directions no reading sees are left where they started, and told.
 *
 * @param start x and y of each point in turn, m; finite.
 * @param free which of them may move; at least one.
 * @throws RangeError when nothing is free, a sigma is not positive or the start is not finite.
 */
export function adjustNetwork(
  readings: readonly Reading[],
  start: ArrayLike<number>,
  free: readonly boolean[],
): Network {
  const columns = free.flatMap((moves, i) => (moves ? [i] : []));
  if (columns.length === 0) throw new RangeError('no coordinate is free');
  for (const { sigma_m } of readings)
    if (!(sigma_m > 0 && Number.isFinite(sigma_m)))
      throw new RangeError(`sigma_m ${sigma_m} must be positive`);
  let places = Float64Array.from(start);
  if (!places.every(Number.isFinite)) throw new RangeError('the start is not finite');

  const misfits = (at: Float64Array) =>
    readings.map((reading) => (predict_m(reading, at) - reading.value_m) / reading.sigma_m);
  const slopes = (at: Float64Array) =>
    readings.map((reading) => {
      const full = new Float64Array(at.length);
      predict_m(reading, at, full);
      return Float64Array.from(columns, (c) => full[c]! / reading.sigma_m);
    });
  const squares = (misfit: readonly number[]) => misfit.reduce((sum, v) => sum + v * v, 0);

  let misfit = misfits(places);
  let cost = squares(misfit);
  let decomposed = singularValues(slopes(places), columns.length);
  let steps = 0;
  let converged = false;
  while (steps < 100 && !converged) {
    steps++;
    const move = new Float64Array(columns.length);
    const limit = LOOSE * decomposed.values[0]!;
    decomposed.values.forEach((value, k) => {
      if (!(value > limit)) return;
      const left = decomposed.left[k]!;
      const along = -misfit.reduce((sum, v, i) => sum + left[i]! * v, 0) / value;
      decomposed.right[k]!.forEach((entry, c) => {
        move[c]! += along * entry;
      });
    });
    const longest = Math.max(...move.map(Math.abs));
    let share = 1;
    let accepted = false;
    for (let halving = 0; halving < 40 && !accepted; halving++, share /= 2) {
      const tried = Float64Array.from(places);
      columns.forEach((c, at) => {
        tried[c]! += share * move[at]!;
      });
      const triedMisfit = misfits(tried);
      const triedCost = squares(triedMisfit);
      if (triedCost <= cost) {
        accepted = true;
        places = tried;
        misfit = triedMisfit;
        cost = triedCost;
      }
    }
    // What is left after a step of a nanometre is far less than one: steps shrink by residual over distance each time.
    converged = longest <= 1e-9;
    if (!accepted) break;
    decomposed = singularValues(slopes(places), columns.length);
  }

  const limit = LOOSE * decomposed.values[0]!;
  const seen = decomposed.values.filter((value) => value > limit).length;
  const covariance = Array.from(places, () => new Float64Array(places.length));
  const loose: Float64Array[] = [];
  const checked = readings.map(() => 1);
  decomposed.values.forEach((value, k) => {
    const right = decomposed.right[k]!;
    if (k >= seen) {
      const full = new Float64Array(places.length);
      columns.forEach((c, at) => {
        full[c] = right[at]!;
      });
      loose.push(full);
      return;
    }
    columns.forEach((row, i) => {
      columns.forEach((column, j) => {
        covariance[row]![column]! += (right[i]! * right[j]!) / (value * value);
      });
    });
    decomposed.left[k]!.forEach((entry, i) => {
      checked[i]! -= entry * entry;
    });
  });
  const dof = readings.length - seen;
  return {
    places,
    residuals_m: misfit.map((v, i) => v * readings[i]!.sigma_m),
    weightedSquares: cost,
    unknowns: columns.length,
    rank: seen,
    dof,
    s0: dof > 0 ? Math.sqrt(cost / dof) : null,
    covariance,
    loose,
    checked: checked.map((share) => Math.min(1, Math.max(0, share))),
    steps,
    converged,
  };
}
