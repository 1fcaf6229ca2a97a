/** Distances across the piece from corner to corner: what a tape checks before the glue has set. */

import type { SetOutCorner } from './marked-corners.ts';

export interface Diagonal {
  /** Numbers of the two corners. */
  readonly from: number;
  readonly to: number;
  /** Between the square corners, before any rounding. */
  readonly length_m: number;
}

/** Up to this many corners every diagonal is listed (9 for the six corners of an L). */
const MOST_FULL = 8;

/**
 * Diagonals between corners that are no neighbours. Beyond eight corners only those over one corner, which with the sides
 * fix a polygon, and the three longest. None for fewer than four corners: there the sides say it all.
 */
export function checkDiagonals(corners: readonly SetOutCorner[]): Diagonal[] {
  const n = corners.length;
  if (n < 4) return [];
  const all: Diagonal[] = [];
  for (let i = 0; i < n; i += 1)
    for (let k = i + 2; k < n; k += 1) {
      if (i === 0 && k === n - 1) continue;
      const [a, b] = [corners[i]!, corners[k]!];
      const length_m = Math.hypot(a.point.x_m - b.point.x_m, a.point.y_m - b.point.y_m);
      all.push({ from: a.number, to: b.number, length_m });
    }
  if (n <= MOST_FULL) return all;
  const longest = new Set([...all].sort((a, b) => b.length_m - a.length_m).slice(0, 3));
  return all.filter((d) => d.to - d.from === 2 || d.to - d.from === n - 2 || longest.has(d));
}
