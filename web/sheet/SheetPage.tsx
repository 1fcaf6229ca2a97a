import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { AnswerError } from '#web/api/http.ts';
import { jobQuery } from '#web/api/queries.ts';
import type { JobSession } from '#web/draft/job-session.ts';
import { knownSession, openSession } from '#web/draft/sessions.ts';
import { PageTitle } from '#web/shell/PageTitle.tsx';
import { Trouble } from '#web/shell/Trouble.tsx';
import { OpenSheet } from './OpenSheet.tsx';

const route = getRouteApi('/jobs/$jobId');

/** Loads a job, or takes up its draft on this device when the server cannot be reached. */
export function SheetPage() {
  const { jobId } = route.useParams();
  return <Loaded key={jobId} jobId={jobId} />;
}

function Loaded({ jobId }: { readonly jobId: string }) {
  const { data, error, refetch, isFetching } = useQuery(jobQuery(jobId));
  const [session, setSession] = useState<JobSession | null>(() => knownSession(jobId));
  useEffect(() => {
    if (data !== undefined) setSession(openSession(jobId, data));
  }, [jobId, data]);
  if (session !== null) return <OpenSheet session={session} />;
  if (error instanceof AnswerError && (error.status === 404 || error.status === 400))
    return (
      <div className="page">
        <PageTitle name="Not found">There is no job here</PageTitle>
        <p>No job in this shop has this address. It may have been made on another server, or mistyped.</p>
        <p>
          <Link to="/jobs">All jobs</Link>
        </p>
      </div>
    );
  if (error !== null)
    return (
      <div className="page">
        <PageTitle name="Job">This job could not be opened</PageTitle>
        <Trouble title="No answer" error={error} retry={() => void refetch()} />
      </div>
    );
  return (
    <div className="page">
      <p role="status" className="waiting">
        {isFetching ? 'Opening the job …' : ''}
      </p>
    </div>
  );
}
