import type { EndLoss } from '#core/numeric/column.ts';
import { hermite, hermiteSlope } from '#core/numeric/hermite.ts';

/** Excess temperatures a loss is tabulated at, K. */
const EXCESS_K = [0, 0.1, 0.4, 1, 2, 4, 7, 11, 17, 26, 40, 60, 90, 130, 180, 240, 320];

/**
 * A loss that grows faster than its excess (convection, radiation), tabulated once and cubic between the points, which
 * makes it smooth and cheap for the integrator. Odd in the excess (a cold body gains as a warm one loses) and straight beyond 320 K.
 * Within 0.5 % of a smooth law from 0.1 K up; it rounds off the jump of 6 % that the flat-plate correlation has at Ra 1e7.
 *
 * @param lossAt loss at an excess, asked for 0.1 K to 320 K in rising order; positive and rising.
 * @throws RangeError when a value is not finite or does not rise.
 */
export function tabulatedLoss(lossAt: (excess_K: number) => number): EndLoss {
  const points = EXCESS_K.length;
  const flow = new Float64Array(points);
  for (let i = 1; i < points; i++) {
    flow[i] = lossAt(EXCESS_K[i]!);
    if (!(flow[i]! > flow[i - 1]! && Number.isFinite(flow[i]!))) {
      throw new RangeError(`a loss of ${flow[i]} at ${EXCESS_K[i]} K does not rise from ${flow[i - 1]}`);
    }
  }
  const slope = Float64Array.from(EXCESS_K, (_, i) => slopeAt(flow, i));
  const last = points - 1;
  const furthest = EXCESS_K[last]!;
  const place = (size: number) => {
    let i = 0;
    while (size > EXCESS_K[i + 1]!) i++;
    return i;
  };
  return {
    flow: (excess) => {
      const size = Math.abs(excess);
      const sign = excess < 0 ? -1 : 1;
      if (!(size < furthest)) return sign * (flow[last]! + slope[last]! * (size - furthest));
      const i = place(size);
      const from = EXCESS_K[i]!;
      const h = EXCESS_K[i + 1]! - from;
      return sign * hermite(flow[i]!, slope[i]!, flow[i + 1]!, slope[i + 1]!, h, size - from);
    },
    slope: (excess) => {
      const size = Math.abs(excess);
      if (!(size < furthest)) return slope[last]!;
      const i = place(size);
      const from = EXCESS_K[i]!;
      const h = EXCESS_K[i + 1]! - from;
      return hermiteSlope(flow[i]!, slope[i]!, flow[i + 1]!, slope[i + 1]!, h, size - from);
    },
  };
}

/** Slope of the parabola through three neighbours; the chord at the ends. */
function slopeAt(flow: Float64Array, i: number): number {
  const chord = (k: number) => (flow[k + 1]! - flow[k]!) / (EXCESS_K[k + 1]! - EXCESS_K[k]!);
  if (i === 0) return chord(0);
  if (i === flow.length - 1) return chord(i - 1);
  const before = EXCESS_K[i]! - EXCESS_K[i - 1]!;
  const after = EXCESS_K[i + 1]! - EXCESS_K[i]!;
  return (chord(i - 1) * after + chord(i) * before) / (before + after);
}
