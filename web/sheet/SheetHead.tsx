import { Link } from '@tanstack/react-router';
import type { JobSession, SessionState } from '#web/draft/job-session.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { saveAsFile } from '#web/jobs/download.ts';
import { PageTitle } from '#web/shell/PageTitle.tsx';
import { dayAndClock, localTime_ms } from '#web/units/dates.ts';
import { useSheet } from './context.tsx';
import { openField } from './Section.tsx';

interface Props {
  readonly session: JobSession;
  readonly state: SessionState;
  readonly failed: string | null;
}

/** Title block of the work order: the job, where it stands, what can be done with the sheet as a whole. */
export function SheetHead({ session, state, failed }: Props) {
  const { document, behind, speak } = useSheet();
  const first = document.coats
    .map((coat) => coat.startsAt)
    .filter((at) => at !== '')
    .sort()[0];
  const first_ms = first === undefined ? null : localTime_ms(first);
  return (
    <header className="sheet-head">
      <p className="crumb">
        <Link to="/jobs">Jobs</Link>
      </p>
      <div className="sheet-title">
        <PageTitle name={document.title || 'Job without a title'}>
          {document.title || 'Job without a title'}
        </PageTitle>
        <p className="sheet-sub">
          {[
            document.customer.name || 'no customer yet',
            document.agreed.stage,
            first_ms === null ? 'no pour time yet' : `first pour ${dayAndClock(first_ms, speak.system)}`,
          ].join(' · ')}
        </p>
      </div>
      <div className="sheet-actions" role="toolbar" aria-label="The whole sheet">
        <button
          type="button"
          onClick={() => session.undo()}
          disabled={state.undoLabel === null}
          title="Ctrl+Z"
        >
          Undo<span className="unseen">{state.undoLabel === null ? '' : `: ${state.undoLabel}`}</span>
        </button>
        <button
          type="button"
          onClick={() => session.redo()}
          disabled={state.redoLabel === null}
          title="Ctrl+Shift+Z"
        >
          Redo<span className="unseen">{state.redoLabel === null ? '' : `: ${state.redoLabel}`}</span>
        </button>
        <button type="button" onClick={() => saveAsFile(document)}>
          Download
        </button>
        <button type="button" onClick={() => window.print()}>
          Print work order
        </button>
      </div>
      {state.resumed && state.save !== 'saved' && (
        <p className="sheet-note">
          What you typed last time was still on this device and has been taken up again.
        </p>
      )}
      {!state.kept && (
        <p className="sheet-note stop" role="alert">
          This device has no room to keep what you type. Download the job, or free some space, before you
          leave.
        </p>
      )}
      {state.save === 'offline' && (
        <p className="sheet-note stop" role="alert">
          Not saved yet. {state.reason} Everything you type is kept on this device and saved as soon as the
          server answers.{' '}
          <button type="button" className="linklike" onClick={() => session.saveNow()}>
            Try now
          </button>
        </p>
      )}
      {state.save === 'refused' && (
        <div className="sheet-note stop" role="alert">
          <p>
            The server did not take the job, and nothing is lost: it is kept on this device until this is put
            right.
          </p>
          <ul>
            {state.problems.slice(0, 8).map((problem) => (
              <li key={problem.path + problem.code}>
                <ProblemText problem={problem} />
                <button type="button" className="linklike" onClick={() => openField(problem.path)}>
                  Show the field
                </button>
              </li>
            ))}
          </ul>
        </div>
      )}
      {failed !== null && (
        <p className="sheet-note stop" role="alert">
          The forecast could not be computed for these figures ({failed}). The one shown is from before.
        </p>
      )}
      <p className="unseen" role="status">
        {behind ? 'Computing the forecast' : 'Forecast up to date'}
      </p>
    </header>
  );
}
