import type { CoatPlan } from '#core/pour/plan.ts';
import { formatRange } from '#core/quantity/format.ts';
import { dayAndClock, localTime_ms } from '#web/units/dates.ts';
import { useSheet } from './context.tsx';
import { ruleText } from './rules.ts';

interface Props {
  readonly plan: CoatPlan;
  readonly clockStart: string;
  /** Without the criteria, for paper. */
  readonly brief?: boolean;
}

/** Each stage with its range, what it rests on, and the rule of thumb it can be held against. */
export function StageTable({ plan, clockStart, brief = false }: Props) {
  const { speak } = useSheet();
  const start_ms = localTime_ms(clockStart);
  return (
    <table className="ledger stages">
      <caption>When, counted from the first mix</caption>
      <thead>
        <tr>
          <th scope="col">Stage</th>
          <th scope="col" className="number">
            After
          </th>
          <th scope="col">Rests on</th>
          <th scope="col">Rule of thumb</th>
        </tr>
      </thead>
      <tbody>
        {plan.stages.map((stage, i) => (
          <tr key={stage.key}>
            <th scope="row">
              {stage.label}
              {!brief && <span className="basis">{stage.criterion}</span>}
            </th>
            <td className="number">
              {stage.at === null
                ? 'not within the forecast'
                : formatRange(stage.at.low_s, stage.at.mid_s, stage.at.high_s, 'duration', speak.system)}
              {start_ms !== null && stage.at !== null && (
                <span className="basis">{dayAndClock(start_ms + stage.at.mid_s * 1000, speak.system)}</span>
              )}
            </td>
            <td data-label="Rests on">{stage.basis}</td>
            <td className="rule">{plan.stages[i - 1]?.rule === stage.rule ? '' : ruleText(stage.rule)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
