/** Sheets to cut from, one row a sheet, of a job or of the shop. */
import { BOARD_NAMES } from '#core/piece/body/board-names.ts';
import type { Path } from '#web/draft/at-path.ts';
import { QuantityField, SelectField, TextField } from '#web/field/sheet-fields.tsx';

const boards = BOARD_NAMES.map((value) => ({ value, label: value }));

interface Props {
  readonly caption: string;
  readonly count: number;
  /** Where the list stands in its document. */
  readonly at: Path;
  readonly currency: string;
  /** Sheets of several boards: a column says which. */
  readonly withBoard?: boolean;
  readonly onAdd: () => void;
  readonly onRemove: (index: number) => void;
}

export function SheetTable({ caption, count, at, currency, withBoard = false, onAdd, onRemove }: Props) {
  const price = `Price, ${currency}`;
  return (
    <div className="table-block">
      {count > 0 && (
        <table className="rows sheets">
          <caption>{caption}</caption>
          <thead>
            <tr>
              <th scope="col">Name</th>
              {withBoard && <th scope="col">Board</th>}
              <th scope="col">Length, along the grain</th>
              <th scope="col">Width</th>
              <th scope="col">Thickness</th>
              <th scope="col">{price}</th>
              <th scope="col">How many</th>
              <th scope="col">
                <span className="unseen">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {Array.from({ length: count }, (_, i) => {
              const name = `Sheet ${i + 1}`;
              const size = (key: string, label: string, placeholder: string) => (
                <QuantityField
                  hideLabel
                  label={`${name}: ${label}`}
                  path={[...at, i, key]}
                  kind="length"
                  placeholder={placeholder}
                />
              );
              return (
                // biome-ignore lint/suspicious/noArrayIndexKey: sheets have no name but their place
                <tr key={i}>
                  <td data-label="Name" className="wide-cell">
                    <TextField hideLabel label={`${name}: name`} path={[...at, i, 'name']} maxLength={80} />
                  </td>
                  {withBoard && (
                    <td data-label="Board">
                      <SelectField
                        hideLabel
                        label={`${name}: board`}
                        path={[...at, i, 'board']}
                        options={boards}
                      />
                    </td>
                  )}
                  <td data-label="Length, along the grain">{size('length', 'length', '')}</td>
                  <td data-label="Width">{size('width', 'width', '')}</td>
                  <td data-label="Thickness">{size('thickness', 'thickness', 'as the board')}</td>
                  <td data-label={price}>
                    <QuantityField
                      hideLabel
                      label={`${name}: price`}
                      path={[...at, i, 'price']}
                      kind="words"
                      placeholder="not given"
                    />
                  </td>
                  <td data-label="How many">
                    <QuantityField
                      hideLabel
                      label={`${name}: how many`}
                      path={[...at, i, 'count']}
                      kind="words"
                      placeholder="as needed"
                    />
                  </td>
                  <td>
                    <button
                      type="button"
                      className="small"
                      aria-label={`Remove sheet ${i + 1}`}
                      onClick={() => onRemove(i)}
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
        <button type="button" className="small" onClick={onAdd}>
          Add a sheet
        </button>
      </p>
    </div>
  );
}
