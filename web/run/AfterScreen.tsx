import type { RunForecast } from '#core/pour/run/forecast-run.ts';
import { formatDuration } from '#core/quantity/format.ts';
import { useNow } from '#web/today/use-now.ts';
import { pourClock } from '#web/units/dates.ts';
import type { Speak } from '#web/units/speak.ts';
import { afterRows } from './after-rows.ts';
import { CureTimes } from './CureTimes.tsx';
import { LearnedRates } from './LearnedRates.tsx';
import { Reminders } from './Reminders.tsx';
import { remindersOf } from './reminders.ts';
import type { RunSession, RunView } from './run-session.ts';
import type { KeptRun } from './run-shelf.ts';
import { zeroOf } from './zero.ts';

interface Props {
  readonly kept: KeptRun;
  readonly session: RunSession;
  readonly view: RunView;
  readonly forecast: RunForecast;
  readonly speak: Speak;
}

/** The pour is over: what comes by itself now, how it went against the plan, and what it teaches. */
export function AfterScreen({ kept, session, view, forecast, speak }: Props) {
  const { plan } = kept.pour;
  const rows = afterRows(plan, view.state);
  const now_ms = useNow();
  const zero_ms = zeroOf(view.events) ?? now_ms;
  const { happenings } = view.state;
  return (
    <div className="run-after">
      <Reminders
        list={remindersOf(forecast.film)}
        now_s={(now_ms - zero_ms) / 1000}
        zero_ms={zero_ms}
        speak={speak}
      />
      <CureTimes kept={kept} film={forecast.film} zero_ms={zero_ms} speak={speak} />
      <section aria-labelledby="after-name">
        <h2 id="after-name">Planned against actual</h2>
        <div className="table-block">
          <table className="ledger run-rows">
            <thead>
              <tr>
                <th scope="col">Step</th>
                <th scope="col" className="number">
                  Planned at
                </th>
                <th scope="col" className="number">
                  Begun at
                </th>
                <th scope="col" className="number">
                  Planned to take
                </th>
                <th scope="col" className="number">
                  Took
                </th>
                <th scope="col" className="number">
                  Differs
                </th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ step, planned, actual, skipped }) => (
                <tr key={step.id}>
                  <th scope="row">{step.label}</th>
                  <td className="number" data-label="Planned at">
                    {pourClock(planned.start_s)}
                  </td>
                  <td className="number" data-label="Begun at">
                    {actual === null ? (skipped ? 'left out' : 'not done') : pourClock(actual.start_s)}
                  </td>
                  <td className="number" data-label="Planned to take">
                    {formatDuration(planned.lasts_s)}
                  </td>
                  <td className="number" data-label="Took">
                    {actual === null ? '' : formatDuration(actual.lasts_s)}
                  </td>
                  <td className="number" data-label="Differs">
                    {actual === null ? '' : differs(actual.lasts_s - planned.lasts_s)}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </section>
      {happenings.length > 0 && (
        <section aria-labelledby="happened-name">
          <h2 id="happened-name">What happened</h2>
          <ul className="plain-list">
            {happenings.map(({ id, at_s, what, cup, mass_kg, note }) => (
              <li key={id}>
                {pourClock(at_s)} {what}
                {cup !== null && `, cup ${cup}`}
                {mass_kg !== null && `, ${speak.mass(mass_kg)}`}
                {note !== '' && `: ${note}`}
              </li>
            ))}
          </ul>
        </section>
      )}
      <LearnedRates run={session.run} events={view.events} speak={speak} />
      <p className="actions">
        <button type="button" disabled={view.state.undoable === null} onClick={() => void session.undo()}>
          Undo finishing
        </button>
      </p>
    </div>
  );
}

function differs(by_s: number): string {
  if (Math.abs(by_s) < 1) return 'as planned';
  return by_s > 0 ? `${formatDuration(by_s)} longer` : `${formatDuration(-by_s)} shorter`;
}
