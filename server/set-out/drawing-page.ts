/** The dimensioned drawing of a piece in ink: core says what is drawn and where, this fits it on the paper. */
import { pointAlong } from '#core/piece/arc.ts';
import type { Drawing, DrawnSegment, EdgeStyle, Leader } from '#core/piece/drawing.ts';
import type { Point, Segment } from '#core/piece/piece.ts';
import type { SetOut } from '#core/piece/set-out/set-out.ts';
import type { SplashStrip } from '#core/piece/splash-strips.ts';
import type { System } from '#core/quantity/units.ts';
import { datumMarks, edgeNames, inwards } from './drawing-marks.ts';
import { box, dimension, extensions, FIGURES, inkText, type Put } from './figures.ts';
import { BLACK, GREY, type Ink, type TextStyle } from './ink.ts';
import { arrow, cross, line, type ToPage, trace } from './pen.ts';
import { sayLength } from './say.ts';
import { boxCorners, firstClear, type Spot, type TextBox } from './text-boxes.ts';

export interface Area {
  readonly left: number;
  readonly top: number;
  readonly wide: number;
  readonly high: number;
}

const STROKES: Readonly<Record<EdgeStyle, { readonly width: number; readonly dash: readonly number[] }>> = {
  finished: { width: 1.6, dash: [] },
  wall: { width: 0.6, dash: [] },
  seam: { width: 1, dash: [8, 4] },
  dammed: { width: 1, dash: [3, 2.5] },
  unknown: { width: 0.6, dash: [1, 2] },
};

/** What a splash covers of the top. */
function strip(ink: Ink, corners: readonly Spot[]): void {
  ink.doc
    .polygon(...corners.map(({ x, y }): [number, number] => [x, y]))
    .lineWidth(0.6)
    .dash(5, { space: 3 })
    .strokeColor(BLACK)
    .stroke()
    .undash();
}

/** Draws the piece with its dimensions into the area. */
export function drawPiece(
  ink: Ink,
  area: Area,
  drawing: Drawing,
  sheet: SetOut,
  system: System,
  splashes: readonly SplashStrip[] = [],
): void {
  const at = fitInto(ink, area, drawing, system);
  const taken: Spot[][] = [];
  for (const s of [...drawing.outline, ...drawing.cutOuts.flatMap((c) => c.segments)])
    for (const [a, b] of chords(s)) taken.push([at(a), at(b)]);
  const own = new Map(drawing.dimensions.map((d) => [d, [at(d.line.from), at(d.line.to)]]));
  taken.push(...own.values());
  for (const d of drawing.dimensions) taken.push(...extensions(ink, d, at));
  for (const { corners } of splashes) {
    strip(ink, corners.map(at));
    taken.push(corners.slice(2).map(at));
  }
  for (const s of drawing.outline) stroke(ink, s, at);
  for (const c of drawing.cutOuts) {
    for (const s of c.segments) stroke(ink, s, at);
    cross(ink, at(c.centre), 5);
  }
  const put: Put = (text, places, style, over) => {
    const place = firstClear(
      places,
      taken.filter((each) => each !== over),
    );
    taken.push(boxCorners(place));
    inkText(ink, text, place, style);
  };
  datumMarks(ink, sheet, at);
  for (const d of drawing.dimensions)
    dimension(ink, d, at, system, (text, places, style) => put(text, places, style, own.get(d)));
  for (const c of sheet.corners) {
    if (sheet.corners.length > 40) break;
    const style: TextStyle = { size: 8.5, weight: 600 };
    const spot = at(c.point);
    const [inX, inY] = inwards(c.point, drawing, sheet);
    const places = [11, 16, 22, 30].map(
      (far): TextBox => box(ink, String(c.number), spot.x + inX * far, spot.y - inY * far, style),
    );
    put(String(c.number), places, style);
  }
  for (const l of drawing.leaders) {
    const text = leaderText(l, system);
    const tip = at(l.at);
    const end = at(l.text);
    const far = Math.hypot(end.x - tip.x, end.y - tip.y) || 1;
    const [ux, uy] = [(end.x - tip.x) / far, (end.y - tip.y) / far];
    const half = ink.measure(text, FIGURES) / 2 + 3;
    const places = [20, 30, 42, 56].map((away) =>
      box(ink, text, tip.x + ux * away + (ux < -0.3 ? -half : half), tip.y + uy * away, FIGURES),
    );
    const place = firstClear(places, taken);
    taken.push(boxCorners(place));
    const from = { x: place.x - (ux < -0.3 ? -half : half), y: place.y };
    line(ink, from, tip, 0.5, GREY);
    arrow(ink, tip, from);
    inkText(ink, text, place, FIGURES);
  }
  for (const c of drawing.cutOuts) {
    const style: TextStyle = { size: 8.5, weight: 600 };
    const centre = at(c.centre);
    const [name] = ink.wrap(c.name, 110, style);
    const half = ink.measure(name!, style) / 2;
    put(
      name!,
      [
        box(ink, name!, centre.x, centre.y + 13, style),
        box(ink, name!, centre.x, centre.y - 13, style),
        box(ink, name!, centre.x + half + 12, centre.y, style),
        box(ink, name!, centre.x - half - 12, centre.y, style),
        box(ink, name!, centre.x, centre.y + 24, style),
        box(ink, name!, centre.x, centre.y - 24, style),
      ],
      style,
    );
  }
  edgeNames(ink, drawing, at, put);
}

/** Extent to area, with room at both sides for the notes that reach beyond the extent. */
function fitInto(ink: Ink, area: Area, drawing: Drawing, system: System): ToPage {
  const { extent } = drawing;
  const [wide_m, high_m] = [extent.maxX_m - extent.minX_m, extent.maxY_m - extent.minY_m];
  let sides = 14;
  let at: ToPage = () => ({ x: 0, y: 0 });
  // What a note needs hangs on the scale, and the scale on what it needs: twice settles it.
  for (let round = 0; round < 3; round += 1) {
    const scale = Math.min((area.wide - 2 * sides) / wide_m, (area.high - 28) / high_m);
    const left = area.left + (area.wide - wide_m * scale) / 2;
    const top = area.top + (area.high - high_m * scale) / 2;
    at = (p) => ({ x: left + (p.x_m - extent.minX_m) * scale, y: top + (extent.maxY_m - p.y_m) * scale });
    let beyond = 0;
    for (const l of drawing.leaders) {
      const reach = 26 + ink.measure(leaderText(l, system), FIGURES);
      const tip = at(l.at).x;
      const over = l.text.x_m < l.at.x_m ? area.left - (tip - reach) : tip + reach - area.left - area.wide;
      beyond = Math.max(beyond, over);
    }
    if (beyond <= 0) break;
    sides += beyond + 2;
  }
  return at;
}

function leaderText(l: Leader, system: System): string {
  const corners = l.count > 1 ? ` (${l.count} corners)` : '';
  return `${l.label === 'edge length' ? '' : 'R '}${sayLength(l.value_m, system)}${corners}`;
}

/** One line or arc in the style of its edge. */
function stroke(ink: Ink, s: DrawnSegment, at: ToPage): void {
  const { width, dash } = STROKES[s.style];
  trace(ink, s, at);
  ink.doc.lineWidth(width).lineCap('butt').strokeColor(BLACK);
  if (dash.length === 0) ink.doc.undash();
  else ink.doc.dash(dash[0]!, { space: dash[1]! });
  ink.doc.stroke().undash();
}

function chords(s: Segment): (readonly [Point, Point])[] {
  if (s.bulge === 0) return [[s.from, s.to]];
  const steps = 6;
  return Array.from({ length: steps }, (_, i) => [pointAlong(s, i / steps), pointAlong(s, (i + 1) / steps)]);
}
