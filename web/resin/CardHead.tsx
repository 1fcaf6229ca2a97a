import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { ResinCardDocument } from '#core/resin/card-document.ts';
import { fittedQuery, resinQuery, resinsQuery } from '#web/api/resin-queries.ts';
import { archiveResin } from '#web/api/resins-api.ts';
import type { SessionState } from '#web/draft/job-session.ts';
import type { ResinSession } from '#web/draft/sessions.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { ProseField, TextField } from '#web/field/sheet-fields.tsx';
import { PageTitle } from '#web/shell/PageTitle.tsx';
import { toast } from '#web/shell/toasts.tsx';
import { useCard } from './card-context.tsx';

interface Props {
  readonly session: ResinSession;
  readonly state: SessionState<ResinCardDocument>;
  readonly archived: boolean;
}

/** The card's name, where it stands, and what can be done with it as a whole. */
export function CardHead({ session, state, archived }: Props) {
  const { id, document, shown } = useCard();
  const queries = useQueryClient();
  const put = useMutation({
    mutationFn: (away: boolean) => archiveResin(id, away),
    onSuccess: (_, away) => {
      for (const { queryKey } of [resinsQuery, fittedQuery, resinQuery(id)])
        void queries.invalidateQueries({ queryKey });
      toast(away ? 'In the archive. Jobs that use it keep it.' : 'Out of the archive.');
    },
    onError: (error) => toast(`Nothing was changed: ${error.message}`),
  });
  return (
    <header className="sheet-head resin-head">
      <p className="crumb">
        <Link to="/resins">Resins</Link>
      </p>
      <div className="sheet-title">
        <PageTitle name={document.name || 'Resin card'}>{document.name || 'Resin card'}</PageTitle>
        <p className="sheet-sub">
          {archived ? 'In the archive. ' : ''}A job uses it as <code>{id}</code>.
        </p>
      </div>
      <div className="sheet-actions" role="toolbar" aria-label="The whole card">
        <button type="button" onClick={() => session.undo()} disabled={state.undoLabel === null}>
          Undo<span className="unseen">{state.undoLabel === null ? '' : `: ${state.undoLabel}`}</span>
        </button>
        <button type="button" onClick={() => session.redo()} disabled={state.redoLabel === null}>
          Redo<span className="unseen">{state.redoLabel === null ? '' : `: ${state.redoLabel}`}</span>
        </button>
        <button type="button" disabled={put.isPending} onClick={() => put.mutate(!archived)}>
          {archived ? 'Take out of the archive' : 'Archive'}
        </button>
      </div>
      {!state.kept && (
        <p className="sheet-note stop" role="alert">
          This device has no room to keep what you type. Free some space before you leave.
        </p>
      )}
      {state.save === 'offline' && (
        <p className="sheet-note stop" role="alert">
          Not saved yet. {state.reason} Everything you type is kept on this device and saved as soon as the
          server answers.
        </p>
      )}
      {state.save === 'refused' && (
        <div className="sheet-note stop" role="alert">
          <p>The card is not saved until this is put right. Nothing is lost: it is kept on this device.</p>
          <ul>
            {state.problems.slice(0, 8).map((problem) => (
              <li key={problem.path + problem.code}>
                <ProblemText problem={problem} />{' '}
                {showable(problem.path) && (
                  <button type="button" className="linklike" onClick={() => showField(problem.path)}>
                    Show the field
                  </button>
                )}
              </li>
            ))}
          </ul>
        </div>
      )}
      {shown.failed !== null && (
        <p className="sheet-note stop" role="alert">
          No fit could be computed for these figures ({shown.failed}). What is shown is from before.
        </p>
      )}
      <p className="unseen" role="status">
        {shown.behind ? 'Computing the fit' : 'The fit is up to date'}
      </p>
      <div className="form wide">
        <TextField label="Name of the card" path={['name']} maxLength={100} />
        <ProseField label="What it is for" path={['description']} rows={1} />
      </div>
    </header>
  );
}

const showable = (path: string) => path !== '' && path !== 'label' && path !== 'id';

function showField(path: string): void {
  const field = window.document.getElementById(`f-${path.replaceAll('.', '-')}`);
  field?.scrollIntoView({ block: 'center' });
  field?.focus({ preventScroll: true });
}
