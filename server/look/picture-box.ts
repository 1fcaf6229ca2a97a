/** The picture of a look on a page, its outlines and cut-outs over it, true to one scale. */
import type { Look } from '#core/look/look.ts';
import { type Drawing, onDrawing } from '#core/look/render/drawing.ts';
import { atPixel } from '#core/look/render/grid.ts';
import { sceneOf } from '#core/look/render/scene.ts';
import { cutOutPath, outlinePath } from '#core/piece/outline.ts';
import type { CutOut, Point } from '#core/piece/piece.ts';
import { BLACK, GREY, type Ink, POINTS_PER_M } from '../set-out/ink.ts';
import { line, type ToPage, trace } from '../set-out/pen.ts';
import { sayLength } from '../set-out/say.ts';
import type { Spot } from '../set-out/text-boxes.ts';
import type { LookSheet } from './look-sheet.ts';
import { paintScene } from './paint.ts';
import { png } from './png.ts';

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly wide: number;
  readonly high: number;
}

/** A drawing in a box of a page. */
export interface Laid {
  readonly box: Box;
  /** Points a metre. */
  readonly scale: number;
  /** From the plane of the drawing to the page. */
  readonly at: (x_m: number, y_m: number) => Spot;
}

/** In the middle of the box, as large as it goes, never larger than life. */
export function lay(drawing: Drawing, box: Box): Laid {
  const scale = Math.min(box.wide / drawing.width_m, box.high / drawing.depth_m, POINTS_PER_M);
  const left = box.left + (box.wide - drawing.width_m * scale) / 2;
  const top = box.top + (box.high - drawing.depth_m * scale) / 2;
  const back_m = drawing.front_m + drawing.depth_m;
  return {
    box,
    scale,
    at: (x_m, y_m) => ({ x: left + (x_m - drawing.left_m) * scale, y: top + (back_m - y_m) * scale }),
  };
}

/** Dots an inch of a picture that is looked at from a hand's length. */
const DOTS = 150;

/** @param pale how much of the picture gives way to the paper, 0 to 1: marks are drawn over a pale one. */
export async function drawPicture(
  ink: Ink,
  laid: Laid,
  drawing: Drawing,
  look: Look,
  { gloss = 0, pale = 0 }: { readonly gloss?: number; readonly pale?: number } = {},
): Promise<void> {
  const pixel_m = 72 / DOTS / laid.scale;
  const sheet = atPixel(drawing, pixel_m);
  const { columns, rows } = sheet.window;
  const pixels = await paintScene(sceneOf({ look, drawing, sheet, gloss }));
  const { x, y } = laid.at(sheet.grid.left_m, sheet.grid.back_m);
  ink.doc.save().opacity(1 - pale);
  ink.doc.image(Buffer.from(png(pixels, columns, rows, { onWhite: true })), x, y, {
    width: columns * pixel_m * laid.scale,
    height: rows * pixel_m * laid.scale,
  });
  ink.doc.restore();
}

/** Rims of tops and faces, and what is let into the tops: bowls with their waste, taps with their spout. */
export function drawOutlines(ink: Ink, laid: Laid, drawing: Drawing, sheet: Pick<LookSheet, 'pieces'>): void {
  let tops = 0;
  for (const placed of drawing.panels) {
    const { panel } = placed;
    const at: ToPage = ({ x_m, y_m }: Point) => laid.at(...onDrawing(placed, x_m, y_m));
    if (panel.kind === 'top' || panel.kind === 'piece') {
      const piece = sheet.pieces[tops++]?.piece;
      if (piece === undefined) continue;
      for (const segment of outlinePath(piece.outline)) stroke(ink, () => trace(ink, segment, at), 0.8);
      for (const cutOut of piece.cutOuts) drawCutOut(ink, laid, cutOut, piece.cutOuts, at);
    } else {
      const { left_m, front_m, width_m, depth_m } = panel;
      const corners = [
        [left_m, front_m],
        [left_m + width_m, front_m],
        [left_m + width_m, front_m + depth_m],
        [left_m, front_m + depth_m],
      ].map(([x_m, y_m]) => at({ x_m: x_m!, y_m: y_m! }));
      ink.doc.polygon(...corners.map(({ x, y }): [number, number] => [x, y]));
      ink.doc.lineWidth(0.4).undash().strokeColor(GREY).stroke();
    }
  }
}

function stroke(ink: Ink, path: () => void, width: number): void {
  path();
  ink.doc.lineWidth(width).lineCap('round').undash().strokeColor(BLACK).stroke();
}

/** A hole is a bowl from this width on, a tap hole up to that one; what lies between is left open. */
const BOWL_M = 0.2;
const TAP_M = 0.06;

function drawCutOut(ink: Ink, laid: Laid, cutOut: CutOut, all: readonly CutOut[], at: ToPage): void {
  const { doc } = ink;
  const width_m = widthOf(cutOut);
  const centre = at(cutOut.centre);
  for (const segment of cutOutPath(cutOut)) stroke(ink, () => trace(ink, segment, at), 0.6);
  if (width_m >= BOWL_M) {
    const toward = (share: number): ToPage => {
      const { x_m, y_m } = cutOut.centre;
      return (p) => at({ x_m: x_m + share * (p.x_m - x_m), y_m: y_m + share * (p.y_m - y_m) });
    };
    for (const segment of cutOutPath(cutOut)) {
      trace(ink, segment, toward(0.92));
      doc.lineWidth(0.4).strokeColor(GREY).stroke();
    }
    // The waste of a bowl is 45 mm across (common practice, no source).
    doc
      .circle(centre.x, centre.y, 0.0225 * laid.scale)
      .lineWidth(0.5)
      .strokeColor(GREY)
      .stroke();
  } else if (width_m <= TAP_M) {
    const bowls = all.filter((other) => widthOf(other) >= BOWL_M);
    const far = (other: CutOut) =>
      Math.hypot(other.centre.x_m - cutOut.centre.x_m, other.centre.y_m - cutOut.centre.y_m);
    const bowl = bowls.sort((a, b) => far(a) - far(b))[0];
    doc
      .circle(centre.x, centre.y, 0.026 * laid.scale)
      .lineWidth(0.6)
      .fillAndStroke('#ffffff', BLACK);
    if (bowl !== undefined) {
      const share = Math.min(1, 0.14 / far(bowl));
      const tip = at({
        x_m: cutOut.centre.x_m + share * (bowl.centre.x_m - cutOut.centre.x_m),
        y_m: cutOut.centre.y_m + share * (bowl.centre.y_m - cutOut.centre.y_m),
      });
      doc.moveTo(centre.x, centre.y).lineTo(tip.x, tip.y);
      doc
        .lineWidth(Math.max(1, 0.018 * laid.scale))
        .lineCap('round')
        .strokeColor(GREY)
        .stroke();
    }
    doc.circle(centre.x, centre.y, 0.012 * laid.scale).fill(GREY);
  }
  const style = { size: 7.5, colour: GREY, align: 'middle' } as const;
  const below = at({ x_m: cutOut.centre.x_m, y_m: cutOut.centre.y_m - width_m / 4 });
  if (width_m >= BOWL_M) ink.write(cutOut.name, centre.x, below.y, style);
}

function widthOf(cutOut: CutOut): number {
  if (cutOut.shape === 'round') return cutOut.diameter_m;
  return 'length_m' in cutOut ? Math.min(cutOut.length_m, cutOut.width_m) : Number.POSITIVE_INFINITY;
}

/** A bar of a round length with its ends named, about a fifth of the box. Answers how wide it is. */
export function scaleBar(ink: Ink, laid: Laid, x: number, y: number, system: LookSheet['system']): number {
  const unit_m = system === 'us' ? 0.0254 : 0.001;
  const rounds = system === 'us' ? [1, 2, 3, 6, 12, 24, 36, 48] : [10, 20, 50, 100, 200, 500, 1000];
  const wanted = laid.box.wide / 5 / laid.scale / unit_m;
  const length = unit_m * (rounds.filter((each) => each <= wanted).at(-1) ?? rounds[0]!);
  const wide = length * laid.scale;
  line(ink, { x, y }, { x: x + wide, y }, 1.6, BLACK);
  for (const end of [x, x + wide / 2, x + wide])
    line(ink, { x: end, y: y - 3 }, { x: end, y: y + 3 }, 0.6, BLACK);
  ink.write('0', x, y - 5, { size: 7.5, align: 'middle' });
  ink.write(sayLength(length, system), x + wide, y - 5, { size: 7.5, align: 'middle' });
  return wide;
}
