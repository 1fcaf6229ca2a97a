/** Typing how long a side is, from corner to corner as a tape reads it before corners are rounded. */
import type { OutlineDocument, PieceDocument } from '#core/job/document.ts';
import { Notes } from '#core/job/notes.ts';
import { readOutline } from '#core/job/read-outline.ts';
import type { Point } from '#core/piece/piece.ts';
import { sideLength_m as lengthOf } from '#core/piece/side-length.ts';
import { readLength_m } from '#core/quantity/read.ts';
import type { System } from '#core/quantity/units.ts';
import { cornerPlaces, withCornerAt } from './corners.ts';
import { sideOf } from './edge-names.ts';
import { lengthWords } from './grid.ts';

/** Sides this near to parallel are moved together, radians. */
const PARALLEL_RAD = 1e-3;

/** How long a side is from corner to corner; null where it has no such length or cannot be read. */
export function sideLength_m(piece: PieceDocument, name: string): number | null {
  const places = cornerPlaces(piece);
  if (places !== null) return lengthOf({ shape: 'polygon', corners: places }, name);
  const read = piece.outline === null ? null : readOutline(piece.outline, new Notes());
  return read === null ? null : lengthOf(read, name);
}

/**
 * The piece with one side as long as typed. Of a polygon the corner at the far end moves along the side, and the next one with it
 * where the side after that runs parallel (a rectangle stays one). Of a rectangle or an L the size that makes the side is changed.
 * A text that is no length, and a side that has none, change nothing.
 */
export function withSideLength(
  piece: PieceDocument,
  name: string,
  text: string,
  system: System,
): PieceDocument {
  const read = readLength_m(text, { min: 0.01, max: 10 });
  const { outline } = piece;
  if (!read.ok || outline === null) return piece;
  if (outline.shape === 'polygon') return withPolygonSide(piece, name, read.value, system);
  const made = madeOf(outline, name, text, read.value, system);
  return made === null ? piece : { ...piece, outline: made };
}

function withPolygonSide(
  piece: PieceDocument,
  name: string,
  length_m: number,
  system: System,
): PieceDocument {
  const places = cornerPlaces(piece);
  const side = sideOf(name);
  if (places === null || side === null || side >= places.length) return piece;
  const n = places.length;
  const at = (i: number): Point => places[(side + i) % n]!;
  const was_m = Math.hypot(at(1).x_m - at(0).x_m, at(1).y_m - at(0).y_m);
  if (was_m === 0) return piece;
  const by = {
    x_m: ((at(1).x_m - at(0).x_m) / was_m) * (length_m - was_m),
    y_m: ((at(1).y_m - at(0).y_m) / was_m) * (length_m - was_m),
  };
  // Typed lengths are kept as they are: the fine grid rounds to a hundredth of a millimetre only in the text.
  const move = (to: PieceDocument, i: number): PieceDocument => {
    const index = (side + i) % n;
    const place = { x_m: at(i).x_m + by.x_m, y_m: at(i).y_m + by.y_m };
    return withExactCorner(to, index, place, system);
  };
  const carried = n > 3 && parallel(at(0), at(1), at(2), at(3));
  const moved = move(piece, 1);
  return carried ? move(moved, 2) : moved;
}

function withExactCorner(piece: PieceDocument, index: number, to: Point, system: System): PieceDocument {
  return withCornerAt(piece, index, to, { system, snaps: false, exact: true });
}

function parallel(a: Point, b: Point, c: Point, d: Point): boolean {
  const [ux, uy, wx, wy] = [b.x_m - a.x_m, b.y_m - a.y_m, d.x_m - c.x_m, d.y_m - c.y_m];
  const sine = (ux * wy - uy * wx) / (Math.hypot(ux, uy) * Math.hypot(wx, wy));
  return Math.abs(sine) < PARALLEL_RAD;
}

function madeOf(
  outline: OutlineDocument,
  name: string,
  text: string,
  length_m: number,
  system: System,
): OutlineDocument | null {
  if (outline.shape === 'rectangle')
    return name === 'front' || name === 'back' ? { ...outline, length: text } : { ...outline, width: text };
  if (outline.shape !== 'ell') return null;
  const read = readOutline(outline, new Notes());
  if (read?.shape !== 'ell') return null;
  switch (name) {
    case 'back':
      return { ...outline, length: text };
    case 'return end':
      return { ...outline, returnWidth: text };
    case 'front':
      return { ...outline, length: lengthWords(length_m + read.returnWidth_m, system) };
    case 'return front':
      return { ...outline, returnLength: lengthWords(length_m + read.width_m, system) };
    default:
      return name === outline.side ? { ...outline, returnLength: text } : { ...outline, width: text };
  }
}
