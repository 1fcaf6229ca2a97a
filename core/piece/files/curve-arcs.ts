/**
 * A smooth curve as tangent circular arcs. Between two points of the curve with their tangents goes a biarc with equal
 * tangent lengths (Bolton 1975, Computer-Aided Design 7, 29-40, from memory); a part whose biarc strays further than the
 * tolerance is halved. Straight parts come out as lines.
 */

import { distanceToSegment_m } from '../arc.ts';
import type { Point, Segment } from '../piece.ts';

/** A point of the curve and its direction there (any length). */
export interface CurvePoint {
  readonly p: Point;
  readonly along: Point;
}

export type Curve = (t: number) => CurvePoint;

/** A bulge below this is a line: over 10 m it strays under a micrometre. */
export const FLAT_BULGE = 1e-7;

const DEEPEST = 14;
/** Parts shorter than this need no arcs, m. */
const SHORT_M = 1e-6;

/** A line or an arc from one point to the next. */
export function segment(from: Point, to: Point, bulge: number): Segment {
  const flat = Math.abs(bulge) < FLAT_BULGE;
  return { kind: flat ? 'line' : 'arc', from, to, bulge: flat ? 0 : bulge, edge: '' };
}

/**
 * Arcs that stay within tolerance_m of the curve between t0 and t1 (checked at 15 points of every part), each end
 * exactly on it.
 */
export function fitArcs(curve: Curve, t0: number, t1: number, tolerance_m: number): Segment[] {
  const made: Segment[] = [];
  divide(curve, t0, t1, curve(t0), curve(t1), tolerance_m, 0, made);
  return made;
}

function divide(
  curve: Curve,
  t0: number,
  t1: number,
  start: CurvePoint,
  end: CurvePoint,
  tolerance_m: number,
  depth: number,
  made: Segment[],
): void {
  const chord = Math.hypot(end.p.x_m - start.p.x_m, end.p.y_m - start.p.y_m);
  if (depth >= DEEPEST || (depth > 3 && chord < SHORT_M)) {
    made.push(segment(start.p, end.p, 0));
    return;
  }
  if (depth > 0) {
    const pair = biarc(start, end);
    if (pair !== undefined && close(curve, t0, t1, pair, tolerance_m)) {
      made.push(...pair);
      return;
    }
  }
  const tm = (t0 + t1) / 2;
  const middle = curve(tm);
  divide(curve, t0, tm, start, middle, tolerance_m, depth + 1, made);
  divide(curve, tm, t1, middle, end, tolerance_m, depth + 1, made);
}

function close(curve: Curve, t0: number, t1: number, pair: readonly Segment[], tolerance_m: number): boolean {
  for (let k = 1; k < 16; k += 1) {
    const { p } = curve(t0 + ((t1 - t0) * k) / 16);
    if (!pair.some((s) => distanceToSegment_m(s, p) <= 0.8 * tolerance_m)) return false;
  }
  return true;
}

function biarc(start: CurvePoint, end: CurvePoint): Segment[] | undefined {
  const t = unit(start.along);
  const u = unit(end.along);
  if (t === undefined || u === undefined) return undefined;
  const vx = end.p.x_m - start.p.x_m;
  const vy = end.p.y_m - start.p.y_m;
  const square = vx * vx + vy * vy;
  if (square === 0) return undefined;
  const along = vx * (t.x_m + u.x_m) + vy * (t.y_m + u.y_m);
  // 2 (1 - t.u) as the square of the difference of the tangents, which keeps its digits on flat curves.
  const bend = (t.x_m - u.x_m) ** 2 + (t.y_m - u.y_m) ** 2;
  if (!(along > 0)) return undefined;
  const reach = square / (along + Math.sqrt(along * along + bend * square));
  const joint = {
    x_m: (start.p.x_m + end.p.x_m + reach * (t.x_m - u.x_m)) / 2,
    y_m: (start.p.y_m + end.p.y_m + reach * (t.y_m - u.y_m)) / 2,
  };
  const first = halfTurn(t, { x_m: joint.x_m - start.p.x_m, y_m: joint.y_m - start.p.y_m });
  const second = halfTurn({ x_m: end.p.x_m - joint.x_m, y_m: end.p.y_m - joint.y_m }, u);
  if (!(Math.abs(first) < 1 && Math.abs(second) < 1)) return undefined;
  return [segment(start.p, joint, Math.tan(first / 2)), segment(joint, end.p, Math.tan(second / 2))];
}

/** Angle from one direction to another. */
function halfTurn(a: Point, b: Point): number {
  return Math.atan2(a.x_m * b.y_m - a.y_m * b.x_m, a.x_m * b.x_m + a.y_m * b.y_m);
}

function unit(p: Point): Point | undefined {
  const size = Math.hypot(p.x_m, p.y_m);
  return size > 0 && Number.isFinite(size) ? { x_m: p.x_m / size, y_m: p.y_m / size } : undefined;
}
