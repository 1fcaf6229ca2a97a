/** How square and how flat walls are allowed to be. */

const SQUARE: readonly (readonly [number, number])[] = [
  [0.5, 3],
  [1, 6],
  [3, 8],
  [6, 12],
  [15, 16],
  [30, 20],
  [Number.POSITIVE_INFINITY, 30],
];

/**
 * Largest offset from square allowed over a nominal length, m (DIN 18202, table 2, as reprinted for building surveyors).
 * Worked: 8 mm over 2 m.
 *
 * @throws RangeError unless length_m is positive.
 */
export function squareLimit_m(length_m: number): number {
  if (!(length_m > 0)) throw new RangeError(`length_m ${length_m} must be positive`);
  return SQUARE.find(([upTo]) => length_m <= upTo)![1] / 1000;
}

const FLAT: readonly (readonly [number, number])[] = [
  [0.1, 3],
  [0.6, 3],
  [1, 5],
  [1.5, 6],
  [2, 7],
  [2.5, 8],
  [3, 8],
  [4, 10],
  [10, 20],
  [15, 25],
];

/**
 * Largest gap under a straightedge allowed for a finished wall, m, by the distance between the points it rests on (DIN 18202,
 * table 3, row 6, as reprinted for building surveyors; straight between the lengths listed, constant outside them).
 *
 * @throws RangeError unless span_m is positive.
 */
export function flatLimit_m(span_m: number): number {
  if (!(span_m > 0)) throw new RangeError(`span_m ${span_m} must be positive`);
  const above = FLAT.findIndex(([at]) => span_m <= at);
  if (above === 0) return FLAT[0]![1] / 1000;
  if (above < 0) return FLAT.at(-1)![1] / 1000;
  const [a, low] = FLAT[above - 1]!;
  const [b, high] = FLAT[above]!;
  return (low + ((span_m - a) / (b - a)) * (high - low)) / 1000;
}
