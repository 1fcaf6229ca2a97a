/**
 * Interpolation in a table without overshoot: cubic pieces whose slopes are limited so that a rising table gives a rising
 * curve (Fritsch and Carlson 1980, SIAM J. Numer. Anal. 17, 238; slopes by the weighted harmonic mean of Fritsch and Butland
 * 1984; from memory).
 */
export interface MonotoneTable {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly slope: readonly number[];
}

/**
 * Prepares a table.
 * @param x rising, at least two @param y as many finite values
 * @throws RangeError if the lists do not fit together, x does not rise, or a value is not finite.
 */
export function monotoneTable(x: readonly number[], y: readonly number[]): MonotoneTable {
  if (x.length < 2 || x.length !== y.length)
    throw new RangeError(`table of ${x.length} by ${y.length}: allowed two or more points, as many of each`);
  const steps: number[] = [];
  const secants: number[] = [];
  for (let i = 0; i + 1 < x.length; i++) {
    const step = x[i + 1]! - x[i]!;
    const rise = y[i + 1]! - y[i]!;
    if (!(step > 0) || !Number.isFinite(step + rise))
      throw new RangeError(`table point ${i + 1}: allowed finite values at rising x`);
    steps.push(step);
    secants.push(rise / step);
  }
  const slope = x.map((_, i) => {
    if (i === 0) return endSlope(steps[0]!, steps[1], secants[0]!, secants[1]);
    const last = x.length - 1;
    if (i === last) return endSlope(steps[last - 1]!, steps[last - 2], secants[last - 1]!, secants[last - 2]);
    const before = secants[i - 1]!;
    const after = secants[i]!;
    if (before * after <= 0) return 0;
    const w1 = 2 * steps[i]! + steps[i - 1]!;
    const w2 = steps[i]! + 2 * steps[i - 1]!;
    return (w1 + w2) / (w1 / before + w2 / after);
  });
  return { x: [...x], y: [...y], slope };
}

/** Three-point slope at an end, limited to keep the end piece monotone. */
function endSlope(
  step: number,
  nextStep: number | undefined,
  secant: number,
  nextSecant: number | undefined,
): number {
  if (nextStep === undefined || nextSecant === undefined) return secant;
  const slope = ((2 * step + nextStep) * secant - step * nextSecant) / (step + nextStep);
  if (slope * secant <= 0) return 0;
  return secant * nextSecant <= 0 && Math.abs(slope) > 3 * Math.abs(secant) ? 3 * secant : slope;
}

/**
 * Value of the table at a point; the first or last value outside it.
 * @throws RangeError if at is NaN.
 */
export function interpolate(table: MonotoneTable, at: number): number {
  if (Number.isNaN(at)) throw new RangeError('at = NaN: allowed any number');
  const { x, y, slope } = table;
  const last = x.length - 1;
  if (at <= x[0]!) return y[0]!;
  if (at >= x[last]!) return y[last]!;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (x[middle]! <= at) low = middle;
    else high = middle;
  }
  const step = x[high]! - x[low]!;
  const t = (at - x[low]!) / step;
  if (t === 0) return y[low]!;
  const rest = 1 - t;
  const between =
    rest * rest * ((1 + 2 * t) * y[low]! + t * step * slope[low]!) +
    t * t * ((1 + 2 * rest) * y[high]! - rest * step * slope[high]!);
  // a monotone piece lies between its ends; rounding alone could take it out
  return Math.min(Math.max(between, Math.min(y[low]!, y[high]!)), Math.max(y[low]!, y[high]!));
}
