import { useQueries, useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { jobQuery, jobsQuery, useShop } from '#web/api/queries.ts';
import { useCards } from '#web/api/resin-queries.ts';
import type { JobSummary, StoredJob } from '#web/api/types.ts';
import { knownSession } from '#web/draft/sessions.ts';
import { useForecasts } from '#web/forecast/use-forecast.ts';
import { PageTitle } from '#web/shell/PageTitle.tsx';
import { Trouble } from '#web/shell/Trouble.tsx';
import { dayAndClock, localTime_ms } from '#web/units/dates.ts';
import { AirStrip } from './AirStrip.tsx';
import { JobStrip, type StripJob } from './JobStrip.tsx';
import { HOURS_SHOWN, jobMoments, nowAndNext, onTheGo, SPAN_MS } from './job-moments.ts';
import { useNow } from './use-now.ts';

/** A job can be on the strip when it is worked on and its first pour is not beyond the end of it. */
function candidate(job: JobSummary, now_ms: number): boolean {
  const first_ms = localTime_ms(job.firstPourAt);
  return !job.archived && job.stage !== 'handed over' && first_ms !== null && first_ms < now_ms + SPAN_MS;
}

/** What opens, what closes and what to do now, one strip a piece. */
export function TodayPage() {
  const { data, error, refetch } = useQuery(jobsQuery);
  const now_ms = useNow();
  const shop = useShop();
  const chosen = (data ?? []).filter((job) => candidate(job, now_ms));
  const loaded = useQueries({ queries: chosen.map((job) => jobQuery(job.id)) });
  const stored = loaded.map((each) => each.data).filter((job): job is StoredJob => job !== undefined);
  const asked = stored.map((job) => ({
    id: job.id,
    document: knownSession(job.id)?.state().document ?? job.document,
  }));
  const { ofShop } = useCards();
  const shown = useForecasts(asked, { rates: shop.rates, system: shop.system, cards: ofShop });
  const jobs = asked.flatMap(({ id, document }, i): StripJob[] => {
    const forecast = shown[i]?.forecast ?? null;
    if (forecast === null) return [];
    const moments = jobMoments(document, forecast);
    return onTheGo(moments, now_ms)
      ? [{ id, title: document.title, document, forecast, moments, ...nowAndNext(moments, now_ms) }]
      : [];
  });
  jobs.sort((a, b) => (a.next?.at_ms ?? Infinity) - (b.next?.at_ms ?? Infinity));
  const failed = asked.flatMap(({ id, document }, i) => {
    const why = shown[i]?.failed ?? null;
    return why === null || shown[i]?.forecast !== null ? [] : [{ id, title: document.title, why }];
  });
  const unread = loaded.filter((each) => each.isError).length;
  const computing =
    loaded.some((each) => each.isPending) || shown.some((each) => each.forecast === null && each.behind);
  return (
    <div className="page">
      <PageTitle name="Today">
        Today <span className="title-aside">{dayAndClock(now_ms, shop.system)}</span>
      </PageTitle>
      {error !== null && data === undefined ? (
        <Trouble title="The jobs could not be read" error={error} retry={() => void refetch()} />
      ) : (
        <>
          <AirStrip jobs={jobs} now_ms={now_ms} system={shop.system} />
          <section aria-labelledby="on-the-go">
            <h2 id="on-the-go">On the go, next {HOURS_SHOWN} hours</h2>
            {jobs.map((job) => (
              <JobStrip key={job.id} job={job} now_ms={now_ms} system={shop.system} />
            ))}
            {failed.map((job) => (
              <p key={job.id} className="problem-block">
                <Link to="/jobs/$jobId" params={{ jobId: job.id }}>
                  {job.title || 'Without a title'}
                </Link>
                : the forecast could not be computed ({job.why}).
              </p>
            ))}
            {unread > 0 && (
              <p className="problem-block">
                {unread === 1 ? 'One job' : `${unread} jobs`} could not be read, so the strips are not
                complete.
              </p>
            )}
            {jobs.length === 0 && failed.length === 0 && (
              <p className="empty" role="status">
                {data === undefined || computing
                  ? 'Computing the strips …'
                  : 'Nothing is poured, cures or opens in the next three days. A job comes here when a coat has a start.'}
              </p>
            )}
          </section>
          <Waiting jobs={(data ?? []).filter((job) => !job.archived && !jobs.some((j) => j.id === job.id))} />
        </>
      )}
    </div>
  );
}

/** Jobs that are agreed or being built and have no pour on the strip. */
function Waiting({ jobs }: { readonly jobs: readonly JobSummary[] }) {
  const shop = useShop();
  const open = jobs.filter((job) => job.stage !== 'handed over');
  if (open.length === 0) return null;
  return (
    <section aria-labelledby="not-yet" className="not-yet">
      <h2 id="not-yet">Not on the strip</h2>
      <ul className="plain-list">
        {open.map((job) => {
          const first_ms = localTime_ms(job.firstPourAt);
          return (
            <li key={job.id}>
              <Link to="/jobs/$jobId" params={{ jobId: job.id }}>
                {job.title || 'Without a title'}
              </Link>
              , {job.stage},{' '}
              {first_ms === null ? 'no pour time yet' : `first pour ${dayAndClock(first_ms, shop.system)}`}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
