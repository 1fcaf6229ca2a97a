/** Lines and circular arcs given by a bulge: radius, centre, length, enclosed area, extremes, nearest point. */

import type { Bounds, Point, Segment } from './piece.ts';

export function chord_m(s: Pick<Segment, 'from' | 'to'>): number {
  return Math.hypot(s.to.x_m - s.from.x_m, s.to.y_m - s.from.y_m);
}

/** Signed included angle of the arc, counter-clockwise positive; 0 for a line. Radians, within (-2 pi, 2 pi). */
export function turning_rad(s: Pick<Segment, 'bulge'>): number {
  return 4 * Math.atan(s.bulge);
}

export interface Circle {
  readonly centre: Point;
  readonly radius_m: number;
  /** Direction from the centre to the start of the arc. */
  readonly startAngle_rad: number;
}

/** The circle an arc lies on; undefined for a line. With chord c and bulge b: R = c (1 + b^2) / (4 |b|). */
export function circleOf(s: Segment): Circle | undefined {
  if (s.bulge === 0) return undefined;
  const b = s.bulge;
  const dx = s.to.x_m - s.from.x_m;
  const dy = s.to.y_m - s.from.y_m;
  // The centre lies on the bisector, (1 - b^2)/(4 b) chords to the left of its middle.
  const k = (1 - b * b) / (4 * b);
  const centre = {
    x_m: (s.from.x_m + s.to.x_m) / 2 - dy * k,
    y_m: (s.from.y_m + s.to.y_m) / 2 + dx * k,
  };
  return {
    centre,
    radius_m: (Math.hypot(dx, dy) * (1 + b * b)) / (4 * Math.abs(b)),
    startAngle_rad: Math.atan2(s.from.y_m - centre.y_m, s.from.x_m - centre.x_m),
  };
}

export function segmentLength_m(s: Segment): number {
  const c = chord_m(s);
  const circle = circleOf(s);
  return circle === undefined ? c : circle.radius_m * Math.abs(turning_rad(s));
}

/** Area between the arc and its chord, R^2 (theta - sin theta)/2, positive when it lies to the right of the chord. */
export function capArea_m2(s: Segment): number {
  const circle = circleOf(s);
  if (circle === undefined) return 0;
  const angle = turning_rad(s);
  return (circle.radius_m ** 2 * angleMinusSine(angle)) / 2;
}

/** theta - sin(theta) without cancellation for flat arcs. */
export function angleMinusSine(angle: number): number {
  if (Math.abs(angle) > 0.3) return angle - Math.sin(angle);
  const q = angle * angle;
  return ((angle * q) / 6) * (1 - (q / 20) * (1 - (q / 42) * (1 - (q / 72) * (1 - q / 110))));
}

/** Point a fraction (0 to 1) of the way along the segment. */
export function pointAlong(s: Segment, fraction: number): Point {
  if (fraction <= 0) return s.from;
  if (fraction >= 1) return s.to;
  const dx = s.to.x_m - s.from.x_m;
  const dy = s.to.y_m - s.from.y_m;
  if (s.bulge === 0) return { x_m: s.from.x_m + dx * fraction, y_m: s.from.y_m + dy * fraction };
  // From the start, the chord to the point turns by half the angle still to run; its length is 2 R sin(part/2).
  const angle = turning_rad(s);
  const ratio = Math.sin((angle * fraction) / 2) / Math.sin(angle / 2);
  const turn = (-angle * (1 - fraction)) / 2;
  const cos = Math.cos(turn) * ratio;
  const sin = Math.sin(turn) * ratio;
  return { x_m: s.from.x_m + dx * cos - dy * sin, y_m: s.from.y_m + dx * sin + dy * cos };
}

/** Heading in which the segment leaves its start or reaches its end. Radians from the x axis. */
export function heading_rad(s: Segment, at: 'start' | 'end'): number {
  const chord = Math.atan2(s.to.y_m - s.from.y_m, s.to.x_m - s.from.x_m);
  return chord + (at === 'start' ? -1 : 1) * (turning_rad(s) / 2);
}

/** Whether a point known to lie on the arc's circle lies on the arc itself, ends included to `slack_m`. */
export function onArc(s: Segment, p: Point, slack_m = 0): boolean {
  const circle = circleOf(s);
  if (circle === undefined) return true;
  const sweep = turning_rad(s);
  const at = Math.atan2(p.y_m - circle.centre.y_m, p.x_m - circle.centre.x_m);
  let along = (at - circle.startAngle_rad) * Math.sign(sweep);
  const full = 2 * Math.PI;
  along -= full * Math.floor(along / full);
  const slack = slack_m / circle.radius_m;
  return along <= Math.abs(sweep) + slack || along >= full - slack;
}

export function segmentBounds(s: Segment): Bounds {
  let minX_m = Math.min(s.from.x_m, s.to.x_m);
  let maxX_m = Math.max(s.from.x_m, s.to.x_m);
  let minY_m = Math.min(s.from.y_m, s.to.y_m);
  let maxY_m = Math.max(s.from.y_m, s.to.y_m);
  const circle = circleOf(s);
  if (circle !== undefined) {
    const { centre, radius_m } = circle;
    const { x_m, y_m } = centre;
    if (onArc(s, { x_m: x_m + radius_m, y_m })) maxX_m = Math.max(maxX_m, x_m + radius_m);
    if (onArc(s, { x_m: x_m - radius_m, y_m })) minX_m = Math.min(minX_m, x_m - radius_m);
    if (onArc(s, { x_m, y_m: y_m + radius_m })) maxY_m = Math.max(maxY_m, y_m + radius_m);
    if (onArc(s, { x_m, y_m: y_m - radius_m })) minY_m = Math.min(minY_m, y_m - radius_m);
  }
  return { minX_m, minY_m, maxX_m, maxY_m };
}

/** Do two upright boxes lie more than slack_m apart? Boxes that touch do not. */
export function boxesApart(a: Bounds, b: Bounds, slack_m = 0): boolean {
  return (
    a.maxX_m < b.minX_m - slack_m ||
    b.maxX_m < a.minX_m - slack_m ||
    a.maxY_m < b.minY_m - slack_m ||
    b.maxY_m < a.minY_m - slack_m
  );
}

/** Distance from a point to the nearest point of the segment. */
export function distanceToSegment_m(s: Segment, p: Point): number {
  const circle = circleOf(s);
  if (circle !== undefined) {
    const away = Math.hypot(p.x_m - circle.centre.x_m, p.y_m - circle.centre.y_m);
    if (onArc(s, p)) return Math.abs(away - circle.radius_m);
    return Math.min(
      Math.hypot(p.x_m - s.from.x_m, p.y_m - s.from.y_m),
      Math.hypot(p.x_m - s.to.x_m, p.y_m - s.to.y_m),
    );
  }
  const dx = s.to.x_m - s.from.x_m;
  const dy = s.to.y_m - s.from.y_m;
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((p.x_m - s.from.x_m) * dx + (p.y_m - s.from.y_m) * dy) / square;
  const f = Math.min(1, Math.max(0, along));
  return Math.hypot(p.x_m - s.from.x_m - dx * f, p.y_m - s.from.y_m - dy * f);
}
