import { DEFAULT_SPREADS, type PourSpreads, type TimedKind } from '#core/pour/chance/spreads.ts';
import type { System } from '#core/quantity/units.ts';
import { KeptField } from './KeptField.tsx';
import { backToDefault, isOwn, readSpread, SPREAD_ROWS, showSpread } from './spread-rows.ts';

interface Props {
  readonly spreads: PourSpreads;
  readonly system: System;
  readonly onChange: (spreads: PourSpreads) => void;
}

/** How evenly this shop works: what the chance to finish rests on, each with its default and a way back to it. */
export function SpreadsTable({ spreads, system, onChange }: Props) {
  const own = SPREAD_ROWS.filter((row) => isOwn(row, spreads, system));
  return (
    <>
      <table className="ledger rates">
        <caption className="unseen">How evenly this shop works</caption>
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
          {SPREAD_ROWS.map((row) => {
            const unit = row.unit(system);
            const changed = own.includes(row);
            return (
              <tr key={row.key}>
                <th scope="row">{row.label}</th>
                <td data-label="Yours">
                  <KeptField
                    key={system}
                    id={`spread-${row.key.replaceAll(' ', '-')}`}
                    hideLabel
                    label={`${row.label}, in ${unit}`}
                    inputMode="decimal"
                    className="rate-field"
                    maxLength={20}
                    value={showSpread(row, spreads, system)}
                    keep={(typed) => {
                      const read = readSpread(row, spreads, typed, system);
                      if (!read.ok) return read.problems[0] ?? null;
                      onChange(read.value);
                      return null;
                    }}
                  />
                </td>
                <td data-label="Unit">{unit}</td>
                <td data-label="Shop default">
                  {showSpread(row, DEFAULT_SPREADS, system)} {unit}
                  <span className="basis">{basis(row.key, changed, spreads)}</span>
                </td>
                <td>
                  {changed && (
                    <button
                      type="button"
                      className="small"
                      aria-label={`Back to the shop default: ${row.label}`}
                      onClick={() => onChange(backToDefault(row, spreads, system))}
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
        <button type="button" disabled={own.length === 0} onClick={() => onChange(DEFAULT_SPREADS)}>
          Reset all to the shop defaults
        </button>
      </p>
    </>
  );
}

function basis(key: string, changed: boolean, { steps }: PourSpreads): string {
  const kind = (Object.keys(steps) as TimedKind[]).find((each) => key.startsWith(`${each} `));
  const runs = kind === undefined ? 0 : steps[kind].runs;
  if (runs > 0) return `yours is used; it rests on ${runs} ${runs === 1 ? 'run' : 'runs'}`;
  return changed ? 'yours is used' : 'used; common practice, no source';
}
