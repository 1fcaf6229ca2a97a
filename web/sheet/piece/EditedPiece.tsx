import { useShop } from '#web/api/queries.ts';
import type { Path } from '#web/draft/at-path.ts';
import { PieceEditor } from '#web/editor/PieceEditor.tsx';
import { useSheet } from '../context.tsx';
import { withEdges } from './outline-forms.ts';
import { FIRST_PIECE, usePiece } from './piece-handle.ts';

/** The drawing of a piece of this job, to work on. */
export function EditedPiece({ base = FIRST_PIECE }: { readonly base?: Path }) {
  const { system, undo, redo, undoLabel, redoLabel, focus, setFocus } = useSheet();
  const { piece, change } = usePiece(base);
  const { rates } = useShop();
  return (
    <PieceEditor
      piece={piece}
      base={base}
      system={system}
      rules={rates}
      change={change}
      describe={withEdges}
      back={{ undo, redo, undoLabel, redoLabel }}
      highlight={focus}
      onHighlight={setFocus}
    />
  );
}
