import type { Reading } from './survey.ts';

/**
 * What a reading would be for corners at `places` (x and y of each in turn, m), and how it changes with each coordinate, added
 * into `slope`. Distance: Ghilani and Wolf, Adjustment Computations, ch. 14; along and offset are the coordinates of the corner
 * in the frame of the straightedge, differentiated.
 *
 * @throws RangeError when the two ends of the span lie on one spot.
 */
export function predict_m(reading: Reading, places: ArrayLike<number>, slope?: Float64Array): number {
  const i = 2 * reading.from;
  const j = 2 * reading.to;
  const dx = places[j]! - places[i]!;
  const dy = places[j + 1]! - places[i + 1]!;
  const span = Math.hypot(dx, dy);
  if (!(span > 0)) throw new RangeError('two corners of a reading lie on one spot');
  const ux = dx / span;
  const uy = dy / span;
  const add = (at: number, x: number, y: number) => {
    if (slope === undefined) return;
    slope[at]! += x;
    slope[at + 1]! += y;
  };
  if (reading.kind === 'distance') {
    add(j, ux, uy);
    add(i, -ux, -uy);
    return span;
  }
  const k = 2 * reading.corner;
  const wx = places[k]! - places[i]!;
  const wy = places[k + 1]! - places[i + 1]!;
  const along = wx * ux + wy * uy;
  const beside = ux * wy - uy * wx;
  if (reading.kind === 'along') {
    const turn = beside / span;
    add(k, ux, uy);
    add(j, -uy * turn, ux * turn);
    add(i, -ux + uy * turn, -uy - ux * turn);
    return along;
  }
  const share = along / span;
  add(k, -uy, ux);
  add(j, uy * share, -ux * share);
  add(i, uy * (1 - share), -ux * (1 - share));
  return beside;
}
