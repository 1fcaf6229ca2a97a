/** Which one more distance would help most. */

import type { Network } from './network.ts';
import { predict_m } from './observation.ts';
import { readingSigma_m, type Tape } from './tape.ts';

export interface NextReading {
  readonly from: number;
  readonly to: number;
  /** true: it holds a loose corner; false: it sharpens corners that are held already. */
  readonly holds: boolean;
  /** Share by which the variances of all distances between corners fall, 0 to 1; 1 where it holds a loose corner. */
  readonly gain: number;
  /** It was measured already: measure it again. */
  readonly again: boolean;
}

/**
 * Distances between corners, the most useful first. While a corner is loose: those that see the looseness best. Else those that
 * lower most the sum of the variances of all distances between corners, which does not depend on where the axes lie: one more
 * reading a with spread s takes (b' C a)^2 / (s^2 + a' C a) off the variance of b (Sherman and Morrison).
 *
 * @param measured whether a pair has a reading.
 */
export function nextReadings(
  network: Network,
  tape: Tape,
  measured: (from: number, to: number) => boolean,
): NextReading[] {
  const n = network.places.length / 2;
  const pairs: { from: number; to: number; slope: Float64Array; length_m: number }[] = [];
  for (let from = 0; from < n; from++)
    for (let to = from + 1; to < n; to++) {
      const slope = new Float64Array(2 * n);
      const length_m = predict_m(
        { kind: 'distance', from, to, value_m: 0, sigma_m: 1, path: '' },
        network.places,
        slope,
      );
      pairs.push({ from, to, slope, length_m });
    }
  const dot = (a: ArrayLike<number>, b: ArrayLike<number>) => {
    let sum = 0;
    for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
    return sum;
  };
  if (network.loose.length > 0)
    return pairs
      .map(({ from, to, slope }) => {
        const sees = network.loose.reduce((sum, way) => sum + dot(way, slope) ** 2, 0);
        return { from, to, sees };
      })
      .filter(({ sees }) => sees > 1e-6)
      .sort((a, b) => b.sees - a.sees || a.from - b.from || a.to - b.to)
      .map(({ from, to }) => ({ from, to, holds: true, gain: 1, again: measured(from, to) }));
  const spread = pairs.map(({ slope }) => network.covariance.map((row) => dot(row, slope)));
  const total = pairs.reduce((sum, { slope }, i) => sum + dot(slope, spread[i]!), 0);
  return pairs
    .map(({ from, to, length_m }, i) => {
      const sigma = readingSigma_m(Math.min(100, length_m), tape);
      const below = sigma ** 2 + dot(pairs[i]!.slope, spread[i]!);
      const fall = pairs.reduce((sum, { slope }) => sum + dot(slope, spread[i]!) ** 2, 0) / below;
      return { from, to, holds: false, gain: total > 0 ? fall / total : 0, again: measured(from, to) };
    })
    .sort((a, b) => b.gain - a.gain || a.from - b.from || a.to - b.to);
}
