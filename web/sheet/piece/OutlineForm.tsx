import type { OutlineDocument } from '#core/job/document.ts';
import { without } from '#web/draft/at-path.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { QuantityField, SelectField } from '#web/field/sheet-fields.tsx';
import { useSheet } from '../context.tsx';
import { SHAPES, sizeRows, withEdges, withShape } from './outline-forms.ts';

/** The shape and its sizes. Any unit may be typed in any field. */
export function OutlineForm() {
  const { document, edit, problems, setFocus } = useSheet();
  const outline = document.piece.outline;
  const whole = [...(problems.get('piece') ?? []), ...(problems.get('piece.outline') ?? [])];
  return (
    <fieldset className="plain">
      <legend>Outline</legend>
      <div className="form form-tight">
        <SelectField
          label="Shape"
          path={['piece', 'outline', 'shape']}
          options={SHAPES}
          onChosen={(shape) =>
            edit('Shape', '', (d) => ({
              ...d,
              piece: withShape(d.piece, shape as OutlineDocument['shape']),
            }))
          }
        />
        {outline?.shape === 'ell' && (
          <SelectField
            label="Return on the"
            path={['piece', 'outline', 'side']}
            options={[
              { value: 'left', label: 'left' },
              { value: 'right', label: 'right' },
            ]}
            onChosen={(side) =>
              edit('Side of the return', '', (d) => ({
                ...d,
                piece: withEdges({
                  ...d.piece,
                  outline: { ...outline, side: side === 'left' ? 'left' : 'right' },
                }),
              }))
            }
          />
        )}
        {outline !== null &&
          sizeRows(outline.shape).map((size) => (
            <QuantityField
              key={size.key}
              label={size.needed ? size.label : `${size.label} (none if empty)`}
              path={['piece', 'outline', size.key]}
              kind="length"
              onFocus={() => setFocus(null)}
            />
          ))}
      </div>
      {outline?.shape === 'polygon' && <CornerTable outline={outline} />}
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

const COLUMNS = {
  x: 'From the left',
  y: 'From the front',
  radius: 'Radius',
  bow: 'Bow to the next',
} as const;

function CornerTable({ outline }: { readonly outline: Extract<OutlineDocument, { shape: 'polygon' }> }) {
  const { edit } = useSheet();
  const change = (label: string, corners: typeof outline.corners) =>
    edit(label, '', (d) => ({
      ...d,
      piece: withEdges({ ...d.piece, outline: { shape: 'polygon', corners } }),
    }));
  return (
    <>
      <table className="rows">
        <caption>Corners, going round; edge 1 runs from corner 1 to corner 2</caption>
        <thead>
          <tr>
            <th scope="col">Corner</th>
            <th scope="col">From the left</th>
            <th scope="col">From the front</th>
            <th scope="col">Radius</th>
            <th scope="col">Bow to the next</th>
            <th scope="col">
              <span className="unseen">Remove</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {outline.corners.map((_, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: corners have no name but their place
            <tr key={i}>
              <th scope="row">{i + 1}</th>
              {(['x', 'y', 'radius', 'bow'] as const).map((key) => (
                <td key={key} data-label={COLUMNS[key]}>
                  <QuantityField
                    hideLabel
                    label={`Corner ${i + 1}, ${COLUMNS[key].toLowerCase()}`}
                    path={['piece', 'outline', 'corners', i, key]}
                    kind="length"
                  />
                </td>
              ))}
              <td>
                <button
                  type="button"
                  className="small"
                  aria-label={`Remove corner ${i + 1}`}
                  onClick={() => change('Remove corner', without(outline.corners, i))}
                >
                  Remove
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        <button
          type="button"
          className="small"
          onClick={() => change('Add corner', [...outline.corners, { x: '', y: '', radius: '', bow: '' }])}
        >
          Add a corner
        </button>
      </p>
    </>
  );
}
