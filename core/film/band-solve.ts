/**
 * Solves a system with five diagonals by elimination without exchange of rows; safe for the diagonally heavy systems of an
 * implicit film step. Row i holds the factors of x[i-2] .. x[i+2] at 5 i .. 5 i + 4. Overwrites both arguments; the answer is in
 * `right`. Golub and Van Loan, Matrix Computations, 4.3 (banded elimination; from memory).
 * @throws RangeError when the sizes do not fit or a pivot is zero or not finite.
 */
export function solveFiveDiagonals(band: Float64Array, right: Float64Array): void {
  const n = right.length;
  if (band.length !== 5 * n)
    throw new RangeError(`band of ${band.length} for ${n} rows: allowed five times the rows`);
  for (let i = 0; i < n; i++) {
    const pivot = band[5 * i + 2]!;
    if (!Number.isFinite(pivot) || pivot === 0)
      throw new RangeError(`pivot ${pivot} in row ${i}: allowed finite, not 0`);
    const up1 = band[5 * i + 3]!;
    const up2 = band[5 * i + 4]!;
    if (i + 1 < n) {
      const row = 5 * (i + 1);
      const factor = band[row + 1]! / pivot;
      band[row + 2]! -= factor * up1;
      band[row + 3]! -= factor * up2;
      right[i + 1]! -= factor * right[i]!;
    }
    if (i + 2 < n) {
      const row = 5 * (i + 2);
      const factor = band[row]! / pivot;
      band[row + 1]! -= factor * up1;
      band[row + 2]! -= factor * up2;
      right[i + 2]! -= factor * right[i]!;
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = right[i]!;
    if (i + 1 < n) sum -= band[5 * i + 3]! * right[i + 1]!;
    if (i + 2 < n) sum -= band[5 * i + 4]! * right[i + 2]!;
    right[i] = sum / band[5 * i + 2]!;
  }
}
