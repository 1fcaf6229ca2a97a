/** The dimensioned drawing of a piece in ink: core says what is drawn and where, this fits it on the paper. */
import { circleOf, pointAlong, turning_rad } from '#core/piece/arc.ts';
import type { Dimension, Drawing, DrawnSegment, EdgeStyle, Leader } from '#core/piece/drawing.ts';
import type { Point, Segment } from '#core/piece/piece.ts';
import type { SetOut } from '#core/piece/set-out/set-out.ts';
import type { System } from '#core/quantity/units.ts';
import { BLACK, GREY, type Ink, type TextStyle } from './ink.ts';
import { sayLength } from './say.ts';
import { boxCorners, firstClear, type Spot, type TextBox } from './text-boxes.ts';

export interface Area {
  readonly left: number;
  readonly top: number;
  readonly wide: number;
  readonly high: number;
}

type ToPage = (p: Point) => Spot;

const ARROW = 6;
const FIGURES: TextStyle = { size: 8.5 };

const STROKES: Readonly<Record<EdgeStyle, { readonly width: number; readonly dash: readonly number[] }>> = {
  finished: { width: 1.6, dash: [] },
  wall: { width: 0.6, dash: [] },
  seam: { width: 1, dash: [8, 4] },
  dammed: { width: 1, dash: [3, 2.5] },
  unknown: { width: 0.6, dash: [1, 2] },
};

/** Draws the piece with its dimensions into the area. */
export function drawPiece(ink: Ink, area: Area, drawing: Drawing, sheet: SetOut, system: System): void {
  const at = fitInto(ink, area, drawing, system);
  const taken: Spot[][] = [];
  for (const s of [...drawing.outline, ...drawing.cutOuts.flatMap((c) => c.segments)])
    for (const [a, b] of chords(s)) taken.push([at(a), at(b)]);
  const own = new Map(drawing.dimensions.map((d) => [d, [at(d.line.from), at(d.line.to)]]));
  taken.push(...own.values());
  for (const d of drawing.dimensions) taken.push(...extensions(ink, d, at));
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

/** Finds a clear place and writes there; `over` may be written over: the line a figure breaks. */
type Put = (text: string, places: readonly TextBox[], style: TextStyle, over?: readonly Spot[]) => void;

function dimension(ink: Ink, d: Dimension, at: ToPage, system: System, put: Put): void {
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

function box(ink: Ink, text: string, x: number, y: number, style: TextStyle): TextBox {
  return { x, y, wide: ink.measure(text, style) + 3, high: style.size * 1.05, turn_deg: 0 };
}

/** On white, so that a line it stands on is broken by it. */
function inkText(ink: Ink, text: string, place: TextBox, style: TextStyle): void {
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
function extensions(ink: Ink, d: Dimension, at: ToPage): Spot[][] {
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

export function line(ink: Ink, a: Spot, b: Spot, width: number, colour: string): void {
  ink.doc.moveTo(a.x, a.y).lineTo(b.x, b.y).lineWidth(width).undash().strokeColor(colour).stroke();
}

function arrow(ink: Ink, tip: Spot, from: Spot): void {
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

function cross(ink: Ink, p: Spot, reach: number): void {
  line(ink, { x: p.x - reach, y: p.y }, { x: p.x + reach, y: p.y }, 0.5, GREY);
  line(ink, { x: p.x, y: p.y - reach }, { x: p.x, y: p.y + reach }, 0.5, GREY);
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

function chords(s: Segment): (readonly [Point, Point])[] {
  if (s.bulge === 0) return [[s.from, s.to]];
  const steps = 6;
  return Array.from({ length: steps }, (_, i) => [pointAlong(s, i / steps), pointAlong(s, (i + 1) / steps)]);
}

/** Towards the middle of the two edges' inside, as a unit vector of the piece's axes. */
function inwards(corner: Point, drawing: Drawing, sheet: SetOut): readonly [number, number] {
  const all = sheet.corners;
  const i = all.findIndex((c) => c.point === corner);
  const before = all[(i + all.length - 1) % all.length]!.point;
  const after = all[(i + 1) % all.length]!.point;
  const unit = (p: Point): readonly [number, number] => {
    const size = Math.hypot(p.x_m - corner.x_m, p.y_m - corner.y_m) || 1;
    return [(p.x_m - corner.x_m) / size, (p.y_m - corner.y_m) / size];
  };
  const [a, b] = [unit(before), unit(after)];
  let [x, y] = [a[0] + b[0], a[1] + b[1]];
  const size = Math.hypot(x, y);
  if (size < 1e-3) {
    const { bounds: w } = drawing;
    [x, y] = unit({ x_m: (w.minX_m + w.maxX_m) / 2, y_m: (w.minY_m + w.maxY_m) / 2 });
  } else [x, y] = [x / size, y / size];
  const hollow = all[i]!.insideAngle_rad > Math.PI;
  return hollow ? [-x, -y] : [x, y];
}

/** Small filled triangles on the two datum edges, pointing at them from outside. */
function datumMarks(ink: Ink, sheet: SetOut, at: ToPage): void {
  const { bounds: b, datums } = sheet;
  const { across, up } = datums;
  const middle = {
    x_m: b.minX_m + (b.maxX_m - b.minX_m) * 0.06,
    y_m: b.minY_m + (b.maxY_m - b.minY_m) * 0.1,
  };
  const one = at({ x_m: across.at_m, y_m: up.sign > 0 ? middle.y_m : b.maxY_m - (middle.y_m - b.minY_m) });
  const two = at({ x_m: across.sign > 0 ? middle.x_m : b.maxX_m - (middle.x_m - b.minX_m), y_m: up.at_m });
  const size = 7;
  const sideways = -across.sign * size;
  ink.doc
    .moveTo(one.x, one.y)
    .lineTo(one.x + sideways, one.y - size * 0.6)
    .lineTo(one.x + sideways, one.y + size * 0.6)
    .closePath()
    .fill(BLACK);
  const down = up.sign * size;
  ink.doc
    .moveTo(two.x, two.y)
    .lineTo(two.x - size * 0.6, two.y + down)
    .lineTo(two.x + size * 0.6, two.y + down)
    .closePath()
    .fill(BLACK);
}

/** Names stand inside the piece beside their edge. */
function edgeNames(ink: Ink, drawing: Drawing, at: ToPage, put: Put): void {
  const style: TextStyle = { size: 7.5, colour: GREY };
  const longest = new Map<string, DrawnSegment>();
  const size = (s: DrawnSegment): number => Math.hypot(s.to.x_m - s.from.x_m, s.to.y_m - s.from.y_m);
  for (const s of drawing.outline) {
    const best = longest.get(s.edge);
    if (best === undefined || size(s) > size(best)) longest.set(s.edge, s);
  }
  if (longest.size > 40) return;
  for (const [name, s] of longest) {
    const text = `${name}${s.style === 'finished' ? '' : `, ${s.style}`}`;
    const [a, b] = [at(s.from), at(s.to)];
    const long = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    // The piece lies to the left of its outline; on the page y runs down.
    const [inX, inY] = [(b.y - a.y) / long, -(b.x - a.x) / long];
    let turn = (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI;
    if (turn > 90.1) turn -= 180;
    if (turn < -90.1) turn += 180;
    const places: TextBox[] = [];
    for (const part of [0.5, 0.3, 0.7, 0.2, 0.8, 0.4, 0.6])
      for (const far of [9, 18]) {
        const p = at(pointAlong(s, part));
        places.push({ ...box(ink, text, p.x + inX * far, p.y + inY * far, style), turn_deg: turn });
      }
    put(text, places, style);
  }
}
