import type { CoatPlan } from '#core/pour/plan.ts';
import { formatDuration } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import { clockText, dayAndClock, localTime_ms, pourClock } from '#web/units/dates.ts';
import { signedDuration } from '#web/units/speak.ts';
import { RULES_NOTE } from './rules.ts';
import { type RunRow, runRows } from './run-rows.ts';

interface Props {
  readonly name: string;
  readonly plan: CoatPlan;
  readonly startsAt: string;
  readonly system: System;
  /** Coats told above this one: their rules of thumb are not told again. */
  readonly before?: readonly CoatPlan[];
  /** With boxes to tick, on paper; the rules of thumb stand there once for all coats. */
  readonly ticks?: boolean;
}

const WHO = ['first', 'second', 'third'] as const;

/** The steps of one coat on the clock of the day, or in minutes from the first mix when no start is given. */
export function RunSheet({ name, plan, startsAt, system, before = [], ticks = false }: Props) {
  const start_ms = localTime_ms(startsAt);
  const at = (time_s: number) =>
    start_ms === null ? pourClock(time_s) : clockText(start_ms + time_s * 1000, system);
  const rows = runRows(plan, before);
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
            <th scope="col" className="done-by">
              Must be done by
            </th>
            <th scope="col" className="number">
              Slack
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Row key={row.key} row={row} at={at} crew={crew} ticks={ticks} />
          ))}
        </tbody>
      </table>
      {!ticks && rows.some((row) => row.rule !== '') && <p className="rules-note">{RULES_NOTE}</p>}
    </div>
  );
}

interface RowProps {
  readonly row: RunRow;
  readonly at: (time_s: number) => string;
  readonly crew: number;
  readonly ticks: boolean;
}

function Row({ row, at, crew, ticks }: RowProps) {
  const { steps, slack_s } = row;
  const [first] = steps;
  const repeated = steps.length > 1;
  const { window } = first;
  const likelier = at(window.closesMid_s);
  return (
    <tr data-late={(slack_s !== null && slack_s < 0) || undefined}>
      {ticks && <td className="tick">{!repeated && <span className="box" />}</td>}
      <td className="number time">{at(first.start_s)}</td>
      <th scope="row">
        {row.label}
        {repeated && (
          <span className="rounds">
            {steps.map((step) => (
              <span key={step.id} className="round">
                {ticks && <span className="box" />}
                {at(step.start_s)}
              </span>
            ))}
          </span>
        )}
        {!ticks && row.rule !== '' && <span className="basis">{row.rule}</span>}
      </th>
      {crew > 1 && <td data-label="Who">{WHO[first.person - 1] ?? first.person}</td>}
      <td className="number" data-label="Takes">
        {formatDuration(first.end_s - first.start_s)}
        {repeated && ' each'}
      </td>
      <td className="done-by" data-label="Must be done by">
        {window.opens_s > first.start_s && `not before ${at(window.opens_s)}; `}
        {at(window.closes_s)}
        {!ticks && likelier !== at(window.closes_s) && (
          <span className="likelier">, likelier {likelier}</span>
        )}
        <span className="basis">{window.limit}</span>
      </td>
      <td className="number" data-label={slack_s === null ? undefined : 'Slack'}>
        {slack_s !== null && signedDuration(slack_s)}
      </td>
    </tr>
  );
}
