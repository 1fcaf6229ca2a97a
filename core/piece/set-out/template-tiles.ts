/**
 * A piece at true scale on sheets of paper that overlap: which part of the outline falls on which sheet, and the marks by
 * which neighbouring sheets are laid on each other.
 */

import { bad, good, type Result } from '#core/quantity/problem.ts';
import { cutOutPath, outlinePath } from '../outline.ts';
import { bounds, pointInside } from '../path.ts';
import type { Bounds, Piece, Point, Segment } from '../piece.ts';
import { PIECE_RULES, type PieceRules } from '../piece-rules.ts';
import { reviewPiece } from '../validate.ts';
import { clipSegment } from './clip.ts';
import { joinedTiles } from './joined-tiles.ts';
import { type Orientation, type PageSize, type Paper, pageSize } from './paper.ts';

export interface TileWishes {
  readonly paper: Paper;
  readonly orientation: Orientation;
  /** Blank border the printer needs on every side, 0.003 to 0.03 m. */
  readonly margin_m: number;
  /** Strip that neighbouring sheets share, 0.005 to 0.05 m. */
  readonly overlap_m: number;
  /** Also the sheets that lie all on the top, for a picture; else only those a line falls on. */
  readonly whole?: boolean;
}

/** A line or arc on a sheet. */
export interface TilePart {
  /** null: the outline; else the place of the cut-out in piece.cutOuts. */
  readonly cutOut: number | null;
  readonly segment: Segment;
}

/** A cross printed at the same place of the piece on two sheets. */
export interface OverlapMark {
  /** In the piece's own axes. */
  readonly at: Point;
  /** Label of the sheet that carries it too. */
  readonly with: string;
  /** The same on both sheets: "A1-A2 a". */
  readonly name: string;
}

export interface Tile {
  /** Row letter from the back, column number from the left: "A1". */
  readonly label: string;
  readonly row: number;
  readonly column: number;
  /** What the sheet shows, in the piece's own axes, at true scale. */
  readonly window: Bounds;
  readonly parts: readonly TilePart[];
  readonly marks: readonly OverlapMark[];
  /** Carries no line, and is there only to hold others in place. */
  readonly bridge: boolean;
}

export interface Tiling {
  readonly paper: Paper;
  readonly orientation: Orientation;
  readonly page: PageSize;
  readonly margin_m: number;
  readonly overlap_m: number;
  /** Left and upper corner of the window on the page, from the page's own left and top. */
  readonly windowLeft_m: number;
  readonly windowTop_m: number;
  readonly rows: number;
  readonly columns: number;
  /** Row by row from the back, each from the left; sheets nothing falls on are left out. */
  readonly tiles: readonly Tile[];
}

/** At the foot of every sheet, under the window: the check bar and its words. */
export const FOOT_M = 0.02;
/** Paper kept round the outline, so that no line runs along the rim of a window. */
export const ROOM_M = 0.004;
/** More sheets than this nobody tapes together; a DXF file serves better. */
export const MOST_TILES = 400;
/** Segments times sheets that are looked at; far beyond any top. */
const MOST_LOOKS = 20_000_000;

/**
 * Cuts a piece into sheets; the grid is centred on the outline. Answers with the findings of `validatePiece`, or that it
 * would take more than MOST_TILES sheets. Throws RangeError when margin_m or overlap_m is outside its range.
 */
export function templateTiles(
  piece: Piece,
  wishes: TileWishes,
  rules: PieceRules = PIECE_RULES,
): Result<Tiling> {
  const { paper, orientation, margin_m, overlap_m, whole = false } = wishes;
  if (!(margin_m >= 0.003 && margin_m <= 0.03))
    throw new RangeError(`templateTiles: margin_m ${margin_m}; allowed: 0.003 to 0.03 m`);
  if (!(overlap_m >= 0.005 && overlap_m <= 0.05))
    throw new RangeError(`templateTiles: overlap_m ${overlap_m}; allowed: 0.005 to 0.05 m`);
  const { problems, warnings } = reviewPiece(piece, rules);
  if (problems.length > 0) return bad(...problems);
  const path = outlinePath(piece.outline);
  const lines: TilePart[] = [
    ...path.map((segment) => ({ cutOut: null, segment })),
    ...piece.cutOuts.flatMap((c, cutOut) => cutOutPath(c).map((segment) => ({ cutOut, segment }))),
  ];
  const page = pageSize(paper, orientation);
  const wide_m = page.width_m - 2 * margin_m;
  const high_m = page.height_m - 2 * margin_m - FOOT_M;
  const box = bounds(path);
  const columns = count(box.maxX_m - box.minX_m, wide_m, overlap_m);
  const rows = count(box.maxY_m - box.minY_m, high_m, overlap_m);
  const left = (box.minX_m + box.maxX_m) / 2 - (columns * (wide_m - overlap_m) + overlap_m) / 2;
  const back = (box.minY_m + box.maxY_m) / 2 + (rows * (high_m - overlap_m) + overlap_m) / 2;
  const windowOf = (row: number, column: number): Bounds => {
    const minX_m = left + column * (wide_m - overlap_m);
    const maxY_m = back - row * (high_m - overlap_m);
    return { minX_m, maxX_m: minX_m + wide_m, minY_m: maxY_m - high_m, maxY_m };
  };
  if (lines.length * rows * columns > MOST_LOOKS) return tooMany(rows * columns);
  const parts: TilePart[][][] = [];
  for (let row = 0; row < rows; row += 1) {
    parts[row] = [];
    for (let column = 0; column < columns; column += 1) {
      const window = windowOf(row, column);
      parts[row]![column] = lines.flatMap(({ cutOut, segment }) =>
        clipSegment(segment, window).map((clipped) => ({ cutOut, segment: clipped })),
      );
    }
  }
  const holes = piece.cutOuts.map(cutOutPath);
  // A window that no line crosses lies all on the top or all off it.
  const onTop = (row: number, column: number): boolean => {
    const { minX_m, maxX_m, minY_m, maxY_m } = windowOf(row, column);
    const middle = { x_m: (minX_m + maxX_m) / 2, y_m: (minY_m + maxY_m) / 2 };
    return whole && pointInside(path, middle) && !holes.some((hole) => pointInside(hole, middle));
  };
  const used = parts.map((cells, row) => cells.map((cell, column) => cell.length > 0 || onTop(row, column)));
  const kept = joinedTiles(used);
  const total = kept.reduce((sum, cells) => sum + cells.filter(Boolean).length, 0);
  if (total > MOST_TILES) return tooMany(total);
  const tiles: Tile[] = [];
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      if (!kept[row]![column]) continue;
      const own = parts[row]![column]!;
      tiles.push({
        label: tileLabel(row, column),
        row,
        column,
        window: windowOf(row, column),
        parts: own,
        marks: marksOf(row, column, kept, windowOf),
        bridge: used[row]![column] === false,
      });
    }
  return good(
    {
      paper,
      orientation,
      page,
      margin_m,
      overlap_m,
      windowLeft_m: margin_m,
      windowTop_m: margin_m,
      rows,
      columns,
      tiles,
    },
    warnings,
  );
}

/** "A1" is the sheet at the back left; rows after Z go on with AA. */
export function tileLabel(row: number, column: number): string {
  let letters = '';
  for (let n = row + 1; n > 0; n = Math.floor((n - 1) / 26))
    letters = String.fromCharCode(65 + ((n - 1) % 26)) + letters;
  return `${letters}${column + 1}`;
}

function count(size_m: number, window_m: number, overlap_m: number): number {
  return Math.max(1, Math.ceil((size_m + 2 * ROOM_M - overlap_m) / (window_m - overlap_m) - 1e-9));
}

function tooMany(sheets: number): Result<never> {
  return bad({
    path: 'outline',
    code: 'template.sheets',
    message: `A true-scale template of this piece would take ${sheets} sheets.`,
    read: `${sheets} sheets`,
    allowed: `up to ${MOST_TILES} sheets`,
  });
}

/** Two crosses in each strip a sheet shares with a kept neighbour, a sixth of the strip from its ends. */
function marksOf(
  row: number,
  column: number,
  kept: readonly (readonly boolean[])[],
  windowOf: (row: number, column: number) => Bounds,
): OverlapMark[] {
  const marks: OverlapMark[] = [];
  const own = tileLabel(row, column);
  for (const [dr, dc] of [
    [-1, 0],
    [0, -1],
    [0, 1],
    [1, 0],
  ] as const) {
    if (kept[row + dr]?.[column + dc] !== true) continue;
    const other = tileLabel(row + dr, column + dc);
    const pair = dr + dc < 0 ? `${other}-${own}` : `${own}-${other}`;
    const a = windowOf(row, column);
    const b = windowOf(row + dr, column + dc);
    const strip = {
      minX_m: Math.max(a.minX_m, b.minX_m),
      maxX_m: Math.min(a.maxX_m, b.maxX_m),
      minY_m: Math.max(a.minY_m, b.minY_m),
      maxY_m: Math.min(a.maxY_m, b.maxY_m),
    };
    for (const [name, part] of [
      ['a', 1 / 6],
      ['b', 5 / 6],
    ] as const)
      marks.push({
        at: {
          x_m: strip.minX_m + (strip.maxX_m - strip.minX_m) * (dr === 0 ? 0.5 : part),
          y_m: strip.minY_m + (strip.maxY_m - strip.minY_m) * (dr === 0 ? part : 0.5),
        },
        with: other,
        name: `${pair} ${name}`,
      });
  }
  return marks;
}
