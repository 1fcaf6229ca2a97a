/** From the piece's own axes (metres, y to the back) to pixels (y down), and the shapes drawn there. */
import { circleOf, heading_rad, pointAlong, segmentLength_m, turning_rad } from '#core/piece/arc.ts';
import type { Bounds, Point, Segment } from '#core/piece/piece.ts';

export interface Pixel {
  readonly x: number;
  readonly y: number;
}

/** The piece's box on the sheet. */
export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly pxPerMetre: number;
  readonly bounds: Bounds;
}

export function toPixel(frame: Frame, p: Point): Pixel {
  return {
    x: frame.left + (p.x_m - frame.bounds.minX_m) * frame.pxPerMetre,
    y: frame.top + (frame.bounds.maxY_m - p.y_m) * frame.pxPerMetre,
  };
}

/** The other way: the place on the piece under a pixel of the sheet. */
export function fromPixel(frame: Frame, p: Pixel): Point {
  return {
    x_m: frame.bounds.minX_m + (p.x - frame.left) / frame.pxPerMetre,
    y_m: frame.bounds.maxY_m - (p.y - frame.top) / frame.pxPerMetre,
  };
}

/** A frame for other bounds under which every place keeps its pixel. */
export function heldFrame(frame: Frame, bounds: Bounds): Frame {
  return {
    ...frame,
    bounds,
    left: frame.left + (bounds.minX_m - frame.bounds.minX_m) * frame.pxPerMetre,
    top: frame.top + (frame.bounds.maxY_m - bounds.maxY_m) * frame.pxPerMetre,
  };
}

/** A hundredth of a pixel, as text. */
export function px(value: number): string {
  return String(Math.round(value * 100) / 100 + 0);
}

/** SVG path data of segments that follow one another: exact lines and circular arcs. */
export function pathOf(frame: Frame, segments: readonly Segment[], close: boolean): string {
  const parts: string[] = [];
  let last: Point | null = null;
  for (const s of segments) {
    const from = toPixel(frame, s.from);
    const to = toPixel(frame, s.to);
    if (last === null || Math.hypot(s.from.x_m - last.x_m, s.from.y_m - last.y_m) > 1e-9)
      parts.push(`M${px(from.x)} ${px(from.y)}`);
    const circle = circleOf(s);
    if (circle === undefined) parts.push(`L${px(to.x)} ${px(to.y)}`);
    else {
      const r = px(circle.radius_m * frame.pxPerMetre);
      const large = Math.abs(turning_rad(s)) > Math.PI ? 1 : 0;
      // Counter-clockwise in the piece stays so to the eye, which SVG calls sweep 0.
      parts.push(`A${r} ${r} 0 ${large} ${s.bulge > 0 ? 0 : 1} ${px(to.x)} ${px(to.y)}`);
    }
    last = s.to;
  }
  if (close && parts.length > 0) parts.push('Z');
  return parts.join('');
}

export interface OnEdge {
  readonly at: Pixel;
  /** Unit vector out of the piece, in pixels. */
  readonly out: Pixel;
}

/** A part of the way along an edge's longest segment, its middle if not said. Throws RangeError when there are none. */
export function edgeMiddle(frame: Frame, segments: readonly Segment[], part = 0.5): OnEdge {
  const longest = segments.reduce<Segment | undefined>(
    (best, s) => (best === undefined || segmentLength_m(s) > segmentLength_m(best) ? s : best),
    undefined,
  );
  if (longest === undefined) throw new RangeError('edgeMiddle: no segments; allowed: 1 or more');
  return onSegment(frame, longest, part);
}

/** Points about `apart` px from each other along the segments, none at their ends. */
export function alongEdge(frame: Frame, segments: readonly Segment[], apart: number): OnEdge[] {
  return segments.flatMap((s) => {
    const count = Math.min(400, Math.round((segmentLength_m(s) * frame.pxPerMetre) / apart));
    return Array.from({ length: count }, (_, i) => onSegment(frame, s, (i + 0.5) / count));
  });
}

function onSegment(frame: Frame, s: Segment, fraction: number): OnEdge {
  const start = heading_rad(s, 'start');
  const heading = start + turning_rad(s) * fraction;
  // The piece lies to the left of every segment: out is to the right, with y turned over for the screen.
  return { at: toPixel(frame, pointAlong(s, fraction)), out: { x: Math.sin(heading), y: Math.cos(heading) } };
}
