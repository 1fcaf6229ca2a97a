/** A closed path of lines and arcs: area, length, bounds, centroid, inside or not, flattening. Exact unless said. */

import {
  angleMinusSine,
  capArea_m2,
  circleOf,
  distanceToSegment_m,
  heading_rad,
  pointAlong,
  segmentBounds,
  segmentLength_m,
  turning_rad,
} from './arc.ts';
import type { Bounds, Path, Point, Segment } from './piece.ts';

/**
 * Signed area, counter-clockwise positive, m2. Green's theorem: the shoelace sum over the chords plus the cap between
 * each arc and its chord. Sums are taken about the first point, so a far-away origin costs no digits.
 */
export function signedArea_m2(path: Path): number {
  const o = path[0]?.from ?? { x_m: 0, y_m: 0 };
  let area = 0;
  for (const s of path) {
    area +=
      ((s.from.x_m - o.x_m) * (s.to.y_m - o.y_m) - (s.to.x_m - o.x_m) * (s.from.y_m - o.y_m)) / 2 +
      capArea_m2(s);
  }
  return area;
}

/** Area inside the path, m2. A path that crosses itself has none: validatePiece refuses it first. */
export function pathArea_m2(path: Path): number {
  return Math.abs(signedArea_m2(path));
}

/** Length once round, m. */
export function pathLength_m(path: Path): number {
  let length = 0;
  for (const s of path) length += segmentLength_m(s);
  return length;
}

/** Smallest upright box round the path, arcs included. Throws RangeError on an empty path. */
export function bounds(path: Path): Bounds {
  if (path.length === 0) throw new RangeError('bounds: path has no segments; allowed: 1 or more');
  let minX_m = Infinity;
  let minY_m = Infinity;
  let maxX_m = -Infinity;
  let maxY_m = -Infinity;
  for (const s of path) {
    const b = segmentBounds(s);
    minX_m = Math.min(minX_m, b.minX_m);
    minY_m = Math.min(minY_m, b.minY_m);
    maxX_m = Math.max(maxX_m, b.maxX_m);
    maxY_m = Math.max(maxY_m, b.maxY_m);
  }
  return { minX_m, minY_m, maxX_m, maxY_m };
}

/**
 * Centre of area. Each chord with the first point makes a triangle, each arc adds a circular segment whose centroid
 * lies 4 R sin^3(theta/2) / (3 (theta - sin theta)) from the arc's centre. Throws RangeError when there is no area.
 */
export function centroid(path: Path): Point {
  const o = path[0]?.from ?? { x_m: 0, y_m: 0 };
  let area = 0;
  let mx = 0;
  let my = 0;
  for (const s of path) {
    const ax = s.from.x_m - o.x_m;
    const ay = s.from.y_m - o.y_m;
    const bx = s.to.x_m - o.x_m;
    const by = s.to.y_m - o.y_m;
    const triangle = (ax * by - bx * ay) / 2;
    area += triangle;
    mx += (triangle * (ax + bx)) / 3;
    my += (triangle * (ay + by)) / 3;
    const circle = circleOf(s);
    if (circle === undefined) continue;
    const angle = turning_rad(s);
    const cap = (circle.radius_m ** 2 * angleMinusSine(angle)) / 2;
    const away = (4 * circle.radius_m * Math.sin(angle / 2) ** 3) / (3 * angleMinusSine(angle));
    const middle = circle.startAngle_rad + angle / 2;
    area += cap;
    // away * sign: for a clockwise arc both the sine cubed and theta - sin theta are negative, so it stays positive.
    mx += cap * (circle.centre.x_m - o.x_m + away * Math.cos(middle));
    my += cap * (circle.centre.y_m - o.y_m + away * Math.sin(middle));
  }
  if (area === 0) throw new RangeError('centroid: path encloses no area; allowed: area above 0 m2');
  return { x_m: o.x_m + mx / area, y_m: o.y_m + my / area };
}

/**
 * Corners of a polygon whose corners lie on the path and whose sides are nowhere further than tolerance_m from it.
 * A chord spanning the angle a strays R (1 - cos(a/2)); spans of an arc are equal and at most a third of a turn.
 * Throws RangeError unless tolerance_m is at least 1e-7 m (0.1 micrometre) and finite.
 */
export function flattenPath(path: Path, tolerance_m: number): Point[] {
  if (!(tolerance_m >= 1e-7 && Number.isFinite(tolerance_m)))
    throw new RangeError(`flattenPath: tolerance_m ${tolerance_m}; allowed: 1e-7 m or more`);
  const points: Point[] = [];
  for (const s of path) {
    points.push(s.from);
    const circle = circleOf(s);
    if (circle === undefined) continue;
    const stray = Math.min(0.5, tolerance_m / circle.radius_m);
    // 2 acos(1 - x) = 4 asin(sqrt(x/2)), which keeps its digits for small x.
    const span = 4 * Math.asin(Math.sqrt(stray / 2));
    const spans = Math.max(1, Math.ceil(Math.abs(turning_rad(s)) / span - 1e-9));
    for (let i = 1; i < spans; i += 1) points.push(pointAlong(s, i / spans));
  }
  return points;
}

/** Distance from a point to the nearest point of the path, m. */
export function distanceToPath_m(path: Path, p: Point): number {
  let nearest = Infinity;
  for (const s of path) nearest = Math.min(nearest, distanceToSegment_m(s, p));
  return nearest;
}

/**
 * Whether the point lies inside. Exact on arcs: counts where a ray to the right meets lines and arcs. A point on the
 * path itself may be told either way; ask distanceToPath_m where that matters.
 */
export function pointInside(path: Path, p: Point): boolean {
  let inside = false;
  for (const s of path) {
    const left = leftOfChord(s, p);
    if (s.from.y_m > p.y_m !== s.to.y_m > p.y_m && left === s.to.y_m > s.from.y_m) inside = !inside;
    // Chords decide, then each arc's cap flips what lies in it: the cap is inside the circle, beyond the chord.
    if (s.bulge !== 0 && left !== s.bulge > 0 && inCircleOf(s, p)) inside = !inside;
  }
  return inside;
}

/**
 * Which side of a chord, one answer for the ray and for the cap: two would open a hole along the chords of a disc. A point on the chord is taken
 * as a hair above it (right of an upright one), as the ray takes points level with a corner.
 */
function leftOfChord(s: Segment, p: Point): boolean {
  const [dx, dy] = [s.to.x_m - s.from.x_m, s.to.y_m - s.from.y_m];
  const side = dx * (p.y_m - s.from.y_m) - dy * (p.x_m - s.from.x_m);
  return side !== 0 ? side > 0 : dx !== 0 ? dx > 0 : dy < 0;
}

function inCircleOf(s: Segment, p: Point): boolean {
  const circle = circleOf(s)!;
  return (p.x_m - circle.centre.x_m) ** 2 + (p.y_m - circle.centre.y_m) ** 2 < circle.radius_m ** 2;
}

/** The same closed path run the other way round. */
export function reversePath(path: Path): Segment[] {
  return path.map((s) => ({ ...s, from: s.to, to: s.from, bulge: s.bulge === 0 ? 0 : -s.bulge })).reverse();
}

/** Counter-clockwise, whichever way round it came. */
export function counterClockwise(path: Path): Path {
  return signedArea_m2(path) < 0 ? reversePath(path) : path;
}

/** Turned counter-clockwise about the origin by angle_rad, then moved by `by`. */
export function movePath(path: Path, angle_rad: number, by: Point): Segment[] {
  const cos = Math.cos(angle_rad);
  const sin = Math.sin(angle_rad);
  const move = (p: Point): Point => ({
    x_m: p.x_m * cos - p.y_m * sin + by.x_m,
    y_m: p.x_m * sin + p.y_m * cos + by.y_m,
  });
  return path.map((s) => ({ ...s, from: move(s.from), to: move(s.to) }));
}

/** Turn between a segment's end and the next one's start, within (-pi, pi]; 0 where they are tangent. */
export function cornerTurn_rad(before: Segment, after: Segment): number {
  const turn = heading_rad(after, 'start') - heading_rad(before, 'end');
  const folded = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  return folded <= -Math.PI ? folded + 2 * Math.PI : folded;
}
