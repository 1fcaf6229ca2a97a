import { useState } from 'react';
import { useFields } from '#web/field/fields-context.tsx';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { dayText } from '#web/units/dates.ts';
import { useCard } from './card-context.tsx';
import { ObservationForm } from './ObservationForm.tsx';
import { sayTyped } from './say-typed.ts';
import { TaughtPanel } from './TaughtPanel.tsx';

/** What the shop saw of this resin. Nothing is ever removed: what is no longer believed is withdrawn. */
export function ObservationsSection() {
  const { document, edit, read, system } = useCard();
  const { problems } = useFields();
  const [opened, setOpened] = useState<string | null>(null);
  const withdraw = (id: string, withdrawn: boolean) =>
    edit(withdrawn ? 'Withdraw an observation' : 'Use an observation again', '', (d) => ({
      ...d,
      observations: d.observations.map((seen) => (seen.id === id ? { ...seen, withdrawn } : seen)),
    }));
  return (
    <section aria-labelledby="seen-title">
      <h2 id="seen-title">What the shop saw</h2>
      {document.observations.length === 0 && (
        <p className="none">
          Nothing yet. Each observation makes the ranges above narrower, or shows a contradiction.
        </p>
      )}
      <ol className="seen-list plain-list">
        {document.observations.map((seen, i) => {
          const wrong = [...problems].filter(([path]) => path.startsWith(`observations.${i}.`));
          return (
            <li key={seen.id} data-withdrawn={seen.withdrawn || undefined}>
              <p>
                {seen.date !== '' && <span className="seen-day">{dayText(seen.date, system)}: </span>}
                {sayTyped(seen)}
                {seen.withdrawn && <strong> Withdrawn, not used.</strong>}
                {seen.note !== '' && <span className="basis">{seen.note}</span>}
              </p>
              {wrong.map(([path, list]) => (
                <p key={path} className="problem-block" role="alert">
                  <ProblemText problem={list[0]!} />
                </p>
              ))}
              <p className="actions">
                <button
                  type="button"
                  className="small"
                  aria-expanded={opened === seen.id}
                  disabled={read === null}
                  onClick={() => setOpened(opened === seen.id ? null : seen.id)}
                >
                  What it taught<span className="unseen">: {sayTyped(seen)}</span>
                </button>
                <button type="button" className="small" onClick={() => withdraw(seen.id, !seen.withdrawn)}>
                  {seen.withdrawn ? 'Use it again' : 'Withdraw'}
                  <span className="unseen">: {sayTyped(seen)}</span>
                </button>
              </p>
              {opened === seen.id && read !== null && <TaughtPanel document={document} id={seen.id} />}
            </li>
          );
        })}
      </ol>
      <ObservationForm onAdded={setOpened} />
    </section>
  );
}
