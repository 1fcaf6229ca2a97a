import { SHOP_DEFAULTS, type ShopRates } from '#core/pour/shop-rates.ts';
import type { System } from '#core/quantity/units.ts';
import { KeptField } from './KeptField.tsx';
import { type RateRow, readRate, showRate } from './rate-rows.ts';

interface Props {
  readonly rows: readonly RateRow[];
  readonly caption: string;
  readonly rates: ShopRates;
  readonly system: System;
  readonly onChange: (rates: ShopRates) => void;
}

/** Each speed with the shop default beside it, and a way back to it. */
export function RatesTable({ rows, caption, rates, system, onChange }: Props) {
  const own = rows.filter((row) => rates[row.key] !== SHOP_DEFAULTS[row.key]).length;
  return (
    <>
      <table className="ledger rates">
        <caption className="unseen">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Yours</th>
            <th scope="col">Unit</th>
            <th scope="col">Shop default: common practice, no source</th>
            <th scope="col">
              <span className="unseen">Reset</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => {
            const changed = rates[row.key] !== SHOP_DEFAULTS[row.key];
            const { unit } = row[system];
            return (
              <tr key={row.key}>
                <th scope="row">{row.label}</th>
                <td data-label="Yours">
                  <KeptField
                    key={system}
                    id={`rate-${row.key}`}
                    hideLabel
                    label={`${row.label}, in ${unit}`}
                    inputMode="decimal"
                    value={showRate(row, system, rates[row.key])}
                    className="rate-field"
                    maxLength={20}
                    keep={(typed) => {
                      const read = readRate(row, system, typed);
                      if (!read.ok) return read.problems[0] ?? null;
                      onChange({ ...rates, [row.key]: read.value });
                      return null;
                    }}
                  />
                </td>
                <td data-label="Unit">{unit}</td>
                <td data-label="Shop default">
                  {showRate(row, system, SHOP_DEFAULTS[row.key])} {unit}
                  <span className="basis">
                    {changed ? 'yours is used' : 'used; common practice, no source'}
                  </span>
                </td>
                <td>
                  {changed && (
                    <button
                      type="button"
                      className="small"
                      aria-label={`Back to the shop default: ${row.label}`}
                      onClick={() => onChange({ ...rates, [row.key]: SHOP_DEFAULTS[row.key] })}
                    >
                      Reset
                    </button>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <p>
        <button
          type="button"
          disabled={own === 0}
          onClick={() => onChange({ ...rates, ...defaultsOf(rows) })}
        >
          Reset all to the shop defaults
        </button>
      </p>
    </>
  );
}

function defaultsOf(rows: readonly RateRow[]): Partial<ShopRates> {
  return Object.fromEntries(rows.map(({ key }) => [key, SHOP_DEFAULTS[key]]));
}
