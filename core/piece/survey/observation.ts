import type { Reading } from './survey.ts';

/**
 * What a reading would be for corners at `places` (x and y of each in turn, m), and how it changes with each coordinate, added
 * into `slope`. Distance: Ghilani and Wolf, Adjustment Computations, ch. 14; along and offset are the coordinates of the corner
 * in the frame of the straightedge, differentiated. Where a fold puts both ends of the span on one spot its direction is taken
 * along x: such a fold fits no reading and loses, but it has to be comparable.
 */
export function predict_m(reading: Reading, places: ArrayLike<number>, slope?: Float64Array): number {
  const i = 2 * reading.from;
  const j = 2 * reading.to;
  const dx = places[j]! - places[i]!;
  const dy = places[j + 1]! - places[i + 1]!;
  const span = Math.hypot(dx, dy);
  const apart = span > 1e-6;
  const ux = apart ? dx / span : 1;
  const uy = apart ? dy / span : 0;
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
    const turn = apart ? beside / span : 0;
    add(k, ux, uy);
    add(j, -uy * turn, ux * turn);
    add(i, -ux + uy * turn, -uy - ux * turn);
    return along;
  }
  const share = apart ? along / span : 0;
  add(k, -uy, ux);
  add(j, uy * share, -ux * share);
  add(i, uy * (1 - share), -ux * (1 - share));
  return beside;
}
