import { useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import type { JobForecast } from '#core/job/forecast.ts';
import { type Change, changedSince } from '#core/pour/run/changed-since.ts';
import { type FrozenPour, freezePour } from '#core/pour/run/frozen-pour.ts';
import { uuid7 } from '#web/draft/uuid7.ts';
import { dayAndClock } from '#web/units/dates.ts';
import type { Speak } from '#web/units/speak.ts';
import { runStore } from './idb-log.ts';
import { listRuns } from './runs-api.ts';

interface Props {
  readonly jobId: string;
  readonly coatId: string;
  readonly title: string;
  readonly forecast: JobForecast;
  readonly speak: Speak;
}

interface KnownRun {
  readonly id: string;
  readonly coatId: string;
  readonly openedAt: string;
  /** On this device: the plan as it was. */
  readonly pour?: FrozenPour;
}

/** Runs of a job on this device and, when it answers, on the server; newest first. */
async function knownRuns(jobId: string): Promise<readonly KnownRun[]> {
  const { shelf } = await runStore();
  const [here, there] = await Promise.all([
    shelf.ofJob(jobId),
    listRuns(jobId).catch((): readonly KnownRun[] => []),
  ]);
  const all = new Map<string, KnownRun>([...there, ...here].map((run) => [run.id, run]));
  return [...all.values()].sort((a, b) => (a.openedAt < b.openedAt ? 1 : -1));
}

/** Opens the pour of a planned coat, frozen as planned now, and lists those opened before. */
export function PourLinks({ jobId, coatId, title, forecast, speak }: Props) {
  const navigate = useNavigate();
  const queries = useQueryClient();
  const key = ['runs', jobId];
  const runs = useQuery({ queryKey: key, queryFn: () => knownRuns(jobId) });
  const [failed, setFailed] = useState<string | null>(null);
  const coat = forecast.coats.find(({ id }) => id === coatId);
  const mine = (runs.data ?? []).filter((run) => run.coatId === coatId);
  if (coat?.plan == null || coat.request === null) return null;
  const { plan, request } = coat;
  const nowPlanned = { inputs: request, plan, modelVersion: forecast.modelVersion };
  const open = async () => {
    try {
      const { shelf } = await runStore();
      const id = uuid7();
      const pour = freezePour(request, plan, forecast.modelVersion);
      // browsers clear away what was not asked to stay, when room is short
      void navigator.storage?.persist?.().catch(() => false);
      await shelf.keep({
        id,
        jobId,
        coatId,
        title,
        openedAt: new Date().toISOString(),
        pour,
        offered: false,
      });
      void queries.invalidateQueries({ queryKey: key });
      await navigate({ to: '/run/$runId', params: { runId: id } });
    } catch (error) {
      setFailed(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <div className="pour-links">
      <p className="actions">
        <button type="button" className="primary" onClick={() => void open()}>
          Open the pour
        </button>
        <span className="of">The plan is kept as it is now, and runs without a network.</span>
      </p>
      {failed !== null && <p role="alert">The pour could not be opened: {failed}</p>}
      {mine.length > 0 && (
        <>
          <h4>Opened before</h4>
          <ul className="plain-list">
            {mine.map((run) => (
              <li key={run.id}>
                <Link to="/run/$runId" params={{ runId: run.id }}>
                  Pour of {dayAndClock(Date.parse(run.openedAt), speak.system)}
                </Link>
                {run.pour !== undefined && (
                  <Changes list={changedSince(run.pour, nowPlanned, speak.system)} />
                )}
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

/** What the plan on the sheet rests on now and did not when a pour was opened. */
function Changes({ list }: { readonly list: readonly Change[] }) {
  if (list.length === 0) return null;
  return (
    <details>
      <summary>
        Planned from other figures than now: {list.map(({ what }) => what.toLowerCase()).join(', ')}
      </summary>
      <ul>
        {list.map(({ what, before, now }) => (
          <li key={what}>
            {what}: {before} then, {now} now
          </li>
        ))}
      </ul>
    </details>
  );
}
