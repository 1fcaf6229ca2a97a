import type { EdgeDocument, OutlineDocument, PieceDocument } from '#core/job/document.ts';
import { Notes } from '#core/job/notes.ts';
import { readOutline } from '#core/job/read-outline.ts';
import { checkOutline } from '#core/piece/check-outline.ts';
import { facings } from '#core/piece/facing.ts';
import { edgeNamesOf, plainEdge } from '../outline-forms.ts';

/** Which way an edge looks: by its place, or by its name where edges are named by their side. */
function facingOf(outline: OutlineDocument | null): (edge: string) => string | undefined {
  const read = outline === null ? null : readOutline(outline, new Notes());
  const found: ReadonlyMap<string, string> =
    read === null || checkOutline(read).length > 0 ? new Map() : facings(read);
  return (edge) => found.get(edge) ?? (SIDES.includes(edge) ? edge : undefined);
}
const SIDES: readonly string[] = ['front', 'right', 'back', 'left'];

/**
 * The piece with an outline from elsewhere. Every new edge is made as the old one of its name was, else as the first old one that
 * looked the same way: a wall at the back stays a wall at the back.
 */
export function withOutline(piece: PieceDocument, outline: OutlineDocument): PieceDocument {
  const before = facingOf(piece.outline);
  const after = facingOf(outline);
  const same = piece.outline?.shape === outline.shape;
  const edges = edgeNamesOf(outline).map((name): EdgeDocument => {
    const kept = same ? piece.edges.find(({ edge }) => edge === name) : undefined;
    const way = after(name);
    const like =
      kept ?? piece.edges.find(({ edge }) => way !== undefined && before(edge) === way) ?? plainEdge(name);
    return { ...like, edge: name };
  });
  // Overhangs are told by edge too; those of edges that are gone would say nothing.
  const overhangs = piece.body.overhangs.filter(({ edge }) => edges.some((each) => each.edge === edge));
  return { ...piece, outline, edges, body: { ...piece.body, overhangs } };
}
