import { FIRST_PIECE_ID } from '#core/job/document.ts';
import { piecesOf } from '#core/job/pieces.ts';
import { PieceDrawing } from '#web/drawing/PieceDrawing.tsx';
import { Guard } from '#web/shell/Guard.tsx';
import { useSheet } from '../context.tsx';

interface Props {
  /** Of the job; the first one when left out. */
  readonly id?: string;
  /** At a glance: overall sizes only. */
  readonly small?: boolean;
}

/** A piece as the forecast read it, the row in focus marked. */
export function Drawing({ id = FIRST_PIECE_ID, small = false }: Props) {
  const { document, forecast, system, focus } = useSheet();
  const found = forecast?.pieces.find((each) => each.id === id);
  const piece = found?.piece ?? null;
  const typed = piecesOf(document).find((each) => each.id === id)?.document;
  if (piece === null)
    return (
      <p className="section-note">
        {typed?.outline == null
          ? 'The drawing comes with the shape and its sizes.'
          : 'The drawing waits for sizes that can be read.'}
      </p>
    );
  return (
    <Guard what="The drawing" of={piece}>
      <PieceDrawing
        piece={piece}
        system={system}
        splashes={found?.splashes ?? []}
        highlight={small ? null : focus}
        small={small}
      />
    </Guard>
  );
}
