/** What on a drawing is looked at. */
import type { Piece } from '#core/piece/piece.ts';

export interface Focus {
  readonly kind: 'edge' | 'cut-out' | 'outline';
  readonly name: string;
}

/** The row of a table being looked at: an edge by name, a cut-out by its place. */
export type RowFocus = { readonly edge: string } | { readonly cutOut: number } | null;

/** A row's focus as the drawing's; null when the row is not on the piece. */
export function focusOfRow(row: RowFocus, piece: Piece): Focus | null {
  if (row === null) return null;
  if ('edge' in row) return { kind: 'edge', name: row.edge };
  const cutOut = piece.cutOuts[row.cutOut];
  return cutOut === undefined ? null : { kind: 'cut-out', name: cutOut.name };
}
