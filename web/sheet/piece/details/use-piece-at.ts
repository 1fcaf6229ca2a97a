import { useMemo } from 'react';
import type { JobDocument, PieceDocument } from '#core/job/document.ts';
import { Notes } from '#core/job/notes.ts';
import { type PieceRead, readPiece } from '#core/job/read-piece.ts';
import type { Piece } from '#core/piece/piece.ts';
import { reviewPiece } from '#core/piece/validate.ts';
import { getAt, type Path, setAt } from '#web/draft/at-path.ts';
import { useSheet } from '../../context.tsx';

export interface PieceAt {
  readonly document: PieceDocument;
  readonly read: PieceRead;
  /** Read and found sound; null while it is not. */
  readonly piece: Piece | null;
  /** One step of undo. */
  readonly change: (label: string, make: (piece: PieceDocument) => PieceDocument) => void;
}

/** The piece that stands at a path of the job, read; the same objects until it changes. */
export function usePieceAt(base: Path): PieceAt {
  const { document: job, edit } = useSheet();
  const document = getAt(job, base) as PieceDocument;
  const { read, piece } = useMemo(() => {
    const found = readPiece(document, new Notes());
    const sound = found.piece !== null && reviewPiece(found.piece).problems.length === 0;
    return { read: found, piece: sound ? found.piece : null };
  }, [document]);
  return {
    document,
    read,
    piece,
    change: (label, make) =>
      edit(label, '', (whole: JobDocument) => setAt(whole, base, make(getAt(whole, base) as PieceDocument))),
  };
}
