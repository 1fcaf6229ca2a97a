/** Lines, arrows and arcs in ink. */
import { circleOf, turning_rad } from '#core/piece/arc.ts';
import type { Point, Segment } from '#core/piece/piece.ts';
import { GREY, type Ink } from './ink.ts';
import type { Spot } from './text-boxes.ts';

export type ToPage = (p: Point) => Spot;

/** Length of an arrow head, points. */
export const ARROW = 6;

export function line(ink: Ink, a: Spot, b: Spot, width: number, colour: string): void {
  ink.doc.moveTo(a.x, a.y).lineTo(b.x, b.y).lineWidth(width).undash().strokeColor(colour).stroke();
}

export function arrow(ink: Ink, tip: Spot, from: Spot): void {
  const size = Math.hypot(tip.x - from.x, tip.y - from.y);
  if (!(size > 0)) return;
  const [ux, uy] = [((tip.x - from.x) / size) * ARROW, ((tip.y - from.y) / size) * ARROW];
  ink.doc
    .moveTo(tip.x, tip.y)
    .lineTo(tip.x - ux - uy * 0.25, tip.y - uy + ux * 0.25)
    .lineTo(tip.x - ux + uy * 0.25, tip.y - uy - ux * 0.25)
    .closePath()
    .fill(GREY);
}

export function cross(ink: Ink, p: Spot, reach: number): void {
  line(ink, { x: p.x - reach, y: p.y }, { x: p.x + reach, y: p.y }, 0.5, GREY);
  line(ink, { x: p.x, y: p.y - reach }, { x: p.x, y: p.y + reach }, 0.5, GREY);
}

/** Puts a line or arc on the pen; an arc as Bezier curves of at most a sixteenth of a turn (stray under 1e-7 of its radius). */
export function trace(ink: Ink, s: Segment, at: ToPage): void {
  const start = at(s.from);
  ink.doc.moveTo(start.x, start.y);
  const circle = circleOf(s);
  if (circle === undefined) {
    const end = at(s.to);
    ink.doc.lineTo(end.x, end.y);
    return;
  }
  const sweep = turning_rad(s);
  const steps = Math.max(1, Math.ceil(Math.abs(sweep) / (Math.PI / 8)));
  const { centre, radius_m, startAngle_rad } = circle;
  const handle = (4 / 3) * Math.tan(sweep / steps / 4) * radius_m;
  for (let i = 0; i < steps; i += 1) {
    const a = startAngle_rad + (sweep * i) / steps;
    const b = startAngle_rad + (sweep * (i + 1)) / steps;
    const on = (angle: number, along: number): Spot =>
      at({
        x_m: centre.x_m + radius_m * Math.cos(angle) - along * Math.sin(angle),
        y_m: centre.y_m + radius_m * Math.sin(angle) + along * Math.cos(angle),
      });
    const [c1, c2, end] = [on(a, handle), on(b, -handle), on(b, 0)];
    ink.doc.bezierCurveTo(c1.x, c1.y, c2.x, c2.y, end.x, end.y);
  }
}
