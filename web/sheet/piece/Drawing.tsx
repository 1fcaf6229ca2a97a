import { PieceDrawing } from '#web/drawing/PieceDrawing.tsx';
import { Guard } from '#web/shell/Guard.tsx';
import { useSheet } from '../context.tsx';

interface Props {
  /** At a glance: overall sizes only. */
  readonly small?: boolean;
}

/** The piece as the forecast read it, the row in focus marked. */
export function Drawing({ small = false }: Props) {
  const { document, forecast, system, focus } = useSheet();
  const piece = forecast?.piece ?? null;
  if (piece === null)
    return (
      <p className="section-note">
        {document.piece.outline === null
          ? 'The drawing comes with the shape and its sizes.'
          : 'The drawing waits for sizes that can be read.'}
      </p>
    );
  return (
    <Guard what="The drawing" of={piece}>
      <PieceDrawing piece={piece} system={system} highlight={small ? null : focus} small={small} />
    </Guard>
  );
}
