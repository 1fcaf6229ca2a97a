import type { CoatPlan } from '#core/pour/plan.ts';
import { formatDuration } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import { clockText, dayAndClock, localTime_ms, pourClock } from '#web/units/dates.ts';
import { signedDuration } from '#web/units/speak.ts';

interface Props {
  readonly name: string;
  readonly plan: CoatPlan;
  readonly startsAt: string;
  readonly system: System;
  /** With boxes to tick, on paper. */
  readonly ticks?: boolean;
}

/** The steps of one coat on the clock of the day, or in minutes from the first mix when no start is given. */
export function RunSheet({ name, plan, startsAt, system, ticks = false }: Props) {
  const start_ms = localTime_ms(startsAt);
  const at = (time_s: number) =>
    start_ms === null ? pourClock(time_s) : clockText(start_ms + time_s * 1000, system);
  const crew = Math.max(1, ...plan.steps.map((step) => step.person));
  return (
    <div className="per-coat">
      <h3>
        {name}{' '}
        <span className="of">
          {start_ms === null
            ? 'minutes from the first mix'
            : `first cup mixed ${dayAndClock(start_ms, system)}`}
        </span>
      </h3>
      <table className="ledger steps">
        <thead>
          <tr>
            {ticks && <th scope="col">Done</th>}
            <th scope="col" className="number">
              At
            </th>
            <th scope="col">Step</th>
            {crew > 1 && <th scope="col">Who</th>}
            <th scope="col" className="number">
              Takes
            </th>
            <th scope="col">Must be done by</th>
            <th scope="col" className="number">
              Slack
            </th>
          </tr>
        </thead>
        <tbody>
          {plan.steps.map((step, i) => (
            <tr key={step.id} data-late={step.slack_s < 0 || undefined}>
              {ticks && (
                <td className="tick">
                  <span />
                </td>
              )}
              <td className="number time">{at(step.start_s)}</td>
              <th scope="row">
                {step.label}
                {plan.steps.findIndex((other) => other.rule === step.rule) === i && (
                  <span className="basis">{step.rule}</span>
                )}
              </th>
              {crew > 1 && (
                <td data-label="Who">
                  {step.person === 1 ? 'first' : step.person === 2 ? 'second' : 'third'}
                </td>
              )}
              <td className="number" data-label="Takes">
                {formatDuration(step.end_s - step.start_s)}
              </td>
              <td data-label="Must be done by">
                {step.window.opens_s > step.start_s && `not before ${at(step.window.opens_s)}; `}
                {at(step.window.closes_s)}
                <span className="basis">
                  {step.window.limit}
                  {!ticks && `; likelier ${at(step.window.closesMid_s)}`}
                </span>
              </td>
              <td className="number" data-label="Slack">
                {signedDuration(step.slack_s)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
