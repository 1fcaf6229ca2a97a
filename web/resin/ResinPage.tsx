import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { AnswerError } from '#web/api/http.ts';
import { resinQuery } from '#web/api/resin-queries.ts';
import { knownResinSession, openResinSession, type ResinSession } from '#web/draft/sessions.ts';
import { PageTitle } from '#web/shell/PageTitle.tsx';
import { Trouble } from '#web/shell/Trouble.tsx';
import { OpenCard } from './OpenCard.tsx';

const route = getRouteApi('/resins/$resinId');

/** Loads a resin card, or takes up its draft on this device when the server cannot be reached. */
export function ResinPage() {
  const { resinId } = route.useParams();
  return <Loaded key={resinId} id={resinId} />;
}

function Loaded({ id }: { readonly id: string }) {
  const { data, error, refetch } = useQuery(resinQuery(id));
  const [session, setSession] = useState<ResinSession | null>(() => knownResinSession(id));
  useEffect(() => {
    if (data !== undefined) setSession(openResinSession(id, data));
  }, [id, data]);
  if (session !== null) return <OpenCard id={id} session={session} archived={data?.archived ?? false} />;
  if (error instanceof AnswerError && (error.status === 404 || error.status === 400))
    return (
      <div className="page">
        <PageTitle name="Not found">There is no resin card here</PageTitle>
        <p>No card of this shop has this address. The generic cards are listed with the others.</p>
        <p>
          <Link to="/resins">All resins</Link>
        </p>
      </div>
    );
  if (error !== null)
    return (
      <div className="page">
        <PageTitle name="Resin">This card could not be opened</PageTitle>
        <Trouble title="No answer" error={error} retry={() => void refetch()} />
      </div>
    );
  return (
    <div className="page">
      <p role="status" className="waiting">
        Opening the card …
      </p>
    </div>
  );
}
