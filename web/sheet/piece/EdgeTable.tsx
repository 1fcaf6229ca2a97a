import { useMemo } from 'react';
import { type Path, without } from '#web/draft/at-path.ts';
import { edgesDrawn } from '#web/drawing/describe.ts';
import { KINDS, PROFILES, SIZE_WORD } from '#web/editor/edge-choices.ts';
import { lookAt } from '#web/editor/look.ts';
import { QuantityField, SelectField } from '#web/field/sheet-fields.tsx';
import { useSheet } from '../context.tsx';
import { edgeNamesOf, withEdges } from './outline-forms.ts';
import { FIRST_PIECE, usePiece } from './piece-handle.ts';

/** One row an edge: what it is, how high, how it is shaped. The row in use is marked on the drawing. */
export function EdgeTable({ base = FIRST_PIECE }: { readonly base?: Path }) {
  const { system, speak, focus, setFocus, problems } = useSheet();
  const { piece, place, at, change } = usePiece(base);
  const { outline, edges } = piece;
  const drawn = useMemo(() => {
    const look = lookAt(piece, system);
    return look === null ? [] : edgesDrawn(look.piece, look.drawing);
  }, [piece, system]);
  if (outline === null) return null;
  const names = edgeNamesOf(outline);
  const missing = names.some((name) => !edges.some((edge) => edge.edge === name));
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
              const shown = drawn.find((each) => each.name === edge.edge);
              const known = names.includes(edge.edge);
              const word = SIZE_WORD[edge.profile];
              const focused = focus !== null && 'edge' in focus && focus.edge === edge.edge;
              return (
                <tr
                  key={edge.edge}
                  data-focus={focused || undefined}
                  onFocus={() => setFocus({ edge: edge.edge })}
                  onPointerEnter={() => setFocus({ edge: edge.edge })}
                >
                  <th scope="row">
                    {shown?.label ?? edge.edge}
                    {shown !== undefined && <span className="of">{speak.length(shown.length_m)}</span>}
                    {!known && (
                      <button
                        type="button"
                        className="small"
                        onClick={() =>
                          change('Remove edge', '', (p) => ({ ...p, edges: without(p.edges, i) }))
                        }
                      >
                        Remove
                      </button>
                    )}
                    {problems.get(`${place}.edges.${i}.edge`)?.map((problem) => (
                      <span key={problem.code} className="field-problem">
                        {problem.message}
                      </span>
                    ))}
                  </th>
                  <td data-label="Kind">
                    <SelectField
                      hideLabel
                      label={`${edge.edge}: kind`}
                      path={at('edges', i, 'kind')}
                      options={KINDS}
                    />
                  </td>
                  {edge.kind === 'finished' ? (
                    <>
                      <td data-label="Face height">
                        <QuantityField
                          hideLabel
                          label={`${edge.edge}: face height`}
                          path={at('edges', i, 'faceHeight')}
                          kind="length"
                          placeholder="as the body"
                        />
                      </td>
                      <td data-label="Profile">
                        <SelectField
                          hideLabel
                          label={`${edge.edge}: profile`}
                          path={at('edges', i, 'profile')}
                          options={PROFILES}
                        />
                      </td>
                      <td data-label={word === null ? 'Its size' : `Its ${word}`}>
                        {word === null ? (
                          <span className="none">half the face</span>
                        ) : (
                          <QuantityField
                            hideLabel
                            label={`${edge.edge}: ${word}`}
                            path={at('edges', i, 'profileSize')}
                            kind={edge.profile === 'chiselled' ? 'words' : 'length'}
                            placeholder={word}
                          />
                        )}
                      </td>
                      <td data-label="Carried under">
                        <QuantityField
                          hideLabel
                          label={`${edge.edge}: carried under`}
                          path={at('edges', i, 'undersideReturn')}
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
          <button type="button" className="small" onClick={() => change('Describe edges', '', withEdges)}>
            Describe every edge
          </button>
        </p>
      )}
    </div>
  );
}
