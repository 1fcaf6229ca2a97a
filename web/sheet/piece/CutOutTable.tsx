import { Fragment } from 'react';
import type { CutOutDocument } from '#core/job/document.ts';
import { type Path, without } from '#web/draft/at-path.ts';
import { CUT_OUT_SHAPES, RIMS } from '#web/editor/edge-choices.ts';
import { FieldsProvider, useFields } from '#web/field/fields-context.tsx';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { QuantityField, SelectField, TextField } from '#web/field/sheet-fields.tsx';
import { useSheet } from '../context.tsx';
import { FIRST_PIECE, usePiece } from './piece-handle.ts';
import { TemplateSize } from './TemplateSize.tsx';

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

const NO_WARNINGS = new Map<string, never[]>();
/** Fields of a cut-out a warning may stand at. */
const KEYS = [
  'name',
  'shape',
  'length',
  'width',
  'cornerRadius',
  'fromLeft',
  'fromFront',
  'turned',
  'rim',
] as const;

/** Holes through the top: bowl, tap, grommet. Places are of the centre. */
export function CutOutTable({ base = FIRST_PIECE }: { readonly base?: Path }) {
  const { focus, setFocus, problems, warnings } = useSheet();
  const fields = useFields();
  const { piece, place, at: placeOf, change } = usePiece(base);
  const { cutOuts } = piece;
  if (piece.outline === null) return null;
  const add = () =>
    change('Add cut-out', '', (p) => ({ ...p, cutOuts: [...p.cutOuts, newCutOut(p.cutOuts.length)] }));
  return (
    <div className="table-block">
      {cutOuts.length > 0 && (
        // What the shop should know stands in a row of its own: the columns are narrow.
        <FieldsProvider value={{ ...fields, warnings: NO_WARNINGS }}>
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
                <th scope="col">Turned left, degrees</th>
                <th scope="col">Rim</th>
                <th scope="col">
                  <span className="unseen">Remove</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {cutOuts.map((cutOut, i) => {
                const name = cutOut.name || `cut-out ${i + 1}`;
                const at = (key: string) => placeOf('cutOuts', i, key);
                const whole = problems.get(`${place}.cutOuts.${i}`) ?? [];
                const focused = focus !== null && 'cutOut' in focus && focus.cutOut === i;
                const told = KEYS.flatMap((key) => warnings.get(at(key).join('.')) ?? []);
                return (
                  // biome-ignore lint/suspicious/noArrayIndexKey: cut-outs have no name but their place
                  <Fragment key={i}>
                    <tr
                      data-focus={focused || undefined}
                      onFocus={() => setFocus({ cutOut: i })}
                      onPointerEnter={() => setFocus({ cutOut: i })}
                    >
                      <td data-label="Name" className="wide-cell">
                        <TextField
                          hideLabel
                          label={`Cut-out ${i + 1}: name`}
                          path={at('name')}
                          maxLength={80}
                        />
                        {whole.map((problem) => (
                          <span className="field-problem" role="alert" key={problem.code}>
                            <ProblemText problem={problem} />
                          </span>
                        ))}
                      </td>
                      <td data-label="Shape">
                        {cutOut.shape === 'template' ? (
                          'sink template'
                        ) : (
                          <SelectField
                            hideLabel
                            label={`${name}: shape`}
                            path={at('shape')}
                            options={CUT_OUT_SHAPES}
                          />
                        )}
                      </td>
                      <td data-label={cutOut.shape === 'round' ? 'Diameter' : 'Length'}>
                        {cutOut.shape === 'template' ? (
                          <TemplateSize cutOut={cutOut} of="length_m" />
                        ) : (
                          <QuantityField
                            hideLabel
                            label={`${name}: ${cutOut.shape === 'round' ? 'diameter' : 'length'}`}
                            path={at('length')}
                            kind="length"
                          />
                        )}
                      </td>
                      <td data-label="Width" data-empty={cutOut.shape === 'round' || undefined}>
                        {cutOut.shape === 'template' && <TemplateSize cutOut={cutOut} of="width_m" />}
                        {cutOut.shape !== 'round' && cutOut.shape !== 'template' && (
                          <QuantityField
                            hideLabel
                            label={`${name}: width`}
                            path={at('width')}
                            kind="length"
                          />
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
                      <td
                        data-label="Turned left, degrees"
                        data-empty={cutOut.shape === 'round' || undefined}
                      >
                        {cutOut.shape !== 'round' && (
                          <QuantityField
                            hideLabel
                            label={`${name}: turned left, degrees`}
                            path={at('turned')}
                            kind="words"
                            placeholder="0"
                          />
                        )}
                      </td>
                      <td data-label="Rim">
                        <SelectField hideLabel label={`${name}: rim`} path={at('rim')} options={RIMS} />
                      </td>
                      <td>
                        <button
                          type="button"
                          className="small"
                          aria-label={`Remove ${name}`}
                          onClick={() =>
                            change('Remove cut-out', '', (p) => ({ ...p, cutOuts: without(p.cutOuts, i) }))
                          }
                        >
                          Remove
                        </button>
                      </td>
                    </tr>
                    {told.length > 0 && (
                      <tr className="told">
                        <td colSpan={10}>
                          {told.map((warning) => (
                            <span className="field-warning" key={warning.path + warning.code}>
                              <ProblemText problem={warning} />
                            </span>
                          ))}
                        </td>
                      </tr>
                    )}
                  </Fragment>
                );
              })}
            </tbody>
          </table>
        </FieldsProvider>
      )}
      <p>
        <button type="button" className="small" onClick={add}>
          Add a cut-out
        </button>
      </p>
    </div>
  );
}
