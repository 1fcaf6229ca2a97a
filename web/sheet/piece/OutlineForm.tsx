import type { OutlineDocument, PieceDocument } from '#core/job/document.ts';
import type { Path } from '#web/draft/at-path.ts';
import { canTurnIntoCorners, withOwnCorners } from '#web/editor/corners.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { QuantityField, SelectField } from '#web/field/sheet-fields.tsx';
import { useSheet } from '../context.tsx';
import { SHAPES, sizeRows, withEdges, withShape } from './outline-forms.ts';
import { FIRST_PIECE, usePiece } from './piece-handle.ts';

/** The shape and its sizes. Any unit may be typed in any field. */
export function OutlineForm({ base = FIRST_PIECE }: { readonly base?: Path }) {
  const { system, problems, setFocus } = useSheet();
  const { piece, place, at, change } = usePiece(base);
  const { outline } = piece;
  const whole = [...(problems.get(place) ?? []), ...(problems.get(`${place}.outline`) ?? [])];
  // A rectangle or an L keeps its place, and each edge how it is made.
  const inShape = (shape: OutlineDocument['shape']) => (p: PieceDocument) => {
    const own =
      shape === 'polygon' && canTurnIntoCorners(p.outline) ? withOwnCorners(p, { system, snaps: false }) : p;
    return own === p ? withShape(p, shape) : withEdges(own);
  };
  return (
    <fieldset className="plain">
      <legend>Outline</legend>
      <div className="form form-tight">
        <SelectField
          label="Shape"
          path={at('outline', 'shape')}
          options={SHAPES}
          onChosen={(shape) => change('Shape', '', inShape(shape as OutlineDocument['shape']))}
        />
        {outline?.shape === 'ell' && (
          <SelectField
            label="Return on the"
            path={at('outline', 'side')}
            options={[
              { value: 'left', label: 'left' },
              { value: 'right', label: 'right' },
            ]}
            onChosen={(side) =>
              change('Side of the return', '', (p) =>
                withEdges({ ...p, outline: { ...outline, side: side === 'left' ? 'left' : 'right' } }),
              )
            }
          />
        )}
        {outline !== null &&
          sizeRows(outline.shape).map((size) => (
            <QuantityField
              key={size.key}
              label={size.needed ? size.label : `${size.label} (none if empty)`}
              path={at('outline', size.key)}
              kind="length"
              onFocus={() => setFocus(null)}
            />
          ))}
      </div>
      {whole.length > 0 && (
        <p className="problem-block" role="alert">
          {whole.map((problem) => (
            <ProblemText key={problem.code + problem.message} problem={problem} />
          ))}
        </p>
      )}
    </fieldset>
  );
}
