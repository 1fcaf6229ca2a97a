import { Link } from '@tanstack/react-router';
import type { JobDocument } from '#core/job/document.ts';
import type { JobForecast } from '#core/job/forecast.ts';
import type { System } from '#core/quantity/units.ts';
import { dayAndClock } from '#web/units/dates.ts';
import { type JobMoments, type NowAndNext, SPAN_MS } from './job-moments.ts';
import { Strip } from './Strip.tsx';

export interface StripJob extends NowAndNext {
  readonly id: string;
  readonly title: string;
  readonly document: JobDocument;
  readonly forecast: JobForecast;
  readonly moments: JobMoments;
}

interface Props {
  readonly job: StripJob;
  readonly now_ms: number;
  readonly system: System;
}

/** One piece: what holds now, what comes next, and the next three days drawn. */
export function JobStrip({ job, now_ms, system }: Props) {
  const coming = job.moments.moments.filter((m) => m.at_ms > now_ms && m.at_ms <= now_ms + SPAN_MS);
  return (
    <article className="strip">
      <h3>
        <Link to="/jobs/$jobId" params={{ jobId: job.id }}>
          {job.title || 'Without a title'}
        </Link>{' '}
        <span className="of">
          {[job.document.customer.name, job.document.agreed.stage].filter(Boolean).join(', ')}
        </span>
      </h3>
      <p className="strip-now">
        {job.now.length > 0 ? (
          job.now.map((span) => (
            <span key={span.coat + span.kind} data-kind={span.kind}>
              <strong>Now</strong> {span.label} until {dayAndClock(span.to_ms, system)}
            </span>
          ))
        ) : (
          <span>
            <strong>Now</strong> nothing to do
          </span>
        )}
        {job.next !== null && (
          <span>
            <strong>Next</strong> {job.next.label}, {job.next.high_ms > job.next.low_ms ? 'about ' : ''}
            {dayAndClock(job.next.at_ms, system)}
          </span>
        )}
      </p>
      <Strip job={job} now_ms={now_ms} system={system} />
      {coming.length > 0 && (
        <details className="strip-list">
          <summary>All {coming.length} that come</summary>
          <ol>
            {coming.map((moment) => (
              <li key={moment.coat + moment.key}>
                <span className="strip-when">{dayAndClock(moment.at_ms, system)}</span> {moment.label}
                {moment.high_ms > moment.low_ms && (
                  <span className="basis">
                    between {dayAndClock(moment.low_ms, system)} and {dayAndClock(moment.high_ms, system)}
                  </span>
                )}
              </li>
            ))}
          </ol>
        </details>
      )}
    </article>
  );
}
