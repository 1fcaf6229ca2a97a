/** Which piece of the job its section shows. */
import { useEffect, useState } from 'react';
import { FIRST_PIECE_ID } from '#core/job/document.ts';
import { type PiecePlace, piecesOf } from '#core/job/pieces.ts';
import type { Path } from '#web/draft/at-path.ts';
import { useSheet } from '../context.tsx';
import { PIECE_ASKED } from '../Section.tsx';

export interface ChosenPiece {
  readonly pieces: readonly PiecePlace[];
  readonly index: number;
  readonly chosen: PiecePlace;
  readonly base: Path;
  readonly choose: (id: string) => void;
}

/** The path of the document a piece stands at; the same one for the same place. */
export function basePath(index: number): Path {
  BASES[index] ??= index === 0 ? ['piece'] : ['otherPieces', index - 1];
  return BASES[index];
}
const BASES: Path[] = [];

export function useChosenPiece(): ChosenPiece {
  const { document } = useSheet();
  const pieces = piecesOf(document);
  const [id, choose] = useState<string>(FIRST_PIECE_ID);
  // The address of a field, in a summary or a list of problems, brings its piece.
  useEffect(() => {
    const onAsked = (event: Event) => {
      const place = piecesOf(document).find(({ path }) => path === (event as CustomEvent<string>).detail);
      if (place !== undefined) choose(place.id);
    };
    window.addEventListener(PIECE_ASKED, onAsked);
    return () => window.removeEventListener(PIECE_ASKED, onAsked);
  }, [document]);
  const index = Math.max(
    0,
    pieces.findIndex((piece) => piece.id === id),
  );
  return { pieces, index, chosen: pieces[index]!, base: basePath(index), choose };
}
