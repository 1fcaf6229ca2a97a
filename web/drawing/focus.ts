/** What on a drawing is looked at. */
import type { KeyboardEvent, PointerEvent } from 'react';
import type { Piece } from '#core/piece/piece.ts';

export interface Focus {
  readonly kind: 'edge' | 'cut-out' | 'outline';
  readonly name: string;
  /** Of a cut-out: its place in the piece, as two may have one name. */
  readonly index?: number;
}

/** What a drawn edge or hole answers to beside being chosen. A key that was dealt with is `preventDefault`ed. */
export interface Acts {
  readonly onPointerDown?: (event: PointerEvent<SVGElement>) => void;
  readonly onPointerMove?: (event: PointerEvent<SVGElement>) => void;
  readonly onPointerUp?: (event: PointerEvent<SVGElement>) => void;
  readonly onPointerCancel?: (event: PointerEvent<SVGElement>) => void;
  readonly onKeyDown?: (event: KeyboardEvent<SVGElement>) => void;
  /** Follows the finger: the page does not scroll under it. */
  readonly held?: boolean;
  readonly described?: string;
}

export type ActOn = (focus: Focus) => Acts;

/** The row of a table being looked at: an edge by name, a cut-out by its place. */
export type RowFocus = { readonly edge: string } | { readonly cutOut: number } | null;

/** A row's focus as the drawing's; null when the row is not on the piece. */
export function focusOfRow(row: RowFocus, piece: Piece): Focus | null {
  if (row === null) return null;
  if ('edge' in row) return { kind: 'edge', name: row.edge };
  const cutOut = piece.cutOuts[row.cutOut];
  return cutOut === undefined ? null : { kind: 'cut-out', name: cutOut.name, index: row.cutOut };
}
