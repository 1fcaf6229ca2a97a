import type { Path } from '#web/draft/at-path.ts';
import { FEWEST_CORNERS, withoutCorner } from '#web/editor/corners.ts';
import { QuantityField } from '#web/field/sheet-fields.tsx';
import { withEdges } from './outline-forms.ts';
import { FIRST_PIECE, usePiece } from './piece-handle.ts';

const COLUMNS = {
  x: 'From the left',
  y: 'From the front',
  radius: 'Radius',
  bow: 'Bow to the next',
} as const;

/** The corners of a free shape, where there is one; the same ones the drawing numbers. */
export function CornerTable({ base = FIRST_PIECE }: { readonly base?: Path }) {
  const { piece, at, change } = usePiece(base);
  const { outline } = piece;
  if (outline?.shape !== 'polygon') return null;
  return (
    <div className="table-block">
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
                    path={at('outline', 'corners', i, key)}
                    kind="length"
                  />
                </td>
              ))}
              <td>
                <button
                  type="button"
                  className="small"
                  aria-label={`Remove corner ${i + 1}`}
                  disabled={outline.corners.length <= FEWEST_CORNERS}
                  onClick={() => change('Remove corner', '', (p) => withEdges(withoutCorner(p, i)))}
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
          onClick={() =>
            change('Add corner', '', (p) =>
              withEdges({
                ...p,
                outline: {
                  shape: 'polygon',
                  corners: [...outline.corners, { x: '', y: '', radius: '', bow: '' }],
                },
              }),
            )
          }
        >
          Add a corner
        </button>
      </p>
    </div>
  );
}
