/** One move of what is picked on the drawing, by pointer or by arrow key; refused where the outline could not be drawn any more. */
import type { PieceDocument } from '#core/job/document.ts';
import type { Point } from '#core/piece/piece.ts';
import type { System } from '#core/quantity/units.ts';
import { cornerPlace, polygonOf, withCornerAt } from './corners.ts';
import { bigStep_m, type Grid, lengthWords, step_m } from './grid.ts';
import { cutOutPlace, withCutOutAt } from './holes.ts';
import { lookAt } from './look.ts';

export type Pick =
  | { readonly kind: 'corner'; readonly index: number }
  | { readonly kind: 'cut-out'; readonly index: number }
  | { readonly kind: 'edge'; readonly name: string };

export type Movable = Exclude<Pick, { kind: 'edge' }>;

/** Where it stands; null where that cannot be read. */
export function placeOf(piece: PieceDocument, pick: Movable): Point | null {
  if (pick.kind === 'cut-out') {
    const cutOut = piece.cutOuts[pick.index];
    return cutOut === undefined ? null : cutOutPlace(cutOut);
  }
  const corner = polygonOf(piece)?.corners[pick.index];
  return corner === undefined ? null : cornerPlace(corner);
}

/** The piece with it moved to a place, or the same object where it did not move or may not. */
export function movedTo(piece: PieceDocument, pick: Movable, to: Point, grid: Grid): PieceDocument {
  const moved =
    pick.kind === 'corner'
      ? withCornerAt(piece, pick.index, to, grid)
      : withCutOutAt(piece, pick.index, to, grid);
  if (moved === piece || lookAt(moved, grid.system) === null) return piece;
  return moved;
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** The piece after an arrow key, null for another key. A big step is 1 in or 10 mm. Up is toward the back. */
export function movedByKey(
  piece: PieceDocument,
  pick: Movable,
  key: string,
  grid: Grid,
  big: boolean,
): PieceDocument | null {
  const way = ARROWS[key];
  const from = placeOf(piece, pick);
  if (way === undefined || from === null) return null;
  const by = big ? bigStep_m(grid.system) : step_m(grid);
  return movedTo(piece, pick, { x_m: from.x_m + way[0] * by, y_m: from.y_m + way[1] * by }, grid);
}

/** "Corner 2" or "Cut-out sink". */
export function nameOf(piece: PieceDocument, pick: Pick): string {
  if (pick.kind === 'edge') return `Edge ${pick.name}`;
  if (pick.kind === 'corner') return `Corner ${pick.index + 1}`;
  return piece.cutOuts[pick.index]?.name || `Cut-out ${pick.index + 1}`;
}

/** "12 1/2 in from the left, 10 in from the front". */
export function placeWords(place: Point, system: System): string {
  return `${lengthWords(place.x_m, system)} from the left, ${lengthWords(place.y_m, system)} from the front`;
}
