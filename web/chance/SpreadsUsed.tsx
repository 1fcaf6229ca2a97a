import { Link } from '@tanstack/react-router';
import type { PourSpreads, TimedKind } from '#core/pour/chance/spreads.ts';
import { formatDuration, formatPercent, formatTemperatureDifference } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import { KIND_WORDS, restsOn, spreadSays } from './chance-words.ts';

interface Props {
  readonly spreads: PourSpreads;
  readonly system: System;
}

/** What the chance assumes of durations, temperature and interruptions, and what each figure rests on. */
export function SpreadsUsed({ spreads, system }: Props) {
  const { steps, temperature_K, common, pause } = spreads;
  return (
    <details className="spreads-used">
      <summary>What this chance assumes</summary>
      <table className="ledger">
        <caption>How long steps really take, two times in three</caption>
        <thead>
          <tr>
            <th scope="col">Step</th>
            <th scope="col">Takes</th>
            <th scope="col">Rests on</th>
          </tr>
        </thead>
        <tbody>
          {(Object.keys(KIND_WORDS) as TimedKind[]).map((kind) => (
            <tr key={kind}>
              <th scope="row">{KIND_WORDS[kind]}</th>
              <td data-label="Takes">{spreadSays(steps[kind])}</td>
              <td data-label="Rests on">{restsOn(kind, steps[kind])}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        {formatPercent(common)} of that scatter is the day's: a slow day is slow at every step. The shop is
        within {formatTemperatureDifference(temperature_K, system)} of what was read, two times in three. In{' '}
        {formatPercent(pause.chance)} of the pours something stops the work once, for about{' '}
        {formatDuration(pause.mid_s)}. The resin is drawn from what its card knows of it.
      </p>
      <p>
        <Link to="/shop" hash="shop-spreads">
          Change these for the shop
        </Link>
      </p>
    </details>
  );
}
