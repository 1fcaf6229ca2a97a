/** One sheet of a true-scale template. */
import type { CutOut, Point } from '#core/piece/piece.ts';
import { within } from '#core/piece/set-out/clip.ts';
import type { Tile, Tiling } from '#core/piece/set-out/template-tiles.ts';
import { CHECK_BAR_M, checkBar } from './check-bar.ts';
import { BLACK, GREY, type Ink, POINTS_PER_M } from './ink.ts';
import { line, trace } from './pen.ts';
import { type SheetWords, titleOf } from './sheet-head.ts';
import { boxCorners, firstClear, type Spot, type TextBox } from './text-boxes.ts';

/** The window of a sheet on its page, points. */
export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly wide: number;
  readonly high: number;
}

/** @param under draws what lies beneath the lines; without it the sheet's label stands there, large and pale. */
export function tilePage(
  ink: Ink,
  cutOuts: readonly CutOut[],
  tiling: Tiling,
  tile: Tile,
  index: number,
  words: SheetWords,
  under?: (window: Frame) => void,
): void {
  const { doc } = ink;
  const { window } = tile;
  const left = tiling.windowLeft_m * POINTS_PER_M;
  const top = tiling.windowTop_m * POINTS_PER_M;
  const at = (p: Point): Spot => ({
    x: left + (p.x_m - window.minX_m) * POINTS_PER_M,
    y: top + (window.maxY_m - p.y_m) * POINTS_PER_M,
  });
  const wide = (window.maxX_m - window.minX_m) * POINTS_PER_M;
  const high = (window.maxY_m - window.minY_m) * POINTS_PER_M;
  doc.save();
  doc.rect(left, top, wide, high).clip();
  if (under !== undefined) under({ left, top, wide, high });
  else
    ink.write(tile.label, left + wide / 2, top + high / 2 + 20, {
      size: 64,
      weight: 600,
      colour: '#ececec',
      align: 'middle',
    });
  neighbourFrames(ink, tiling, tile, at);
  // Crosses with their names above them; and the window's rim.
  const taken: Spot[][] = tile.marks.map((mark) => {
    const { x, y } = at(mark.at);
    return boxCorners({ x, y: y - 4, wide: 40, high: 28, turn_deg: 0 });
  });
  for (const [a, b] of sides(left, top, wide, high)) taken.push([a, b]);
  for (const cutOut of cutOuts) {
    const c = at(cutOut.centre);
    for (const [dx, dy] of [
      [28, 0],
      [0, 28],
    ] as const)
      line(ink, { x: c.x - dx, y: c.y - dy }, { x: c.x + dx, y: c.y + dy }, 0.4, GREY);
    if (within(cutOut.centre, window)) putName(ink, cutOut.name, c, taken);
  }
  for (const { segment } of tile.parts) {
    trace(ink, segment, at);
    doc.lineWidth(0.7).undash().lineCap('butt').strokeColor(BLACK).stroke();
  }
  partNames(ink, tile, at, taken);
  for (const mark of tile.marks) {
    const p = at(mark.at);
    // On a picture the crosses stand on a patch of paper.
    if (under !== undefined) doc.rect(p.x - 24, p.y - 17, 48, 28).fill('#ffffff');
    line(ink, { x: p.x - 8, y: p.y }, { x: p.x + 8, y: p.y }, 0.5, GREY);
    line(ink, { x: p.x, y: p.y - 8 }, { x: p.x, y: p.y + 8 }, 0.5, GREY);
    doc.circle(p.x, p.y, 4).lineWidth(0.5).strokeColor(GREY).stroke();
    ink.write(mark.name, p.x, p.y - 10, { size: 6, colour: GREY, align: 'middle' });
  }
  doc.restore();
  doc.rect(left, top, wide, high).lineWidth(0.4).undash().strokeColor(GREY).stroke();
  foot(ink, left, top + high, wide, tile, tiling, index, words);
}

/** Where the frames of the neighbours lie when the crosses meet. */
function neighbourFrames(ink: Ink, tiling: Tiling, tile: Tile, at: (p: Point) => Spot): void {
  const { window } = tile;
  for (const other of tiling.tiles) {
    const apart = Math.abs(other.row - tile.row) + Math.abs(other.column - tile.column);
    if (apart !== 1) continue;
    const w = other.window;
    const sideways = other.row === tile.row;
    const x_m = other.column > tile.column ? w.minX_m : w.maxX_m;
    const y_m = other.row > tile.row ? w.maxY_m : w.minY_m;
    const [a, b] = sideways
      ? [at({ x_m, y_m: window.minY_m }), at({ x_m, y_m: window.maxY_m })]
      : [at({ x_m: window.minX_m, y_m }), at({ x_m: window.maxX_m, y_m })];
    ink.doc
      .moveTo(a.x, a.y)
      .lineTo(b.x, b.y)
      .lineWidth(0.3)
      .dash(2, { space: 3 })
      .strokeColor(GREY)
      .stroke()
      .undash();
  }
}

/** A cut-out's name beside its centre, clear of the crosses. */
function putName(ink: Ink, name: string, centre: Spot, taken: Spot[][]): void {
  const style = { size: 9, colour: GREY } as const;
  const wide = ink.measure(name, style) + 4;
  const places = [
    [1, -1],
    [-1, -1],
    [1, 1],
    [-1, 1],
    [1, -3],
    [-1, -3],
    [1, 3],
    [-1, 3],
  ].map(
    ([x, y]): TextBox => ({
      x: centre.x + x! * (wide / 2 + 4),
      y: centre.y + y! * 10,
      wide,
      high: 10,
      turn_deg: 0,
    }),
  );
  const place = firstClear(places, taken);
  taken.push(boxCorners(place));
  ink.write(name, place.x, place.y + 3, { ...style, align: 'middle' });
}

function sides(left: number, top: number, wide: number, high: number): (readonly [Spot, Spot])[] {
  const [a, b] = [
    { x: left, y: top },
    { x: left + wide, y: top + high },
  ];
  const [c, d] = [
    { x: b.x, y: a.y },
    { x: a.x, y: b.y },
  ];
  return [
    [a, c],
    [c, b],
    [b, d],
    [d, a],
  ];
}

/** The name of each edge once a sheet, inside the piece beside its longest part there. */
function partNames(ink: Ink, tile: Tile, at: (p: Point) => Spot, taken: Spot[][]): void {
  const longest = new Map<string, { a: Spot; b: Spot; long: number }>();
  for (const { cutOut, segment } of tile.parts) {
    if (cutOut !== null) continue;
    const [a, b] = [at(segment.from), at(segment.to)];
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    if (long > (longest.get(segment.edge)?.long ?? 0)) longest.set(segment.edge, { a, b, long });
  }
  for (const [name, { a, b, long }] of longest) {
    const style = { size: 8, colour: GREY } as const;
    if (long < ink.measure(name, style) + 10) continue;
    let turn = (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI;
    const [inX, inY] = [(b.y - a.y) / long, -(b.x - a.x) / long];
    if (turn > 90.1) turn -= 180;
    if (turn < -90.1) turn += 180;
    const places = [0.42, 0.6, 0.3, 0.75, 0.2].map(
      (part): TextBox => ({
        x: a.x + (b.x - a.x) * part + inX * 8,
        y: a.y + (b.y - a.y) * part + inY * 8,
        wide: ink.measure(name, style) + 4,
        high: 9,
        turn_deg: turn,
      }),
    );
    const place = firstClear(places, taken);
    taken.push(boxCorners(place));
    const drop = style.size / 3;
    const lean = (turn * Math.PI) / 180;
    ink.write(name, place.x - Math.sin(lean) * drop, place.y + Math.cos(lean) * drop, {
      ...style,
      align: 'middle',
      turn_deg: turn,
    });
  }
}

function foot(
  ink: Ink,
  left: number,
  y: number,
  wide: number,
  tile: Tile,
  tiling: Tiling,
  index: number,
  words: SheetWords,
): void {
  checkBar(ink, left, y + 14);
  const x = left + CHECK_BAR_M * POINTS_PER_M + 14;
  const room = wide - CHECK_BAR_M * POINTS_PER_M - 14 - 62;
  const rowLetters = tile.label.replace(/\d+$/, '');
  const lines = [
    `Sheet ${index + 1} of ${tiling.tiles.length}: row ${rowLetters}, column ${tile.column + 1}${tile.bridge ? ' (holds others in place)' : ''}`,
    `${titleOf(words)}`,
    `Version ${words.revision.version}, ${words.revision.hash}, ${words.at.slice(0, 10)}`,
  ];
  lines.forEach((text, i) => {
    ink.write(ink.wrap(text, room, { size: 7.5 })[0]!, x, y + 14 + i * 10, { size: 7.5 });
  });
  ink.write(tile.label, left + wide, y + 30, { size: 22, weight: 600, align: 'right' });
}
