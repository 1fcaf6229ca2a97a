/** Marks and names on a drawing: corners, datum edges, edges. */
import { pointAlong } from '#core/piece/arc.ts';
import type { Drawing, DrawnSegment } from '#core/piece/drawing.ts';
import type { Point } from '#core/piece/piece.ts';
import type { SetOut } from '#core/piece/set-out/set-out.ts';
import { box, type Put } from './figures.ts';
import { BLACK, GREY, type Ink, type TextStyle } from './ink.ts';
import type { ToPage } from './pen.ts';
import type { TextBox } from './text-boxes.ts';

/** Towards the middle of the two edges' inside, as a unit vector of the piece's axes. */
export function inwards(corner: Point, drawing: Drawing, sheet: SetOut): readonly [number, number] {
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
export function datumMarks(ink: Ink, sheet: SetOut, at: ToPage): void {
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
export function edgeNames(ink: Ink, drawing: Drawing, at: ToPage, put: Put): void {
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
