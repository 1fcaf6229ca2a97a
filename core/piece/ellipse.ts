/**
 * An ellipse drawn with tangent circular arcs, as a router on a trammel or a CNC cuts it. Each quadrant is cut into
 * equal steps of the ellipse's parameter; between two points with their tangents goes a biarc with equal tangent
 * lengths (Bolton 1975, Computer-Aided Design 7, 29-40, from memory): two arcs that meet tangentially. Steps are added
 * until no point of the ellipse lies further than ELLIPSE_TOLERANCE_M from the arcs.
 */

import { circleOf, turning_rad } from './arc.ts';
import type { Path, Point, Segment } from './piece.ts';

/** Largest distance between the true ellipse and its arcs, m: a tenth of what a steel tape shows. */
export const ELLIPSE_TOLERANCE_M = 0.0001;

const MOST_STEPS_A_QUADRANT = 128;

/**
 * Counter-clockwise from the point nearest the front (0, -width/2), centred on the origin; at least 16 arcs, each named
 * `edge`. Throws RangeError unless both sizes are positive and finite and neither is over 200 times the other.
 */
export function ellipsePath(length_m: number, width_m: number, edge: string): Path {
  return ellipseArcs(length_m, width_m, edge).path;
}

/** Largest distance between the true ellipse and ellipsePath, m (sampled 16 times an arc pair); under the tolerance. */
export function ellipseDeviation_m(length_m: number, width_m: number): number {
  return ellipseArcs(length_m, width_m, '').deviation_m;
}

function ellipseArcs(
  length_m: number,
  width_m: number,
  edge: string,
): { readonly path: Path; readonly deviation_m: number } {
  const ratio = length_m / width_m;
  if (!(length_m > 0 && width_m > 0 && ratio <= 200 && ratio >= 1 / 200))
    throw new RangeError(
      `ellipsePath: length_m ${length_m}, width_m ${width_m}; allowed: positive, within 1:200 of each other`,
    );
  for (let steps = 2; ; steps *= 2) {
    const path = biarcs(length_m / 2, width_m / 2, steps, edge);
    const deviation_m = deviation(path, length_m / 2, width_m / 2, steps);
    if (deviation_m <= ELLIPSE_TOLERANCE_M || steps >= MOST_STEPS_A_QUADRANT) return { path, deviation_m };
  }
}

function onEllipse(a: number, b: number, t: number): Point {
  return { x_m: a * Math.sin(t), y_m: -b * Math.cos(t) };
}

function tangent(a: number, b: number, t: number): Point {
  const x_m = a * Math.cos(t);
  const y_m = b * Math.sin(t);
  const size = Math.hypot(x_m, y_m);
  return { x_m: x_m / size, y_m: y_m / size };
}

function biarcs(a: number, b: number, steps: number, edge: string): Segment[] {
  const segments: Segment[] = [];
  const count = 4 * steps;
  const first = onEllipse(a, b, 0);
  let from = first;
  for (let i = 0; i < count; i += 1) {
    const t0 = (2 * Math.PI * i) / count;
    const t1 = (2 * Math.PI * (i + 1)) / count;
    const to = i === count - 1 ? first : onEllipse(a, b, t1);
    const u = tangent(a, b, t0);
    const w = tangent(a, b, t1);
    const vx = to.x_m - from.x_m;
    const vy = to.y_m - from.y_m;
    // |v - d (u + w)| = 2 d, the positive root written so that it does not cancel.
    const along = vx * (u.x_m + w.x_m) + vy * (u.y_m + w.y_m);
    const square = vx * vx + vy * vy;
    const apart = 1 - (u.x_m * w.x_m + u.y_m * w.y_m);
    const d = square / (along + Math.sqrt(along * along + 2 * apart * square));
    const joint = {
      x_m: (from.x_m + to.x_m + d * (u.x_m - w.x_m)) / 2,
      y_m: (from.y_m + to.y_m + d * (u.y_m - w.y_m)) / 2,
    };
    segments.push(
      { kind: 'arc', from, to: joint, bulge: bulgeFrom(u, from, joint, 1), edge },
      { kind: 'arc', from: joint, to, bulge: bulgeFrom(w, joint, to, -1), edge },
    );
    from = to;
  }
  return segments;
}

/** The angle between the chord and the tangent at one end is half the included angle. */
function bulgeFrom(direction: Point, from: Point, to: Point, sign: 1 | -1): number {
  const cx = to.x_m - from.x_m;
  const cy = to.y_m - from.y_m;
  const cross = direction.x_m * cy - direction.y_m * cx;
  const dot = direction.x_m * cx + direction.y_m * cy;
  return Math.tan((sign * Math.atan2(cross, dot)) / 2);
}

/** By symmetry one quadrant says it all. */
function deviation(path: Path, a: number, b: number, steps: number): number {
  let worst = 0;
  for (let i = 0; i < steps; i += 1) {
    const first = path[2 * i]!;
    const second = path[2 * i + 1]!;
    const reach = Math.abs(turning_rad(first));
    const circles = [circleOf(first)!, circleOf(second)!] as const;
    for (let k = 1; k < 16; k += 1) {
      const p = onEllipse(a, b, (Math.PI / 2) * ((i + k / 16) / steps));
      const at = Math.atan2(p.y_m - circles[0].centre.y_m, p.x_m - circles[0].centre.x_m);
      const turned = at - circles[0].startAngle_rad;
      const within = turned - 2 * Math.PI * Math.round(turned / (2 * Math.PI)) <= reach;
      const c = within ? circles[0] : circles[1];
      worst = Math.max(worst, Math.abs(Math.hypot(p.x_m - c.centre.x_m, p.y_m - c.centre.y_m) - c.radius_m));
    }
  }
  return worst;
}
