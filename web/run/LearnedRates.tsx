import { useEffect, useState } from 'react';
import type { RunEvent } from '#core/pour/run/run-event.ts';
import { formatPercent } from '#core/quantity/format.ts';
import { useShop, useShopChange } from '#web/api/queries.ts';
import { PACE_ROWS } from '#web/shop/rate-rows.ts';
import type { Speak } from '#web/units/speak.ts';
import { runStore } from './idb-log.ts';
import { type LearnedRate, learnedRates, type PouredRun } from './learned-rates.ts';

interface Props {
  readonly run: string;
  readonly events: readonly RunEvent[];
  readonly speak: Speak;
}

/** Pours of this device, the oldest first; the one on screen with what is on screen. */
function usePoured(run: string, events: readonly RunEvent[]): readonly PouredRun[] {
  const [poured, setPoured] = useState<readonly PouredRun[]>([]);
  useEffect(() => {
    let gone = false;
    const find = async () => {
      const { log, shelf } = await runStore();
      const all = [...(await shelf.all())].sort((a, b) => (a.openedAt < b.openedAt ? -1 : 1));
      const found = await Promise.all(
        all.map(async ({ id, pour }) => ({ pour, events: id === run ? events : await log.events(id) })),
      );
      if (!gone) setPoured(found);
    };
    find().catch(() => undefined);
    return () => {
      gone = true;
    };
  }, [run, events]);
  return poured;
}

/** How fast the shop really is, by its own pours: put in by a press of the button, never by itself. */
export function LearnedRates({ run, events, speak }: Props) {
  const shop = useShop();
  const { change, error } = useShopChange();
  const learned = learnedRates(usePoured(run, events), shop.rates);
  return (
    <section aria-labelledby="learned-name">
      <h2 id="learned-name">What the pours teach</h2>
      {learned.length === 0 ? (
        <p className="section-note">
          No step was timed yet: steps that are ticked off together teach nothing.
        </p>
      ) : (
        <ul className="plain-list run-learned">
          {learned.map((each) => (
            <li key={each.kind}>
              <p>
                <strong>{each.kind}</strong> takes {formatPercent(each.spread.factor)} of what is planned with
                today’s rates, by {each.runs} {each.runs === 1 ? 'run' : 'runs'}
                <span className="basis">
                  Drawn toward the present rate, which counts as much as three runs. {newRates(each, speak)}
                </span>
              </p>
              <button
                type="button"
                disabled={Math.abs(each.spread.factor - 1) < 0.005}
                onClick={() => change({ rates: { ...shop.rates, ...each.rates } })}
              >
                Use for {each.kind}
              </button>
            </li>
          ))}
        </ul>
      )}
      {error !== null && <p role="alert">The rates were not kept: {error.message}</p>}
    </section>
  );
}

function newRates({ rates }: LearnedRate, { system }: Speak): string {
  return PACE_ROWS.filter(({ key }) => rates[key] !== undefined)
    .map((row) => {
      const { unit, times } = row[system];
      return `${row.label}: ${Number((rates[row.key]! * times).toPrecision(3))} ${unit}`;
    })
    .join('; ');
}
