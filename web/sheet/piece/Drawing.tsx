import type { Focus } from '#web/drawing/focus.ts';
import { PieceDrawing } from '#web/drawing/PieceDrawing.tsx';
import { Guard } from '#web/shell/Guard.tsx';
import { useSheet } from '../context.tsx';
import { openSection } from '../Section.tsx';

interface Props {
  /** At a glance: overall sizes only. */
  readonly small?: boolean;
  /** Edges and cut-outs lead to their rows. */
  readonly linked?: boolean;
}

/** The piece as the forecast read it, the row in focus marked. */
export function Drawing({ small = false, linked = false }: Props) {
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
  const toRow = (found: Focus) => {
    const field = fieldOf(found, document.piece.edges, document.piece.cutOuts);
    if (field !== null) openSection('piece', field);
  };
  return (
    <Guard what="The drawing" of={piece}>
      <PieceDrawing
        piece={piece}
        system={system}
        highlight={small ? null : focus}
        small={small}
        {...(linked ? { onFocus: toRow } : {})}
      />
    </Guard>
  );
}

/** Id of the first field of the row an edge or a cut-out stands in. */
function fieldOf(
  found: Focus,
  edges: readonly { readonly edge: string }[],
  cutOuts: readonly { readonly name: string }[],
): string | null {
  if (found.kind === 'edge') {
    const i = edges.findIndex((edge) => edge.edge === found.name);
    return i < 0 ? null : `f-piece-edges-${i}-kind`;
  }
  if (found.kind === 'cut-out') {
    const i = cutOuts.findIndex((cutOut) => (cutOut.name || 'cut-out') === found.name);
    return i < 0 ? null : `f-piece-cutOuts-${i}-name`;
  }
  return 'f-piece-outline-shape';
}
