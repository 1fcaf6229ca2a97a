/** The parts of lines and arcs that lie inside an upright rectangle. */

import { boxesApart, chord_m, circleOf, pointAlong, segmentBounds, turning_rad } from '../arc.ts';
import type { Bounds, Point, Segment } from '../piece.ts';

/** Parts shorter than this are a touch, not a line. */
const TOUCH_M = 1e-9;

/** In order along the segment; arcs stay arcs. */
export function clipSegment(s: Segment, window: Bounds): Segment[] {
  if (boxesApart(segmentBounds(s), window)) return [];
  const stops = [0, ...crossings(s, window), 1].sort((a, b) => a - b);
  const kept: [number, number][] = [];
  for (let i = 1; i < stops.length; i += 1) {
    const [a, b] = [stops[i - 1]!, stops[i]!];
    if (b <= a || !within(pointAlong(s, (a + b) / 2), window)) continue;
    const last = kept.at(-1);
    if (last !== undefined && last[1] === a) last[1] = b;
    else kept.push([a, b]);
  }
  return kept.map(([a, b]) => part(s, a, b)).filter((p) => p.bulge !== 0 || chord_m(p) > TOUCH_M);
}

export function within(p: Point, window: Bounds): boolean {
  return p.x_m >= window.minX_m && p.x_m <= window.maxX_m && p.y_m >= window.minY_m && p.y_m <= window.maxY_m;
}

function part(s: Segment, from: number, to: number): Segment {
  if (from === 0 && to === 1) return s;
  return {
    ...s,
    from: pointAlong(s, from),
    to: pointAlong(s, to),
    bulge: s.bulge === 0 ? 0 : Math.tan(Math.atan(s.bulge) * (to - from)),
  };
}

/** Where the segment meets the four lines of the window, as fractions of its way. */
function crossings(s: Segment, window: Bounds): number[] {
  const found: number[] = [];
  const keep = (f: number): void => {
    if (f > 0 && f < 1) found.push(f);
  };
  const circle = circleOf(s);
  if (circle === undefined) {
    const dx = s.to.x_m - s.from.x_m;
    const dy = s.to.y_m - s.from.y_m;
    if (dx !== 0) for (const x of [window.minX_m, window.maxX_m]) keep((x - s.from.x_m) / dx);
    if (dy !== 0) for (const y of [window.minY_m, window.maxY_m]) keep((y - s.from.y_m) / dy);
    return found;
  }
  const { centre, radius_m, startAngle_rad } = circle;
  const sweep = turning_rad(s);
  const full = 2 * Math.PI;
  const at = (angle_rad: number): void => {
    const along = (angle_rad - startAngle_rad) * Math.sign(sweep);
    keep((along - full * Math.floor(along / full)) / Math.abs(sweep));
  };
  for (const x of [window.minX_m, window.maxX_m]) {
    const c = (x - centre.x_m) / radius_m;
    if (Math.abs(c) > 1) continue;
    at(Math.acos(c));
    at(-Math.acos(c));
  }
  for (const y of [window.minY_m, window.maxY_m]) {
    const c = (y - centre.y_m) / radius_m;
    if (Math.abs(c) > 1) continue;
    at(Math.asin(c));
    at(Math.PI - Math.asin(c));
  }
  return found;
}
