/** What files draw with: lines, parts of ellipses, splines; and how each becomes lines and arcs in metres. */

import { circleOf, segmentBounds, turning_rad } from '../arc.ts';
import type { Point, Segment } from '../piece.ts';
import { type Affine, place, type Spot, turn } from './affine.ts';
import { tooMany } from './chain.ts';
import { fitArcs, segment } from './curve-arcs.ts';
import { MOST_VERTICES, refuse } from './imported-drawing.ts';
import { type Spline, splineAt, splineSpans } from './spline.ts';

/** centre + u cos t + v sin t, for t from `start` to `end` (either way round). A circle has u and v square and alike. */
export interface Conic {
  readonly kind: 'conic';
  readonly centre: Spot;
  readonly u: Spot;
  readonly v: Spot;
  readonly start: number;
  readonly end: number;
}

export type Shape =
  | { readonly kind: 'line'; readonly from: Spot; readonly to: Spot }
  | Conic
  | { readonly kind: 'spline'; readonly spline: Spline };

const TURN = 2 * Math.PI;

export function circleArc(centre: Spot, radius: number, start: number, end: number): Conic {
  return { kind: 'conic', centre, u: { x: radius, y: 0 }, v: { x: 0, y: radius }, start, end };
}

/** A flatter arc is a line: over a chord of 20 m it rises by less than 0.001 mm. */
const FLAT_BULGE = 1e-7;

/** A line, or the arc with this bulge, between two points. */
export function bulgeShape(from: Spot, to: Spot, bulge: number): Shape {
  if (Math.abs(bulge) < FLAT_BULGE) return { kind: 'line', from, to };
  const flat = segment({ x_m: from.x, y_m: from.y }, { x_m: to.x, y_m: to.y }, bulge);
  const circle = circleOf(flat);
  if (circle === undefined || !(circle.radius_m > 0)) return { kind: 'line', from, to };
  return circleArc(
    { x: circle.centre.x_m, y: circle.centre.y_m },
    circle.radius_m,
    circle.startAngle_rad,
    circle.startAngle_rad + turning_rad(flat),
  );
}

/** The shape placed by `m` (which takes it to metres) as lines and arcs within the tolerance; circles stay exact. */
export function shapeSegments(shape: Shape, m: Affine, tolerance_m: number): Segment[] {
  if (shape.kind === 'line') return [segment(near(place(m, shape.from)), near(place(m, shape.to)), 0)];
  if (shape.kind === 'spline') return splineSegments(shape.spline, m, tolerance_m);
  const conic = { ...shape, centre: place(m, shape.centre), u: turn(m, shape.u), v: turn(m, shape.v) };
  return conicSegments(conic, tolerance_m);
}

function splineSegments(own: Spline, m: Affine, tolerance_m: number): Segment[] {
  const spline: Spline = { ...own, controls: own.controls.map((c) => place(m, c)) };
  const controls = spline.controls.map((control) => near(control));
  if (spline.degree === 1) return controls.slice(1).map((c, i) => segment(controls[i]!, c, 0));
  const made: Segment[] = [];
  for (const { from, to, index } of splineSpans(spline)) {
    const curve = (t: number) => {
      const at = splineAt(spline, index, t);
      return { p: point(at.p), along: point(at.along) };
    };
    for (const s of fitArcs(curve, from, to, tolerance_m)) made.push(s);
    if (made.length > 2 * MOST_VERTICES) tooMany();
  }
  return made;
}

/** Where a coordinate would be further out than this, the unit is wrong or the file hostile, m. */
const FAR_M = 1000;

/** The centre of a nearly flat arc lies far out; further than this its points are no longer known to 0.001 mm. */
const FAR_CENTRE_M = 1e9;

function near(p: Spot, far_m = FAR_M): Point {
  if (!(Math.abs(p.x) <= far_m && Math.abs(p.y) <= far_m))
    refuse(
      'file.far-away',
      'Something in the drawing is too far out or too large.',
      `${p.x.toPrecision(4)}, ${p.y.toPrecision(4)} m`,
      `within ${FAR_M} m; check the unit`,
    );
  return point(p);
}

function conicSegments(conic: Conic, tolerance_m: number): Segment[] {
  const { u, v, start, end } = conic;
  const sweep = end - start;
  const long = Math.hypot(u.x, u.y);
  const circular =
    Math.abs(long - Math.hypot(v.x, v.y)) <= 1e-9 * long &&
    Math.abs(u.x * v.x + u.y * v.y) <= 1e-9 * long * long;
  if (circular) {
    // A full turn in four, as the outlines of round pieces; no other part over half a turn.
    const parts =
      Math.abs(sweep) > TURN - 1e-9 ? 4 : Math.max(1, Math.ceil(Math.abs(sweep) / Math.PI - 1e-9));
    for (const spot of [conic.centre, u, v]) near(spot, FAR_CENTRE_M);
    const side = Math.sign(u.x * v.y - u.y * v.x);
    const bulge = side * Math.tan(sweep / parts / 4);
    return Array.from({ length: parts }, (_, i) => {
      const made = segment(
        onConic(conic, start + (sweep * i) / parts),
        onConic(conic, start + (sweep * (i + 1)) / parts),
        bulge,
      );
      const box = segmentBounds(made);
      near({ x: box.minX_m, y: box.minY_m });
      near({ x: box.maxX_m, y: box.maxY_m });
      return made;
    });
  }
  for (const spot of [conic.centre, u, v]) near(spot);
  const quarters = Math.max(1, Math.ceil(Math.abs(sweep) / (Math.PI / 2) - 1e-9));
  return Array.from({ length: quarters }, (_, i) =>
    fitArcs(
      (t) => ({
        p: onConic(conic, t),
        along: {
          x_m: (v.x * Math.cos(t) - u.x * Math.sin(t)) * Math.sign(sweep),
          y_m: (v.y * Math.cos(t) - u.y * Math.sin(t)) * Math.sign(sweep),
        },
      }),
      start + (sweep * i) / quarters,
      start + (sweep * (i + 1)) / quarters,
      tolerance_m,
    ),
  ).flat();
}

function onConic({ centre, u, v }: Conic, t: number): Point {
  const cos = Math.cos(t);
  const sin = Math.sin(t);
  return { x_m: centre.x + u.x * cos + v.x * sin, y_m: centre.y + u.y * cos + v.y * sin };
}

function point(p: Spot): Point {
  return { x_m: p.x, y_m: p.y };
}
