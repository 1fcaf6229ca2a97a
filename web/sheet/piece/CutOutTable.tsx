import type { CutOutDocument } from '#core/job/document.ts';
import { without } from '#web/draft/at-path.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { QuantityField, SelectField, TextField } from '#web/field/sheet-fields.tsx';
import { useSheet } from '../context.tsx';

const shapes = ['round', 'oval', 'rectangle'].map((value) => ({ value, label: value }));
const rims = [
  { value: 'dammed', label: 'dammed' },
  { value: 'wrapped', label: 'wrapped' },
];

const newCutOut = (count: number): CutOutDocument => ({
  name: `Cut-out ${count + 1}`,
  shape: 'round',
  length: '',
  width: '',
  cornerRadius: '',
  fromLeft: '',
  fromFront: '',
  rim: 'dammed',
});

/** Holes through the top: bowl, tap, grommet. Places are of the centre. */
export function CutOutTable() {
  const { document, edit, focus, setFocus, problems } = useSheet();
  const cutOuts = document.piece.cutOuts;
  if (document.piece.outline === null) return null;
  const add = () =>
    edit('Add cut-out', '', (d) => ({
      ...d,
      piece: { ...d.piece, cutOuts: [...d.piece.cutOuts, newCutOut(d.piece.cutOuts.length)] },
    }));
  return (
    <div className="table-block">
      {cutOuts.length > 0 && (
        <table className="rows cut-outs">
          <caption>Cut-outs, placed by their centre</caption>
          <thead>
            <tr>
              <th scope="col">Name</th>
              <th scope="col">Shape</th>
              <th scope="col">Length or diameter</th>
              <th scope="col">Width</th>
              <th scope="col">Corners</th>
              <th scope="col">From the left</th>
              <th scope="col">From the front</th>
              <th scope="col">Rim</th>
              <th scope="col">
                <span className="unseen">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {cutOuts.map((cutOut, i) => {
              const name = cutOut.name || `cut-out ${i + 1}`;
              const at = (key: string) => ['piece', 'cutOuts', i, key];
              const whole = problems.get(`piece.cutOuts.${i}`) ?? [];
              const focused = focus !== null && 'cutOut' in focus && focus.cutOut === i;
              return (
                <tr
                  // biome-ignore lint/suspicious/noArrayIndexKey: cut-outs have no name but their place
                  key={i}
                  data-focus={focused || undefined}
                  onFocus={() => setFocus({ cutOut: i })}
                  onPointerEnter={() => setFocus({ cutOut: i })}
                >
                  <td data-label="Name" className="wide-cell">
                    <TextField hideLabel label={`Cut-out ${i + 1}: name`} path={at('name')} maxLength={80} />
                    {whole.map((problem) => (
                      <span className="field-problem" role="alert" key={problem.code}>
                        <ProblemText problem={problem} />
                      </span>
                    ))}
                  </td>
                  <td data-label="Shape">
                    <SelectField hideLabel label={`${name}: shape`} path={at('shape')} options={shapes} />
                  </td>
                  <td data-label={cutOut.shape === 'round' ? 'Diameter' : 'Length'}>
                    <QuantityField
                      hideLabel
                      label={`${name}: ${cutOut.shape === 'round' ? 'diameter' : 'length'}`}
                      path={at('length')}
                      kind="length"
                    />
                  </td>
                  <td data-label="Width" data-empty={cutOut.shape === 'round' || undefined}>
                    {cutOut.shape !== 'round' && (
                      <QuantityField hideLabel label={`${name}: width`} path={at('width')} kind="length" />
                    )}
                  </td>
                  <td data-label="Corner radius" data-empty={cutOut.shape !== 'rectangle' || undefined}>
                    {cutOut.shape === 'rectangle' && (
                      <QuantityField
                        hideLabel
                        label={`${name}: corner radius`}
                        path={at('cornerRadius')}
                        kind="length"
                      />
                    )}
                  </td>
                  <td data-label="From the left">
                    <QuantityField
                      hideLabel
                      label={`${name}: from the left`}
                      path={at('fromLeft')}
                      kind="length"
                    />
                  </td>
                  <td data-label="From the front">
                    <QuantityField
                      hideLabel
                      label={`${name}: from the front`}
                      path={at('fromFront')}
                      kind="length"
                    />
                  </td>
                  <td data-label="Rim">
                    <SelectField hideLabel label={`${name}: rim`} path={at('rim')} options={rims} />
                  </td>
                  <td>
                    <button
                      type="button"
                      className="small"
                      aria-label={`Remove ${name}`}
                      onClick={() =>
                        edit('Remove cut-out', '', (d) => ({
                          ...d,
                          piece: { ...d.piece, cutOuts: without(d.piece.cutOuts, i) },
                        }))
                      }
                    >
                      Remove
                    </button>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      )}
      <p>
        <button type="button" className="small" onClick={add}>
          Add a cut-out
        </button>
      </p>
    </div>
  );
}
