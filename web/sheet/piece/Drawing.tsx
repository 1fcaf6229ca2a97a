import { PieceDrawing } from '#web/drawing/PieceDrawing.tsx';
import { useSheet } from '../context.tsx';

/** The piece as the forecast read it, the row in focus marked. */
export function Drawing({ small = false }: { readonly small?: boolean }) {
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
  return <PieceDrawing piece={piece} system={system} highlight={small ? null : focus} small={small} />;
}
