import { useMutation, useQueries, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { archiveJob, restoreJob } from '#web/api/jobs-api.ts';
import { jobQuery, jobsQuery, useShop } from '#web/api/queries.ts';
import type { JobSummary, StoredJob } from '#web/api/types.ts';
import { toast } from '#web/shell/toasts.tsx';
import { dayAndClock, dayText, localTime_ms } from '#web/units/dates.ts';
import { speaker } from '#web/units/speak.ts';
import { saveAsFile } from './download.ts';
import { nextPour_ms } from './next-pour.ts';
import { sayPieceSize } from './piece-size.ts';

/** The list as a ledger: one line a job, ruled, with what is due and how large it is. */
export function JobLedger({ jobs }: { readonly jobs: readonly JobSummary[] }) {
  const shop = useShop();
  const speak = speaker(shop.system);
  const loaded = useQueries({ queries: jobs.map((job) => ({ ...jobQuery(job.id), staleTime: 60_000 })) });
  const now = Date.now();
  return (
    <table className="ledger jobs">
      <caption className="unseen">Jobs</caption>
      <thead>
        <tr>
          <th scope="col">Job</th>
          <th scope="col">Stage</th>
          <th scope="col">Promised</th>
          <th scope="col">Next pour</th>
          <th scope="col">Piece</th>
          <th scope="col">
            <span className="unseen">Actions</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {jobs.map((job, i) => {
          const stored = loaded[i]?.data;
          const promised_ms = localTime_ms(job.handOver);
          const overdue =
            promised_ms !== null && promised_ms + 86_400_000 < now && job.stage !== 'handed over';
          const next = nextPour_ms(stored?.document, job.firstPourAt, now);
          return (
            <tr key={job.id}>
              <th scope="row">
                <Link to="/jobs/$jobId" params={{ jobId: job.id }} className="job-link">
                  {job.title || 'Without a title'}
                </Link>
                <span className="basis">{job.customerName || 'no customer yet'}</span>
              </th>
              <td data-label="Stage">{job.stage}</td>
              <td data-label="Promised">
                {job.handOver === '' ? (
                  <span className="none">not yet</span>
                ) : (
                  dayText(job.handOver, shop.system)
                )}
                {overdue && <span className="overdue">overdue</span>}
              </td>
              <td data-label="Next pour">
                {next === null ? <span className="none">none set</span> : dayAndClock(next, shop.system)}
              </td>
              <td data-label="Piece">
                {stored === undefined
                  ? ''
                  : (sayPieceSize(stored.document, speak) ?? <span className="none">no sizes</span>)}
              </td>
              <td className="row-actions">
                <RowActions job={job} stored={stored} />
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

interface RowProps {
  readonly job: JobSummary;
  readonly stored: StoredJob | undefined;
}

function RowActions({ job, stored }: RowProps) {
  const queries = useQueryClient();
  const name = job.title || 'job without a title';
  const refresh = () => queries.invalidateQueries({ queryKey: jobsQuery.queryKey });
  const change = useMutation({
    mutationFn: (into: 'archive' | 'list') => (into === 'archive' ? archiveJob(job.id) : restoreJob(job.id)),
    onSuccess: (_done, into) => {
      void refresh();
      toast(into === 'archive' ? `“${name}” is in the archive.` : `“${name}” is back in the list.`, {
        label: 'Undo',
        run: () => change.mutate(into === 'archive' ? 'list' : 'archive'),
      });
    },
    onError: (error) => toast(`Nothing changed: ${error.message}`),
  });
  return (
    <>
      <button
        type="button"
        className="small"
        disabled={stored === undefined}
        aria-label={`Download ${name}`}
        onClick={() => stored !== undefined && saveAsFile(stored.document)}
      >
        Download
      </button>
      <button
        type="button"
        className="small"
        disabled={change.isPending}
        aria-label={`${job.archived ? 'Restore' : 'Archive'} ${name}`}
        onClick={() => change.mutate(job.archived ? 'list' : 'archive')}
      >
        {job.archived ? 'Restore' : 'Archive'}
      </button>
    </>
  );
}
