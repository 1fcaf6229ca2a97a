import type { EdgeDocument } from '#core/job/document.ts';
import { without } from '#web/draft/at-path.ts';
import { QuantityField, SelectField } from '#web/field/sheet-fields.tsx';
import { useSheet } from '../context.tsx';
import { edgeNamesOf, withEdges } from './outline-forms.ts';

const kinds = ['finished', 'wall', 'seam'].map((value) => ({ value, label: value }));
const profiles: readonly EdgeDocument['profile'][] = [
  'square eased',
  'round-over',
  'bullnose',
  'bevel',
  'chiselled',
];
const profileOptions = profiles.map((value) => ({ value, label: value }));

/** What the size of a profile means, for the label of its field. */
const sizeWord: Readonly<Record<EdgeDocument['profile'], string | null>> = {
  'square eased': 'radius',
  'round-over': 'radius',
  bullnose: null,
  bevel: 'leg',
  chiselled: 'factor 1.3 to 1.6',
};

/** One row an edge: what it is, how high, how it is shaped. The row in use is marked on the drawing. */
export function EdgeTable() {
  const { document, forecast, speak, edit, focus, setFocus, problems } = useSheet();
  const { outline, edges } = document.piece;
  if (outline === null) return null;
  const names = edgeNamesOf(outline);
  const missing = names.some((name) => !edges.some((edge) => edge.edge === name));
  const lengthOf = (name: string) => forecast?.measures?.edges.find((e) => e.outer && e.name === name);
  return (
    <div className="table-block">
      {edges.length === 0 && <h3>Edges</h3>}
      {edges.length > 0 && (
        <table className="rows edges">
          <caption>Edges</caption>
          <thead>
            <tr>
              <th scope="col">Edge</th>
              <th scope="col">Kind</th>
              <th scope="col">Face height</th>
              <th scope="col">Profile</th>
              <th scope="col">Its size</th>
              <th scope="col">Carried under</th>
            </tr>
          </thead>
          <tbody>
            {edges.map((edge, i) => {
              const length = lengthOf(edge.edge);
              const known = names.includes(edge.edge);
              const word = sizeWord[edge.profile];
              const focused = focus !== null && 'edge' in focus && focus.edge === edge.edge;
              return (
                <tr
                  key={edge.edge}
                  data-focus={focused || undefined}
                  onFocus={() => setFocus({ edge: edge.edge })}
                  onPointerEnter={() => setFocus({ edge: edge.edge })}
                >
                  <th scope="row">
                    {edge.edge}
                    {length !== undefined && <span className="of">{speak.length(length.length_m)}</span>}
                    {!known && (
                      <button
                        type="button"
                        className="small"
                        onClick={() =>
                          edit('Remove edge', '', (d) => ({
                            ...d,
                            piece: { ...d.piece, edges: without(d.piece.edges, i) },
                          }))
                        }
                      >
                        Remove
                      </button>
                    )}
                    {problems.get(`piece.edges.${i}.edge`)?.map((problem) => (
                      <span key={problem.code} className="field-problem">
                        {problem.message}
                      </span>
                    ))}
                  </th>
                  <td data-label="Kind">
                    <SelectField
                      hideLabel
                      label={`${edge.edge}: kind`}
                      path={['piece', 'edges', i, 'kind']}
                      options={kinds}
                    />
                  </td>
                  {edge.kind === 'finished' ? (
                    <>
                      <td data-label="Face height">
                        <QuantityField
                          hideLabel
                          label={`${edge.edge}: face height`}
                          path={['piece', 'edges', i, 'faceHeight']}
                          kind="length"
                          placeholder="as the body"
                        />
                      </td>
                      <td data-label="Profile">
                        <SelectField
                          hideLabel
                          label={`${edge.edge}: profile`}
                          path={['piece', 'edges', i, 'profile']}
                          options={profileOptions}
                        />
                      </td>
                      <td data-label={word === null ? 'Its size' : `Its ${word}`}>
                        {word === null ? (
                          <span className="none">half the face</span>
                        ) : (
                          <QuantityField
                            hideLabel
                            label={`${edge.edge}: ${word}`}
                            path={['piece', 'edges', i, 'profileSize']}
                            kind={edge.profile === 'chiselled' ? 'words' : 'length'}
                            placeholder={word}
                          />
                        )}
                      </td>
                      <td data-label="Carried under">
                        <QuantityField
                          hideLabel
                          label={`${edge.edge}: carried under`}
                          path={['piece', 'edges', i, 'undersideReturn']}
                          kind="length"
                          placeholder="none"
                        />
                      </td>
                    </>
                  ) : (
                    <td colSpan={4} className="none">
                      {edge.kind === 'wall'
                        ? 'against a wall: not coated'
                        : 'joined to another piece: not coated'}
                    </td>
                  )}
                </tr>
              );
            })}
          </tbody>
        </table>
      )}
      {missing && (
        <p className="section-note">
          {edges.length === 0 ? 'No edge is described yet' : 'Some edges are not described'}: they count as
          finished, as high as the body, eased 1/8 in.{' '}
          <button
            type="button"
            className="small"
            onClick={() => edit('Describe edges', '', (d) => ({ ...d, piece: withEdges(d.piece) }))}
          >
            Describe every edge
          </button>
        </p>
      )}
    </div>
  );
}
