import { Link } from '@tanstack/react-router';
import { useEffect } from 'react';
import { PageTitle } from '#web/shell/PageTitle.tsx';
import { speaker } from '#web/units/speak.ts';
import { CarriedLine } from './CarriedLine.tsx';
import { ClockDoubtDialog } from './ClockDoubtDialog.tsx';
import { PourScreen } from './PourScreen.tsx';
import { Readiness } from './Readiness.tsx';
import type { RunSession } from './run-session.ts';
import type { KeptRun } from './run-shelf.ts';
import { useRunView } from './use-run.ts';
import { keepScreenOn } from './wake-lock.ts';

interface Props {
  readonly kept: KeptRun;
  readonly session: RunSession;
  readonly lasting: boolean;
}

/** Before the pour the list, during it the screen, after it what it came to. */
export function RunScreen({ kept, session, lasting }: Props) {
  const view = useRunView(session);
  const { started_s, finished_s } = view.state;
  const speak = speaker(kept.pour.inputs.system ?? 'us');
  const under = started_s !== null && finished_s === null;
  useEffect(() => (under ? keepScreenOn() : undefined), [under]);
  return (
    <div className="run" data-pouring={under || undefined}>
      <header className="run-head">
        <PageTitle name={kept.title}>{kept.title}</PageTitle>
        <CarriedLine carried={view.carried} kept={view.kept && lasting} />
        <Link className="run-leave" to="/jobs/$jobId" params={{ jobId: kept.jobId }} hash="steps">
          Job sheet
        </Link>
      </header>
      {started_s === null ? (
        <Readiness kept={kept} session={session} view={view} speak={speak} />
      ) : (
        <PourScreen kept={kept} session={session} view={view} speak={speak} />
      )}
      <ClockDoubtDialog session={session} doubt={view.doubt} speak={speak} />
    </div>
  );
}
