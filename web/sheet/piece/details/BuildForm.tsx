import { GRAINS } from '#core/job/body-document.ts';
import { BOARD_WEIGHTS } from '#core/piece/body/board-names.ts';
import { edgeNames } from '#core/piece/outline.ts';
import { formatLength } from '#core/quantity/format.ts';
import { useShop } from '#web/api/queries.ts';
import type { Path } from '#web/draft/at-path.ts';
import { without } from '#web/draft/at-path.ts';
import { QuantityField, SelectField } from '#web/field/sheet-fields.tsx';
import { useSheet } from '../../context.tsx';
import { usePieceAt } from './use-piece-at.ts';

const grains = GRAINS.map((value) => ({
  value,
  label: value === 'none' ? 'none, may be turned' : value,
}));
const KINDS = [
  { key: 'field', label: 'Grain of the field' },
  { key: 'strips', label: 'Grain of the strips' },
  { key: 'rims', label: 'Grain of the rims' },
  { key: 'splashes', label: 'Grain of the splashes' },
] as const;

/** How the body is built up; a field left empty is as the shop does it, which stands in it in grey. */
export function BuildForm({ base }: { readonly base: Path }) {
  const { system, set } = useSheet();
  const { body: shop } = useShop();
  const { document, change, read } = usePieceAt(base);
  const { body } = document;
  const at = (...path: Path) => [...base, 'body', ...path];
  const usual = (length_m: number) => formatLength(length_m, system);
  const names = read.piece === null ? [] : edgeNames(read.piece.outline);
  const edges = names.map((value) => ({ value, label: value }));
  return (
    <details className="fold-settings">
      <summary>How it is built</summary>
      <p className="section-note">
        A field left empty is as the shop does it, shown in grey. The shop's own figures are kept on the Shop
        page.
      </p>
      <div className="form form-tight">
        <QuantityField
          label="Width of the strips"
          path={at('stripWidth')}
          kind="length"
          placeholder={usual(shop.stripWidth_m)}
        />
        <QuantityField
          label="Oversize, each side"
          path={at('oversize')}
          kind="length"
          placeholder={usual(shop.oversize_m)}
        />
        <QuantityField
          label="Longest in one piece"
          path={at('longest')}
          kind="length"
          placeholder={usual(shop.longest_m)}
        />
        <QuantityField
          label="Screws from below"
          path={at('screw')}
          kind="length"
          placeholder={usual(shop.screwLength_m)}
        />
        <QuantityField
          label="Density of the board"
          path={at('density')}
          kind="words"
          placeholder={`${BOARD_WEIGHTS[document.board].density_kg_m3} kg/m3`}
        />
        {KINDS.map(({ key, label }) => (
          <SelectField key={key} label={label} path={at('grain', key)} options={grains} />
        ))}
      </div>
      {body.overhangs.length > 0 && (
        <table className="rows">
          <caption>Overhangs: how far an edge reaches beyond what carries it</caption>
          <thead>
            <tr>
              <th scope="col">Edge</th>
              <th scope="col">Overhang</th>
              <th scope="col">
                <span className="unseen">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {body.overhangs.map((_, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: overhangs have no name but their place
              <tr key={i}>
                <td data-label="Edge">
                  <SelectField
                    hideLabel
                    label={`Overhang ${i + 1}: edge`}
                    path={at('overhangs', i, 'edge')}
                    options={edges}
                  />
                </td>
                <td data-label="Overhang">
                  <QuantityField
                    hideLabel
                    label={`Overhang ${i + 1}: how far`}
                    path={at('overhangs', i, 'overhang')}
                    kind="length"
                  />
                </td>
                <td>
                  <button
                    type="button"
                    className="small"
                    aria-label={`Remove overhang ${i + 1}`}
                    onClick={() =>
                      change('Remove overhang', (piece) => ({
                        ...piece,
                        body: { ...piece.body, overhangs: without(piece.body.overhangs, i) },
                      }))
                    }
                  >
                    Remove
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p>
        <button
          type="button"
          className="small"
          disabled={names.length === 0}
          onClick={() =>
            change('Add overhang', (piece) => ({
              ...piece,
              body: {
                ...piece.body,
                overhangs: [...piece.body.overhangs, { edge: names[0] ?? 'front', overhang: '' }],
              },
            }))
          }
        >
          Add an overhang
        </button>
      </p>
      <label className="tick-box">
        <input
          type="checkbox"
          checked={body.accessible !== null}
          onChange={(event) =>
            set(
              'Check knee clearance and height',
              at('accessible'),
              event.target.checked ? { topHeight: '', kneeWidth: '' } : null,
            )
          }
        />
        Check knee clearance and height (2010 ADA Standards; information, not legal advice)
      </label>
      {body.accessible !== null && (
        <div className="form form-tight">
          <QuantityField
            label="Floor to the higher of rim and top"
            path={at('accessible', 'topHeight')}
            kind="length"
          />
          <QuantityField label="Free width under it" path={at('accessible', 'kneeWidth')} kind="length" />
        </div>
      )}
    </details>
  );
}
