import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import type { FilmTimes } from '#core/pour/film-times.ts';
import { formatRange } from '#core/quantity/format.ts';
import { getJob } from '#web/api/jobs-api.ts';
import { setAt } from '#web/draft/at-path.ts';
import { openSession } from '#web/draft/sessions.ts';
import { dayAndClock } from '#web/units/dates.ts';
import type { Speak } from '#web/units/speak.ts';
import { localText } from './local-text.ts';
import type { KeptRun } from './run-shelf.ts';

interface Props {
  readonly kept: KeptRun;
  readonly film: FilmTimes;
  readonly zero_ms: number;
  readonly speak: Speak;
}

/** When the film as it was really poured gets where; and the real start handed to the job, whose windows then count from it. */
export function CureTimes({ kept, film, zero_ms, speak }: Props) {
  const [said, setSaid] = useState<string | null>(null);
  const told = kept.pour.plan.stages.map(({ key, label }) => ({ key, label, at: film.stages[TIMES[key]] }));
  const startsAt = localText(zero_ms);
  const hand = async () => {
    try {
      const session = openSession(kept.jobId, await getJob(kept.jobId));
      const at = session.state().document.coats.findIndex(({ id }) => id === kept.coatId);
      if (at < 0) return setSaid('This coat is no longer in the job.');
      session.edit('Real start of the pour', `coats.${at}.startsAt`, (document) =>
        setAt(document, ['coats', at, 'startsAt'], startsAt),
      );
      session.saveNow();
      setSaid('The job counts from the real start now; it can be undone on the job sheet.');
    } catch (error) {
      setSaid(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <section aria-labelledby="cure-name">
      <h2 id="cure-name">The cure, from the real times</h2>
      <table className="ledger stages">
        <thead>
          <tr>
            <th scope="col">Stage</th>
            <th scope="col" className="number">
              After the first mix
            </th>
          </tr>
        </thead>
        <tbody>
          {told.map(({ key, label, at }) => (
            <tr key={key}>
              <th scope="row">{label}</th>
              <td className="number">
                {at === null
                  ? 'not within the forecast'
                  : formatRange(at.low_s, at.mid_s, at.high_s, 'duration', speak.system)}
                {at !== null && (
                  <span className="basis">{dayAndClock(zero_ms + at.mid_s * 1000, speak.system)}</span>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="actions">
        <button type="button" onClick={() => void hand()}>
          Put the real start in the job
        </button>
        <Link to="/jobs/$jobId" params={{ jobId: kept.jobId }} hash="forecast">
          Forecast of the job
        </Link>
      </p>
      <p role="status">{said}</p>
    </section>
  );
}

const TIMES = {
  'working end': 'workingEnd_s',
  'no more levelling': 'noMoreLevelling_s',
  gel: 'gel_s',
  'recoat opens': 'recoatOpens_s',
  'recoat best from': 'recoatBestFrom_s',
  'recoat best to': 'recoatBestTo_s',
  'recoat closes': 'recoatCloses_s',
  'dry hard': 'dryHard_s',
  sandable: 'sandable_s',
  handle: 'handle_s',
  'in use': 'inUse_s',
  'full cure': 'fullCure_s',
} as const;
