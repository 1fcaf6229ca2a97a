/**
 * Moving, adding and taking away corners of a piece: pure functions from one piece document to the next. What cannot be done (no
 * polygon, no such corner, a corner whose place cannot be read) leaves the document as it is, the same object.
 */
import type { EdgeDocument, OutlineDocument, PieceDocument } from '#core/job/document.ts';
import { Notes } from '#core/job/notes.ts';
import { readOutline } from '#core/job/read-outline.ts';
import { ellCorners } from '#core/piece/corners.ts';
import type { Point } from '#core/piece/piece.ts';
import { readLength_m } from '#core/quantity/read.ts';
import { edgeName, renamedEdges, withoutEdge, withSplitEdge } from './edge-names.ts';
import { type Grid, lengthWords, snapped_m } from './grid.ts';

type Polygon = Extract<OutlineDocument, { shape: 'polygon' }>;
export type CornerDocument = Polygon['corners'][number];

/** Coordinates as typed reach this far either way. */
const FAR_M = 10;
export const FEWEST_CORNERS = 3;
const MOST_CORNERS = 200;

export function polygonOf(piece: PieceDocument): Polygon | null {
  return piece.outline?.shape === 'polygon' ? piece.outline : null;
}

/** Where a corner stands; null where its texts cannot be read. */
export function cornerPlace(corner: CornerDocument): Point | null {
  const x = readLength_m(corner.x, { min: -FAR_M, max: FAR_M });
  const y = readLength_m(corner.y, { min: -FAR_M, max: FAR_M });
  return x.ok && y.ok ? { x_m: x.value, y_m: y.value } : null;
}

/** Every corner's place; null where there is no polygon or one of them cannot be read. */
export function cornerPlaces(piece: PieceDocument): readonly Point[] | null {
  const places = polygonOf(piece)?.corners.map(cornerPlace) ?? [];
  const known = places.filter((place) => place !== null);
  return known.length === places.length && known.length > 0 ? known : null;
}

function withCorners(piece: PieceDocument, corners: CornerDocument[]): PieceDocument {
  return { ...piece, outline: { shape: 'polygon', corners } };
}

function within(value_m: number): number {
  return Math.min(FAR_M, Math.max(-FAR_M, value_m));
}

/** The corner set on the grid line nearest to a place. A coordinate that stays keeps the text it was typed as. */
export function withCornerAt(piece: PieceDocument, index: number, to: Point, grid: Grid): PieceDocument {
  const polygon = polygonOf(piece);
  const corner = polygon?.corners[index];
  const from = corner === undefined ? null : cornerPlace(corner);
  if (polygon === null || corner === undefined || from === null) return piece;
  const text = (typed: string, was_m: number, is_m: number): string => {
    const on_m = snapped_m(within(is_m), grid);
    return Math.abs(is_m - was_m) < 1e-9 || Math.abs(on_m - was_m) < 1e-9
      ? typed
      : lengthWords(on_m, grid.system);
  };
  const moved = { ...corner, x: text(corner.x, from.x_m, to.x_m), y: text(corner.y, from.y_m, to.y_m) };
  if (moved.x === corner.x && moved.y === corner.y) return piece;
  return withCorners(
    piece,
    polygon.corners.map((other, i) => (i === index ? moved : other)),
  );
}

/** A corner in the middle of a side, on its chord; the edge there becomes two alike. */
export function withCornerOn(piece: PieceDocument, side: number, grid: Grid): PieceDocument {
  const polygon = polygonOf(piece);
  const places = cornerPlaces(piece);
  if (polygon === null || places === null || places.length >= MOST_CORNERS) return piece;
  const [a, b] = [places[side], places[(side + 1) % places.length]];
  if (a === undefined || b === undefined) return piece;
  const middle = (from_m: number, to_m: number): string =>
    lengthWords(snapped_m((from_m + to_m) / 2, grid), grid.system);
  const corner = { x: middle(a.x_m, b.x_m), y: middle(a.y_m, b.y_m), radius: '', bow: '' };
  const corners = polygon.corners.map((other, i) => (i === side ? { ...other, bow: '' } : other));
  return {
    ...withCorners(piece, corners.toSpliced(side + 1, 0, corner)),
    edges: withSplitEdge(piece.edges, side),
  };
}

/** Without a corner; never fewer than three. */
export function withoutCorner(piece: PieceDocument, index: number): PieceDocument {
  const polygon = polygonOf(piece);
  if (polygon === null || polygon.corners.length <= FEWEST_CORNERS || polygon.corners[index] === undefined)
    return piece;
  const before = (index + polygon.corners.length - 1) % polygon.corners.length;
  const corners = polygon.corners.map((other, i) => (i === before ? { ...other, bow: '' } : other));
  return { ...withCorners(piece, corners.toSpliced(index, 1)), edges: withoutEdge(piece.edges, index) };
}

/** One text of a corner, as typed. */
export function withCornerText(
  piece: PieceDocument,
  index: number,
  key: keyof CornerDocument,
  text: string,
): PieceDocument {
  const polygon = polygonOf(piece);
  if (polygon?.corners[index] === undefined || polygon.corners[index][key] === text) return piece;
  return withCorners(
    piece,
    polygon.corners.map((other, i) => (i === index ? { ...other, [key]: text } : other)),
  );
}

/** Can this outline be turned into corners one can move? */
export function canTurnIntoCorners(outline: OutlineDocument | null): boolean {
  return outline?.shape === 'rectangle' || outline?.shape === 'ell';
}

/**
 * A rectangle or an L as the polygon it is, same place, same edges under their new names ("front" is "edge 1"). Sizes of a rectangle
 * keep the text they were typed as. Unchanged where a size is missing or cannot be read.
 */
export function withOwnCorners(piece: PieceDocument, grid: Grid): PieceDocument {
  const { outline } = piece;
  const read = outline === null ? null : readOutline(outline, new Notes());
  if (outline === null || read === null) return piece;
  const zero = grid.system === 'us' ? '0 in' : '0 mm';
  if (outline.shape === 'rectangle' && read.shape === 'rectangle') {
    const corner = (x: string, y: string) => ({ x, y, radius: outline.cornerRadius, bow: '' });
    const { length, width } = outline;
    const corners = [corner(zero, zero), corner(length, zero), corner(length, width), corner(zero, width)];
    const names = new Map(['front', 'right', 'back', 'left'].map((name, i) => [name, edgeName(i)]));
    return { ...withCorners(piece, corners), edges: renamedEdges(piece.edges, names) };
  }
  if (outline.shape === 'ell' && read.shape === 'ell') {
    const places = ellCorners(read);
    const inside = outline.side === 'left' ? 0 : 1;
    const corners = places.map(({ x_m, y_m }, i) => ({
      x: lengthWords(x_m, grid.system),
      y: lengthWords(y_m, grid.system),
      radius: i === inside ? outline.insideRadius : outline.cornerRadius,
      bow: '',
    }));
    const names = new Map(places.map(({ edge }, i) => [edge, edgeName(i)]));
    // The side it looks to no longer tells the return from the rest.
    const edges = piece.edges.map((edge): EdgeDocument => {
      const name = edge.edge;
      return name === 'return front' || name === 'return end' ? { ...edge, countsAs: name } : edge;
    });
    return { ...withCorners(piece, corners), edges: renamedEdges(edges, names) };
  }
  return piece;
}
