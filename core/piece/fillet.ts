/** A polygon with rounded corners: the path, and whether the radii fit. */

import { pointAlong } from './arc.ts';
import type { Point, Segment } from './piece.ts';

export interface Corner extends Point {
  readonly radius_m: number;
  /** Name of the edge that leaves this corner. */
  readonly edge: string;
}

/** Turns flatter than this are no corner: a radius of 10 m there moves the outline by 1e-12 m. */
const STRAIGHT_RAD = 1e-6;
/** A corner rounded less than a micrometre is sharp. */
const SHARP_M = 1e-6;
/** Straight pieces shorter than this are left out (two roundings that meet). */
const NOTHING_M = 1e-9;

export interface Trim {
  /** Turn of the outline at the corner, left positive, within (-pi, pi]. */
  readonly turn_rad: number;
  /** How much the rounding takes from both sides, R tan(|turn|/2). */
  readonly trim_m: number;
}

export function trims(corners: readonly Corner[]): Trim[] {
  const n = corners.length;
  return corners.map((corner, i) => {
    const before = corners[(i + n - 1) % n]!;
    const after = corners[(i + 1) % n]!;
    const ux = corner.x_m - before.x_m;
    const uy = corner.y_m - before.y_m;
    const wx = after.x_m - corner.x_m;
    const wy = after.y_m - corner.y_m;
    const turn_rad = Math.atan2(ux * wy - uy * wx, ux * wx + uy * wy);
    const sharp = corner.radius_m < SHARP_M || Math.abs(turn_rad) < STRAIGHT_RAD;
    return { turn_rad, trim_m: sharp ? 0 : corner.radius_m * Math.tan(Math.abs(turn_rad) / 2) };
  });
}

export interface Misfit {
  /** Index of the corner the side leaves; it ends at the next one. */
  readonly side: number;
  readonly need_m: number;
  readonly have_m: number;
}

/** Sides too short for the roundings at their two ends. */
export function misfits(corners: readonly Corner[]): Misfit[] {
  const cut = trims(corners);
  const n = corners.length;
  const found: Misfit[] = [];
  for (let side = 0; side < n; side += 1) {
    const a = corners[side]!;
    const b = corners[(side + 1) % n]!;
    const have_m = Math.hypot(b.x_m - a.x_m, b.y_m - a.y_m);
    const need_m = cut[side]!.trim_m + cut[(side + 1) % n]!.trim_m;
    if (need_m > have_m + NOTHING_M) found.push({ side, need_m, have_m });
  }
  return found;
}

/**
 * The closed path round the corners in the order given. A rounding is two arcs, cut at its middle; the first belongs to
 * the side that arrives, the second to the side that leaves. Radii must fit (`misfits` is empty).
 */
export function filletPath(corners: readonly Corner[]): Segment[] {
  const n = corners.length;
  const cut = trims(corners);
  const segments: Segment[] = [];
  const leave = (i: number): Point => onSide(i, cut[i]!.trim_m);
  const arrive = (i: number): Point => onSide((i + n - 1) % n, -cut[i]!.trim_m);
  function onSide(i: number, away_m: number): Point {
    const a = corners[i]!;
    const b = corners[(i + 1) % n]!;
    if (away_m === 0) return a;
    const size = Math.hypot(b.x_m - a.x_m, b.y_m - a.y_m);
    const base = away_m > 0 ? a : b;
    return {
      x_m: base.x_m + ((b.x_m - a.x_m) / size) * away_m,
      y_m: base.y_m + ((b.y_m - a.y_m) / size) * away_m,
    };
  }
  const start = leave(0);
  let from = start;
  for (let i = 0; i < n; i += 1) {
    const k = (i + 1) % n;
    const rounded = cut[k]!.trim_m > 0;
    const side = corners[i]!.edge;
    const last = k === 0 && !rounded;
    const to = rounded ? arrive(k) : last ? start : pointOf(corners[k]!);
    if (Math.hypot(to.x_m - from.x_m, to.y_m - from.y_m) > NOTHING_M) {
      segments.push({ kind: 'line', from, to, bulge: 0, edge: side });
      from = to;
    }
    if (!rounded) continue;
    const end = k === 0 ? start : leave(k);
    const turn = cut[k]!.turn_rad;
    const whole: Segment = { kind: 'arc', from, to: end, bulge: Math.tan(turn / 4), edge: side };
    const middle = pointAlong(whole, 0.5);
    const bulge = Math.tan(turn / 8);
    segments.push({ kind: 'arc', from, to: middle, bulge, edge: side });
    segments.push({ kind: 'arc', from: middle, to: end, bulge, edge: corners[k]!.edge });
    from = end;
  }
  return segments;
}

function pointOf(corner: Corner): Point {
  return { x_m: corner.x_m, y_m: corner.y_m };
}
