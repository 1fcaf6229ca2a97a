/** Figures of a drawing and the dimension lines they stand on. */
import type { Dimension } from '#core/piece/drawing.ts';
import type { System } from '#core/quantity/units.ts';
import { GREY, type Ink, type TextStyle } from './ink.ts';
import { ARROW, arrow, line, type ToPage } from './pen.ts';
import { sayLength } from './say.ts';
import { boxCorners, type Spot, type TextBox } from './text-boxes.ts';

export const FIGURES: TextStyle = { size: 8.5 };

/** Finds a clear place and writes there; `over` may be written over: the line a figure breaks. */
export type Put = (
  text: string,
  places: readonly TextBox[],
  style: TextStyle,
  over?: readonly Spot[],
) => void;

export function dimension(ink: Ink, d: Dimension, at: ToPage, system: System, put: Put): void {
  const text = `${d.label === 'diameter' || d.label === 'cut-out diameter' ? 'Ø ' : ''}${sayLength(d.value_m, system)}`;
  const [a, b] = [at(d.line.from), at(d.line.to)];
  const long = Math.hypot(b.x - a.x, b.y - a.y);
  const [ux, uy] = long > 0 ? [(b.x - a.x) / long, (b.y - a.y) / long] : [1, 0];
  let turn = (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI;
  if (turn > 89.9) turn -= 180;
  if (turn < -90.1) turn += 180;
  const wide = ink.measure(text, FIGURES);
  const inside = wide + 3 * ARROW <= long;
  const out = { x: d.offsetDirection.x, y: -d.offsetDirection.y };
  const on = (part: number, away = 0): TextBox => ({
    ...box(
      ink,
      text,
      a.x + (b.x - a.x) * part + out.x * away,
      a.y + (b.y - a.y) * part + out.y * away,
      FIGURES,
    ),
    turn_deg: turn,
  });
  const past = (wide / 2 + 2 * ARROW + 3) / (long || 1);
  const beside = [on(1 + past), on(-past), on(0.5, 9), on(0.5, -9), on(1 + past, 9), on(-past, 9)];
  if (inside || long >= 3 * ARROW) {
    line(ink, a, b, 0.5, GREY);
    arrow(ink, a, b);
    arrow(ink, b, a);
  } else {
    const [fromA, fromB] = [
      { x: a.x - ux * 2 * ARROW, y: a.y - uy * 2 * ARROW },
      { x: b.x + ux * 2 * ARROW, y: b.y + uy * 2 * ARROW },
    ];
    line(ink, fromA, fromB, 0.5, GREY);
    arrow(ink, a, fromA);
    arrow(ink, b, fromB);
  }
  // Its own line is broken by the figure; every other line is not.
  const parts = long > 0 ? [0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85] : [];
  const fits = parts.filter((p) => Math.min(p, 1 - p) * long >= wide / 2 + 1.5 * ARROW);
  put(text, inside ? [...fits.map((p) => on(p)), ...beside] : beside, FIGURES);
}

export function box(ink: Ink, text: string, x: number, y: number, style: TextStyle): TextBox {
  return { x, y, wide: ink.measure(text, style) + 3, high: style.size * 1.05, turn_deg: 0 };
}

/** On white, so that a line it stands on is broken by it. */
export function inkText(ink: Ink, text: string, place: TextBox, style: TextStyle): void {
  const { doc } = ink;
  doc.save();
  const [first, ...rest] = boxCorners(place);
  doc.moveTo(first!.x, first!.y);
  for (const c of rest) doc.lineTo(c.x, c.y);
  doc.closePath().fill('#ffffff');
  doc.restore();
  const turn = (place.turn_deg * Math.PI) / 180;
  const drop = style.size * 0.33;
  ink.write(text, place.x - Math.sin(turn) * drop, place.y + Math.cos(turn) * drop, {
    ...style,
    align: 'middle',
    turn_deg: place.turn_deg,
  });
}

/** Draws them and says where they lie. */
export function extensions(ink: Ink, d: Dimension, at: ToPage): Spot[][] {
  const drawn: Spot[][] = [];
  for (const [measured, end] of [
    [at(d.from), at(d.line.from)],
    [at(d.to), at(d.line.to)],
  ] as const) {
    const long = Math.hypot(end.x - measured.x, end.y - measured.y);
    if (long < 1) continue;
    const past = 4 / long;
    const beyond = { x: end.x + (end.x - measured.x) * past, y: end.y + (end.y - measured.y) * past };
    line(ink, measured, beyond, 0.3, GREY);
    drawn.push([measured, beyond]);
  }
  return drawn;
}
