import { Link } from '@tanstack/react-router';
import type { BodyWork } from '#core/job/body-work.ts';
import { formatLength } from '#core/quantity/format.ts';
import { useOffcutShelf } from '#web/api/offcuts-api.ts';
import { useShop } from '#web/api/queries.ts';
import { SheetTable } from '#web/body/SheetTable.tsx';
import type { Path } from '#web/draft/at-path.ts';
import { without } from '#web/draft/at-path.ts';
import { QuantityField } from '#web/field/sheet-fields.tsx';
import { useSheet } from '../../context.tsx';
import { counted } from '../../summaries.ts';
import { OffcutList } from './OffcutList.tsx';
import { usePieceAt } from './use-piece-at.ts';

const NEW_SHEET = { name: '', length: '', width: '', thickness: '', price: '', count: '' };

/** What the parts are cut from, and with what saw. */
export function CuttingForm({ base, work }: { readonly base: Path; readonly work: BodyWork | null }) {
  const { system, set } = useSheet();
  const { body: shop, currency } = useShop();
  const { shelf, known } = useOffcutShelf();
  const { document, change } = usePieceAt(base);
  const { body, board } = document;
  const at = (...path: Path) => [...base, 'body', ...path];
  const usual = (length_m: number) => formatLength(length_m, system);
  const ofShop = shop.sheets.filter((sheet) => sheet.board === board);
  const here = shelf.filter((offcut) => offcut.board === board);
  const sheets = (make: (now: typeof body.sheets) => typeof body.sheets, label: string) =>
    change(label, (piece) => ({ ...piece, body: { ...piece.body, sheets: make(piece.body.sheets) } }));
  return (
    <>
      {work !== null && work.stock.length === 0 && (
        <p className="section-note">
          There is no sheet of {board} in {usual(work.boardThickness_m)} to cut from: add one below
          {body.sheets === null && ', or on the Shop page'}.
          {work.otherThickness.length > 0 &&
            ` In another thickness there is ${work.otherThickness.join(', ')}.`}
        </p>
      )}
      <details className="fold-settings">
        <summary>
          Sheets, saw and offcuts:{' '}
          {body.sheets === null
            ? `${counted(ofShop.length, 'sheet')} of the shop`
            : `${counted(body.sheets.length, 'sheet')} of this job`}
          {known && `, ${counted(here.length, 'offcut')} of ${board} on the shelf`}
        </summary>
        <div className="form form-tight">
          <QuantityField
            label="Saw cut (kerf)"
            path={at('kerf')}
            kind="length"
            placeholder={usual(shop.kerf_m)}
          />
          <QuantityField
            label="Trim, each side of a sheet"
            path={at('trim')}
            kind="length"
            placeholder={usual(shop.trim_m)}
          />
          <QuantityField
            label="Offcuts kept from: length"
            path={at('keepLength')}
            kind="length"
            placeholder={usual(shop.keepLength_m)}
          />
          <QuantityField
            label="Offcuts kept from: width"
            path={at('keepWidth')}
            kind="length"
            placeholder={usual(shop.keepWidth_m)}
          />
        </div>
        {body.sheets === null ? (
          <>
            {ofShop.length === 0 ? (
              <p className="section-note">The shop has no sheets of {board}.</p>
            ) : (
              <ul className="plain-list">
                {ofShop.map((sheet, i) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: sheets have no name but their place
                  <li key={i}>
                    {sheet.name || 'sheet'}: {sheet.length} x {sheet.width},{' '}
                    {sheet.thickness || 'as the board'}
                    {sheet.price !== '' && `, ${sheet.price} ${currency}`}
                  </li>
                ))}
              </ul>
            )}
            <p>
              <button
                type="button"
                className="small"
                onClick={() =>
                  sheets(
                    () => (ofShop.length === 0 ? [NEW_SHEET] : ofShop.map(({ board: _, ...sheet }) => sheet)),
                    'Other sheets for this job',
                  )
                }
              >
                Other sheets for this job
              </button>{' '}
              <Link to="/shop">Change the sheets of the shop</Link>
            </p>
          </>
        ) : (
          <>
            <SheetTable
              caption={`Sheets of ${board} for this job`}
              count={body.sheets.length}
              at={at('sheets')}
              currency={currency}
              onAdd={() => sheets((now) => [...(now ?? []), NEW_SHEET], 'Add a sheet')}
              onRemove={(i) => sheets((now) => without(now ?? [], i), 'Remove a sheet')}
            />
            <p>
              <button
                type="button"
                className="small"
                onClick={() => sheets(() => null, 'Back to the sheets of the shop')}
              >
                Back to the sheets of the shop
              </button>
            </p>
          </>
        )}
        <label className="tick-box">
          <input
            type="checkbox"
            checked={body.useOffcuts}
            onChange={(event) => set('Use offcuts', at('useOffcuts'), event.target.checked)}
          />
          Cut from offcuts on the shelf first
        </label>
        <OffcutList board={board} />
      </details>
    </>
  );
}
