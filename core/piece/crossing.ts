/** Where paths of lines and arcs meet: exact intersections, sorted so that thousands of segments stay quick. */

import {
  boxesApart,
  circleOf,
  distanceToSegment_m,
  onArc,
  pointAlong,
  segmentBounds,
  segmentLength_m,
} from './arc.ts';
import type { Bounds, Path, Point, Segment } from './piece.ts';

/** Points closer than this are one point, m. */
const SAME_M = 1e-7;

/** Points two segments share; where they lie on top of each other, the two ends of the shared part. */
export function meetings(a: Segment, b: Segment): Point[] {
  const ca = circleOf(a);
  const cb = circleOf(b);
  let found: Point[];
  if (ca === undefined && cb === undefined) found = lineLine(a, b);
  else if (ca === undefined) found = lineCircle(a, cb!.centre, cb!.radius_m);
  else if (cb === undefined) found = lineCircle(b, ca.centre, ca.radius_m);
  else found = circleCircle(ca.centre, ca.radius_m, cb.centre, cb.radius_m);
  const shared = found.filter((p) => onSegment(a, p) && onSegment(b, p));
  // Ends that touch, and overlaps on one line or circle.
  for (const [p, other] of [
    [a.from, b],
    [a.to, b],
    [b.from, a],
    [b.to, a],
  ] as const)
    if (distanceToSegment_m(other, p) <= SAME_M) shared.push(p);
  return shared;
}

function onSegment(s: Segment, p: Point): boolean {
  if (s.bulge !== 0) return onArc(s, p, SAME_M);
  return distanceToSegment_m(s, p) <= SAME_M;
}

function lineLine(a: Segment, b: Segment): Point[] {
  const ux = a.to.x_m - a.from.x_m;
  const uy = a.to.y_m - a.from.y_m;
  const wx = b.to.x_m - b.from.x_m;
  const wy = b.to.y_m - b.from.y_m;
  const cross = ux * wy - uy * wx;
  if (Math.abs(cross) <= 1e-12 * Math.hypot(ux, uy) * Math.hypot(wx, wy)) return [];
  const f = ((b.from.x_m - a.from.x_m) * wy - (b.from.y_m - a.from.y_m) * wx) / cross;
  return [{ x_m: a.from.x_m + f * ux, y_m: a.from.y_m + f * uy }];
}

function lineCircle(line: Segment, centre: Point, radius_m: number): Point[] {
  const dx = line.to.x_m - line.from.x_m;
  const dy = line.to.y_m - line.from.y_m;
  const size = Math.hypot(dx, dy);
  const ux = dx / size;
  const uy = dy / size;
  const along = (centre.x_m - line.from.x_m) * ux + (centre.y_m - line.from.y_m) * uy;
  const off = (centre.x_m - line.from.x_m) * uy - (centre.y_m - line.from.y_m) * ux;
  if (Math.abs(off) > radius_m + SAME_M) return [];
  const half = Math.sqrt(Math.max(0, radius_m * radius_m - off * off));
  return [along - half, along + half].map((t) => ({
    x_m: line.from.x_m + t * ux,
    y_m: line.from.y_m + t * uy,
  }));
}

function circleCircle(p: Point, r: number, q: Point, s: number): Point[] {
  const dx = q.x_m - p.x_m;
  const dy = q.y_m - p.y_m;
  const d = Math.hypot(dx, dy);
  if (d <= SAME_M || d > r + s + SAME_M || d < Math.abs(r - s) - SAME_M) return [];
  const along = (d * d + (r - s) * (r + s)) / (2 * d);
  const half = Math.sqrt(Math.max(0, r * r - along * along));
  const x = p.x_m + (dx / d) * along;
  const y = p.y_m + (dy / d) * along;
  return [
    { x_m: x - (dy / d) * half, y_m: y + (dx / d) * half },
    { x_m: x + (dy / d) * half, y_m: y - (dx / d) * half },
  ];
}

interface Boxed {
  readonly box: Bounds;
  readonly segment: Segment;
  readonly index: number;
}

function boxed(path: Path): Boxed[] {
  return path
    .map((segment, index) => ({ box: segmentBounds(segment), segment, index }))
    .sort((a, b) => a.box.minX_m - b.box.minX_m);
}

function same(p: Point, q: Point): boolean {
  // Wider than SAME_M: tangent neighbours seem to meet a little beside their common point.
  return Math.hypot(p.x_m - q.x_m, p.y_m - q.y_m) <= 100 * SAME_M;
}

/** A place where a closed path touches or crosses itself, with the two segments; undefined when it nowhere does. */
export function selfMeeting(
  path: Path,
): { readonly at: Point; readonly first: number; readonly second: number } | undefined {
  const sorted = boxed(path);
  for (let i = 0; i < sorted.length; i += 1) {
    const a = sorted[i]!;
    for (let k = i + 1; k < sorted.length; k += 1) {
      const b = sorted[k]!;
      if (b.box.minX_m > a.box.maxX_m + SAME_M) break;
      if (boxesApart(a.box, b.box, SAME_M)) continue;
      const joints = jointsOf(path, a.index, b.index);
      if (joints.length > 0 && tangentNeighbours(a.segment, b.segment)) continue;
      const at = meetings(a.segment, b.segment).find((p) => !joints.some((j) => same(p, j)));
      if (at !== undefined) return { at, first: a.index, second: b.index };
    }
  }
  return undefined;
}

/** Two pieces of one arc or one line, one running on from the other: they meet nowhere but at their joint. */
function tangentNeighbours(a: Segment, b: Segment): boolean {
  if (Math.sign(a.bulge) !== Math.sign(b.bulge)) return false;
  const total = Math.abs(Math.atan(a.bulge) + Math.atan(b.bulge)) * 4;
  const onward = same(a.to, b.from) ? [a, b] : [b, a];
  const ca = circleOf(a);
  const cb = circleOf(b);
  if (ca === undefined || cb === undefined) return false;
  const oneCircle =
    Math.hypot(ca.centre.x_m - cb.centre.x_m, ca.centre.y_m - cb.centre.y_m) <= SAME_M &&
    Math.abs(ca.radius_m - cb.radius_m) <= SAME_M;
  return oneCircle && same(onward[0]!.to, onward[1]!.from) && total <= 2 * Math.PI + 1e-9;
}

function jointsOf(path: Path, i: number, k: number): Point[] {
  const n = path.length;
  const joints: Point[] = [];
  if ((i + 1) % n === k) joints.push(path[i]!.to);
  if ((k + 1) % n === i) joints.push(path[k]!.to);
  return joints;
}

/** Whether two closed paths touch or cross. */
export function pathsMeet(a: Path, b: Path): Point | undefined {
  const others = boxed(b);
  for (const s of boxed(a))
    for (const o of others) {
      if (o.box.minX_m > s.box.maxX_m + SAME_M) break;
      if (boxesApart(s.box, o.box, SAME_M)) continue;
      const at = meetings(s.segment, o.segment)[0];
      if (at !== undefined) return at;
    }
  return undefined;
}

/**
 * Where along the path a measure is least, and that least value: looked for at points no further than step_m apart, then
 * closed in on between the neighbours of the best one (golden section), so a smooth measure is found to its own digits.
 */
export function leastAlong(
  path: Path,
  step_m: number,
  measure: (p: Point) => number,
): { readonly at: Point; readonly value: number } {
  let at = path[0]!.from;
  let value = Infinity;
  let best = { segment: path[0]!, fraction: 0, width: 0 };
  for (const segment of path) {
    const count = Math.max(2, Math.ceil(segmentLength_m(segment) / step_m));
    for (let i = 0; i < count; i += 1) {
      const p = pointAlong(segment, i / count);
      const here = measure(p);
      if (here >= value) continue;
      value = here;
      at = p;
      best = { segment, fraction: i / count, width: 1 / count };
    }
  }
  // The least may lie on the segment before, when the best point is a start: both sides are searched.
  const before = path[(path.indexOf(best.segment) + path.length - 1) % path.length]!;
  const spans = [
    { segment: best.segment, low: Math.max(0, best.fraction - best.width), high: best.fraction + best.width },
    ...(best.fraction === 0 ? [{ segment: before, low: 0.5, high: 1 }] : []),
  ];
  for (const { segment, ...span } of spans) {
    let { low, high } = span;
    for (let i = 0; i < 48; i += 1) {
      const third = (high - low) * (2 - GOLDEN);
      const p = pointAlong(segment, low + third);
      const q = pointAlong(segment, high - third);
      const mp = measure(p);
      const mq = measure(q);
      if (mp < mq) high -= third;
      else low += third;
      if (Math.min(mp, mq) < value) {
        value = Math.min(mp, mq);
        at = mp < mq ? p : q;
      }
    }
  }
  return { at, value };
}

const GOLDEN = (1 + Math.sqrt(5)) / 2;
