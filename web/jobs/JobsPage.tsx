import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { emptyJob, STAGES } from '#core/job/document.ts';
import { createJob } from '#web/api/jobs-api.ts';
import { jobsQuery } from '#web/api/queries.ts';
import { uuid7 } from '#web/draft/uuid7.ts';
import { PageTitle } from '#web/shell/PageTitle.tsx';
import { Trouble } from '#web/shell/Trouble.tsx';
import { toast } from '#web/shell/toasts.tsx';
import { filterJobs } from './filter-jobs.ts';
import { ImportJobs } from './ImportJobs.tsx';
import { JobLedger } from './JobLedger.tsx';

/** Every job of the shop in one ledger. */
export function JobsPage() {
  const { data, error, refetch, isPending } = useQuery(jobsQuery);
  const [words, setWords] = useState('');
  const [stage, setStage] = useState('');
  const [archived, setArchived] = useState(false);
  const shown = useMemo(
    () => filterJobs(data ?? [], { words, stage, archived }),
    [data, words, stage, archived],
  );
  const inArchive = (data ?? []).filter((job) => job.archived).length;
  return (
    <div className="page">
      <div className="page-head">
        <PageTitle name="Jobs">Jobs</PageTitle>
        <NewJob />
      </div>
      <search className="ledger-tools">
        <label className="field tool-search">
          <span className="field-label">Search title and customer</span>
          <input type="search" value={words} onChange={(event) => setWords(event.target.value)} />
        </label>
        <label className="field">
          <span className="field-label">Stage</span>
          <select value={stage} onChange={(event) => setStage(event.target.value)}>
            <option value="">all</option>
            {STAGES.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </label>
        <label className="tick-box">
          <input type="checkbox" checked={archived} onChange={(event) => setArchived(event.target.checked)} />
          <span>Archive ({inArchive})</span>
        </label>
      </search>
      {error !== null && data === undefined ? (
        <Trouble title="The jobs could not be read" error={error} retry={() => void refetch()} />
      ) : isPending ? (
        <p className="waiting" role="status">
          Reading the jobs …
        </p>
      ) : shown.length > 0 ? (
        <JobLedger jobs={shown} />
      ) : (
        <p className="empty" role="status">
          {data?.length === 0
            ? 'No jobs yet. Start one, or bring one in as a file.'
            : archived && inArchive === 0
              ? 'Nothing is archived.'
              : 'No job fits this search.'}
        </p>
      )}
      <ImportJobs />
    </div>
  );
}

function NewJob() {
  const navigate = useNavigate();
  const queries = useQueryClient();
  const create = useMutation({
    mutationFn: async () => {
      const id = uuid7();
      await createJob(id, uuid7(), emptyJob('New job'));
      return id;
    },
    onSuccess: (id) => {
      void queries.invalidateQueries({ queryKey: jobsQuery.queryKey });
      void navigate({ to: '/jobs/$jobId', params: { jobId: id } });
    },
    onError: (error) => toast(`The job was not made: ${error.message}`),
  });
  return (
    <button type="button" className="primary" disabled={create.isPending} onClick={() => create.mutate()}>
      New job
    </button>
  );
}
