import './run.css';
import { getRouteApi, Link } from '@tanstack/react-router';
import { PageTitle } from '#web/shell/PageTitle.tsx';
import { Trouble } from '#web/shell/Trouble.tsx';
import { RunScreen } from './RunScreen.tsx';
import { useOpenRun } from './use-run.ts';

const route = getRouteApi('/run/$runId');

/** One pour, full screen: from this device, or fetched once from the server. */
export function RunPage() {
  const { runId } = route.useParams();
  return <Opened key={runId} runId={runId} />;
}

function Opened({ runId }: { readonly runId: string }) {
  const opened = useOpenRun(runId);
  switch (opened.state) {
    case 'open':
      return <RunScreen kept={opened.kept} session={opened.session} lasting={opened.lasting} />;
    case 'missing':
      return (
        <div className="page">
          <PageTitle name="Not found">There is no pour here</PageTitle>
          <p>
            Neither this device nor the shop’s server has a pour at this address. Pours are opened from the
            steps of a job.
          </p>
          <p>
            <Link to="/jobs">All jobs</Link>
          </p>
        </div>
      );
    case 'failed':
      return (
        <div className="page">
          <PageTitle name="Pour">This pour could not be opened</PageTitle>
          <Trouble
            title="It is not on this device, and it could not be fetched"
            error={opened.error}
            retry={() => window.location.reload()}
          />
        </div>
      );
    default:
      return (
        <div className="page">
          <p role="status" className="waiting">
            Opening the pour …
          </p>
        </div>
      );
  }
}
