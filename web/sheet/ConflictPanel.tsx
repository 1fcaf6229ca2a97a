import { useMemo, useState } from 'react';
import type { Conflict } from '#web/draft/job-session.ts';
import { type Difference, differences, type Side, suggested } from '#web/draft/merge.ts';
import { sayPath, sayValue } from './conflict-words.ts';

interface Props {
  /** What was saved elsewhere. */
  readonly what?: 'job' | 'card';
  readonly conflict: Conflict<unknown>;
  readonly mine: unknown;
  readonly onSettle: (choices: Readonly<Record<string, Side>>) => void;
}

/** The same job was saved elsewhere: every difference side by side, one choice each, nothing decided silently. */
export function ConflictPanel({ what = 'job', conflict, mine, onSettle }: Props) {
  const [choices, setChoices] = useState<Readonly<Record<string, Side>>>({});
  const found = useMemo(
    () => differences(conflict.base, mine, conflict.theirs),
    [conflict.base, conflict.theirs, mine],
  );
  const open = found.filter((d) => d.changedBy === 'both' && choices[d.key] === undefined).length;
  const chosen = (d: Difference): Side | undefined =>
    choices[d.key] ?? (d.changedBy === 'both' ? undefined : suggested(d));
  const all = (side: Side) =>
    setChoices(Object.fromEntries(found.filter((d) => d.changedBy === 'both').map((d) => [d.key, side])));
  return (
    <section className="conflict" aria-labelledby="conflict-title">
      <h2 id="conflict-title">This {what} was saved somewhere else while you worked on it</h2>
      <p>
        Nothing has been overwritten. Choose for each line what is kept; lines only one side changed are
        chosen already and can be changed.
      </p>
      <table className="ledger conflict-table">
        <caption className="unseen">Differences</caption>
        <thead>
          <tr>
            <th scope="col">Field</th>
            <th scope="col">Before</th>
            <th scope="col">Yours</th>
            <th scope="col">Theirs</th>
          </tr>
        </thead>
        <tbody>
          {found.map((d) => {
            const where = d.mine === undefined ? conflict.theirs : mine;
            const label = sayPath(d.path, where) + (d.what === 'order' ? ', order' : '');
            return (
              <tr key={d.key} data-open={chosen(d) === undefined || undefined}>
                <th scope="row">
                  {label}
                  <span className="basis">
                    {{ me: 'changed by you', them: 'changed by them', both: 'changed by both' }[d.changedBy]}
                  </span>
                </th>
                <td data-label="Before">{sayValue(d.base)}</td>
                {(['mine', 'theirs'] as const).map((side) => (
                  <td key={side} data-label={side === 'mine' ? 'Yours' : 'Theirs'}>
                    <label className="choice">
                      <input
                        type="radio"
                        name={`conflict-${d.key}`}
                        checked={chosen(d) === side}
                        onChange={() => setChoices({ ...choices, [d.key]: side })}
                      />
                      <span>
                        <span className="unseen">
                          {label}, {side === 'mine' ? 'yours' : 'theirs'}:{' '}
                        </span>
                        {sayValue(d[side])}
                      </span>
                    </label>
                  </td>
                ))}
              </tr>
            );
          })}
        </tbody>
      </table>
      <p className="actions">
        <button type="button" className="primary" disabled={open > 0} onClick={() => onSettle(choices)}>
          Keep these and save
        </button>
        <button type="button" onClick={() => all('mine')}>
          Mine in all open lines
        </button>
        <button type="button" onClick={() => all('theirs')}>
          Theirs in all open lines
        </button>
        <span role="status">
          {open === 0
            ? 'Every line is decided.'
            : `${open} ${open === 1 ? 'line waits' : 'lines wait'} for your choice.`}
        </span>
      </p>
    </section>
  );
}
