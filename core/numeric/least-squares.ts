import { cholesky, choleskyInverse, choleskySolve } from './cholesky.ts';

/** Residuals at a point: written into `out`, whose length is the number of residuals. */
export type Residuals = (x: Float64Array, out: Float64Array) => void;

export interface LeastSquaresOptions {
  /** Typical size of each unknown, > 0: damping and finite differences are measured in it. Default 1. */
  readonly scale?: ArrayLike<number>;
  /** Step of the differences in units of the scale; default 1e-6. Larger for residuals that carry noise. */
  readonly step?: number;
  /** Central differences (twice the work); default false. The answer's Jacobian is always central. */
  readonly central?: boolean;
  /** Stops when a step is shorter than this in every unknown, in units of the scale; default 1e-9. */
  readonly stepTolerance?: number;
  /** Stops when a step lowers the cost by less than this share of it; default 1e-14. */
  readonly costTolerance?: number;
  /** Most accepted or refused steps; default 200. */
  readonly maxSteps?: number;
}

export interface LeastSquares {
  readonly x: Float64Array;
  readonly residuals: Float64Array;
  /** Half the sum of squares. */
  readonly cost: number;
  /** Row by row, one row a residual, by central differences at `x`. */
  readonly jacobian: readonly Float64Array[];
  /** (J'J)^-1, the covariance of x for residuals of unit variance; null when J'J is singular. */
  readonly covariance: readonly (readonly number[])[] | null;
  readonly steps: number;
  readonly evaluations: number;
  readonly converged: boolean;
}

/**
 * Unknowns that minimise half the sum of squared residuals: Levenberg and Marquardt's damped Gauss-Newton step, the
 * damping raised and lowered by the gain ratio as Nielsen does (Madsen, Nielsen and Tingleff, Methods for Non-Linear
 * Least Squares Problems, 2nd ed. 2004, algorithm 3.16), in scaled unknowns so that one damping serves all. Derivatives by
 * finite differences.
 *
 * Residuals that come back NaN or infinite count as a refused step, so a model may say "not here" that way; the start must be
 * finite.
 *
 * @param count number of residuals, at least 1.
 * @throws RangeError when the start, its residuals, a scale or an option is not usable.
 */
export function leastSquares(
  residuals: Residuals,
  start: ArrayLike<number>,
  count: number,
  options: LeastSquaresOptions = {},
): LeastSquares {
  const unknowns = start.length;
  const scale = Float64Array.from({ length: unknowns }, (_, i) => options.scale?.[i] ?? 1);
  for (const size of scale) if (!(size > 0 && Number.isFinite(size))) throw new RangeError(`scale ${size}`);
  if (!(Number.isInteger(count) && count >= 1)) throw new RangeError(`count ${count} must be at least 1`);
  const step = options.step ?? 1e-6;
  if (!(step > 0)) throw new RangeError(`step ${step} must be positive`);
  const maxSteps = options.maxSteps ?? 200;
  const stepTolerance = options.stepTolerance ?? 1e-9;
  const costTolerance = options.costTolerance ?? 1e-14;

  let evaluations = 0;
  const evaluate = (x: Float64Array): Float64Array => {
    const out = new Float64Array(count);
    residuals(x, out);
    evaluations++;
    return out;
  };
  const differentiate = (x: Float64Array, at: Float64Array, central: boolean): Float64Array[] => {
    const rows = Array.from({ length: count }, () => new Float64Array(unknowns));
    for (let j = 0; j < unknowns; j++) {
      const move = step * scale[j]!;
      const moved = Float64Array.from(x);
      moved[j] = x[j]! + move;
      const up = evaluate(moved);
      let down = at;
      let span = moved[j]! - x[j]!;
      if (central) {
        moved[j] = x[j]! - move;
        down = evaluate(moved);
        span = x[j]! + move - moved[j]!;
      }
      for (let i = 0; i < count; i++) rows[i]![j] = ((up[i]! - down[i]!) / span) * scale[j]!;
    }
    return rows;
  };

  let x: Float64Array = Float64Array.from(start);
  let at = evaluate(x);
  let cost = halfSquares(at);
  if (!Number.isFinite(cost)) throw new RangeError('the residuals at the start are not finite');
  let jacobian = differentiate(x, at, options.central ?? false);
  let { normal, slope } = normalOf(jacobian, at, unknowns);
  let damping = 1e-3 * Math.max(...normal.map((row, i) => row[i]!), 1e-300);
  let growth = 2;
  let steps = 0;
  let converged = false;
  while (steps < maxSteps && !converged) {
    steps++;
    const factor = cholesky(
      normal.map((row, i) => row.map((value, j) => (i === j ? value + damping : value))),
    );
    const move = factor === null ? null : choleskySolve(factor, slope).map((value) => -value);
    let tried: Float64Array | null = null;
    let triedAt = at;
    let triedCost = Number.POSITIVE_INFINITY;
    if (move !== null) {
      tried = x.map((value, j) => value + move[j]! * scale[j]!);
      if (move.every((value) => Math.abs(value) <= stepTolerance)) converged = true;
      triedAt = evaluate(tried);
      triedCost = halfSquares(triedAt);
    }
    const expected =
      move === null
        ? 0
        : 0.5 * move.reduce((sum, value, j) => sum + value * (damping * value - slope[j]!), 0);
    const gain = (cost - triedCost) / expected;
    if (tried !== null && triedCost <= cost && gain > 0) {
      if (cost - triedCost <= costTolerance * cost) converged = true;
      x = tried;
      at = triedAt;
      cost = triedCost;
      if (!converged) {
        jacobian = differentiate(x, at, options.central ?? false);
        ({ normal, slope } = normalOf(jacobian, at, unknowns));
      }
      damping *= Math.max(1 / 3, 1 - (2 * gain - 1) ** 3);
      growth = 2;
    } else {
      damping *= growth;
      growth *= 2;
      if (!Number.isFinite(damping)) break;
    }
  }
  const scaled = differentiate(x, at, true);
  const plain = scaled.map((row) => row.map((value, j) => value / scale[j]!));
  // Scaled, so that unknowns of very different size do not spoil the factor.
  const factor = cholesky(normalOf(scaled, at, unknowns).normal);
  const covariance =
    factor === null
      ? null
      : choleskyInverse(factor).map((row, i) => row.map((value, j) => value * scale[i]! * scale[j]!));
  return { x, residuals: at, cost, jacobian: plain, covariance, steps, evaluations, converged };
}

function halfSquares(residuals: Float64Array): number {
  let sum = 0;
  for (const value of residuals) sum += value * value;
  return 0.5 * sum;
}

function normalOf(
  jacobian: readonly Float64Array[],
  residuals: Float64Array,
  unknowns: number,
): { normal: number[][]; slope: number[] } {
  const normal = Array.from({ length: unknowns }, () => new Array<number>(unknowns).fill(0));
  const slope = new Array<number>(unknowns).fill(0);
  jacobian.forEach((row, i) => {
    for (let j = 0; j < unknowns; j++) {
      slope[j]! += row[j]! * residuals[i]!;
      for (let k = 0; k <= j; k++) normal[j]![k]! += row[j]! * row[k]!;
    }
  });
  for (let j = 0; j < unknowns; j++) for (let k = j + 1; k < unknowns; k++) normal[j]![k] = normal[k]![j]!;
  return { normal, slope };
}
