/** One piece of the job: what it holds, where it stands in the document, and how it is changed. */
import type { PieceDocument } from '#core/job/document.ts';
import { getAt, type Path, setAt } from '#web/draft/at-path.ts';
import { useSheet } from '../context.tsx';

/** The first piece of a job. */
export const FIRST_PIECE: Path = ['piece'];

export type ChangePiece = (
  label: string,
  /** What is being changed, so that changes of it in quick succession are one step of undo; '' for a step of its own. */
  place: string,
  make: (piece: PieceDocument) => PieceDocument,
) => void;

export interface PieceHandle {
  readonly piece: PieceDocument;
  readonly base: Path;
  /** The place as problems name it: "piece". */
  readonly place: string;
  readonly at: (...path: Path) => Path;
  readonly change: ChangePiece;
}

export function usePiece(base: Path): PieceHandle {
  const { document, edit } = useSheet();
  const place = base.join('.');
  return {
    piece: getAt(document, base) as PieceDocument,
    base,
    place,
    at: (...path) => [...base, ...path],
    change: (label, where, make) =>
      edit(label, where === '' ? '' : `${place}.${where}`, (d) =>
        setAt(d, base, make(getAt(d, base) as PieceDocument)),
      ),
  };
}
