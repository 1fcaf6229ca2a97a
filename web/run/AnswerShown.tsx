import type { CoatPlan } from '#core/pour/plan.ts';
import type { RunAnswer } from '#core/pour/run/answers.ts';
import type { Speak } from '#web/units/speak.ts';
import type { RunSession } from './run-session.ts';

interface Props {
  readonly answer: RunAnswer;
  readonly session: RunSession;
  readonly plan: CoatPlan;
  readonly speak: Speak;
}

/** What to do, how much time it leaves, what may be dropped, and the cup to mix. */
export function AnswerShown({ answer, session, plan, speak }: Props) {
  const { head, says, drop, extraCup } = answer;
  const dropped = plan.steps.filter(({ id }) => drop.includes(id));
  const skipAll = async () => {
    for (const { id } of dropped) await session.did({ kind: 'skipped', step: id, why: head.slice(0, 400) });
  };
  return (
    <div className="run-answer" aria-live="polite">
      <p className="run-answer-head">{head}</p>
      {says.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {extraCup !== null && (
        <table className="ledger">
          <caption>The extra cup, {extraCup.colour}</caption>
          <tbody>
            <tr>
              <th scope="row">Part A</th>
              <td className="number">{speak.mass(extraCup.partA_kg)}</td>
            </tr>
            <tr>
              <th scope="row">Part B</th>
              <td className="number">{speak.mass(extraCup.partB_kg)}</td>
            </tr>
            {extraCup.tint_kg > 0 && (
              <tr>
                <th scope="row">{extraCup.colourant}</th>
                <td className="number">{speak.mass(extraCup.tint_kg)}</td>
              </tr>
            )}
            <tr>
              <th scope="row">In all</th>
              <td className="number">{speak.mass(extraCup.mass_kg)}</td>
            </tr>
          </tbody>
        </table>
      )}
      {dropped.length > 0 && (
        <p className="actions">
          <span>May be left out: {dropped.map(({ label }) => label).join('; ')}.</span>
          <button type="button" onClick={() => void skipAll()}>
            Leave {dropped.length === 1 ? 'it' : 'them'} out
          </button>
        </p>
      )}
    </div>
  );
}
