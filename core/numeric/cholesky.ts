/**
 * Small dense symmetric matrices as arrays of rows. For the few dozen unknowns of a fit; no blocking, no pivoting.
 */
export type Matrix = readonly (readonly number[])[];

/**
 * Lower-triangular L with L L' = A (Cholesky; Golub and Van Loan, Matrix Computations, 4.2). Only the lower half of A is
 * read; rows of L are full length, zero above the diagonal.
 *
 * @returns null when A is not positive definite (or holds a NaN).
 * @throws RangeError when A is not square.
 */
export function cholesky(a: Matrix): number[][] | null {
  const n = a.length;
  const lower: number[][] = [];
  for (let i = 0; i < n; i++) {
    const from = a[i]!;
    if (from.length !== n) throw new RangeError(`row ${i} has ${from.length} entries; ${n} expected`);
    const row = new Array<number>(n).fill(0);
    lower.push(row);
    for (let j = 0; j <= i; j++) {
      const other = lower[j]!;
      let sum = from[j]!;
      for (let k = 0; k < j; k++) sum -= row[k]! * other[k]!;
      if (i !== j) row[j] = sum / other[j]!;
      else if (sum > 0 && Number.isFinite(sum)) row[i] = Math.sqrt(sum);
      else return null;
    }
  }
  return lower;
}

/** x with L L' x = b, from the factor of `cholesky`. Throws RangeError when the lengths differ. */
export function choleskySolve(lower: Matrix, b: ArrayLike<number>): number[] {
  const n = lower.length;
  if (b.length !== n) throw new RangeError(`right-hand side has ${b.length} entries; ${n} expected`);
  const x = Array.from(b);
  for (let i = 0; i < n; i++) {
    const row = lower[i]!;
    let sum = x[i]!;
    for (let k = 0; k < i; k++) sum -= row[k]! * x[k]!;
    x[i] = sum / row[i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i]!;
    for (let k = i + 1; k < n; k++) sum -= lower[k]![i]! * x[k]!;
    x[i] = sum / lower[i]![i]!;
  }
  return x;
}

/** Inverse of A = L L' from the factor of `cholesky`; symmetric to the last digit. */
export function choleskyInverse(lower: Matrix): number[][] {
  const n = lower.length;
  const inverse = Array.from({ length: n }, (_, j) => {
    const unit = new Array<number>(n).fill(0);
    unit[j] = 1;
    return choleskySolve(lower, unit);
  });
  for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) inverse[i]![j] = inverse[j]![i]!;
  return inverse;
}
