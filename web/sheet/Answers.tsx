import type { CoatPlan } from '#core/pour/plan.ts';
import { formatRange } from '#core/quantity/format.ts';
import { pourClock } from '#web/units/dates.ts';
import { useSheet } from './context.tsx';

/** What the film still does by itself, read off the flow that is left until it gels. */
export function Answers({ plan }: { readonly plan: CoatPlan }) {
  const { speak } = useSheet();
  const { answers } = plan;
  const touches = answers.lastTouch.filter((touch) => touch.at_s !== null);
  const never = answers.lastTouch.filter((touch) => touch.at_s === null);
  return (
    <table className="ledger answers">
      <caption>What the film does by itself</caption>
      <tbody>
        {touches.map((touch, i) => (
          <tr key={touch.pitch_m}>
            <th scope="row">Last touch, tool marks {speak.length(touch.pitch_m)} apart</th>
            <td className="number">{pourClock(touch.at_s ?? 0)}</td>
            <td className="rule">{i === 0 ? 'touched later, they stay; from the first mix' : ''}</td>
          </tr>
        ))}
        {never.length > 0 && (
          <tr>
            <th scope="row">Marks {never.map((touch) => speak.length(touch.pitch_m)).join(', ')} apart</th>
            <td className="number">stay</td>
            <td className="rule">this film does not level them at any time</td>
          </tr>
        )}
        <tr>
          <th scope="row">Longest wave that still levels</th>
          <td className="number">{speak.length(answers.longestWave_m)}</td>
          <td className="rule">left alone after spreading; longer ones stay as they are</td>
        </tr>
        <tr>
          <th scope="row">Film that stays on the faces</th>
          <td className="number">
            {formatRange(
              answers.faceHoldsLow_m,
              answers.faceHolds_m,
              answers.faceHoldsHigh_m,
              'filmThickness',
              speak.system,
            )}
          </td>
          <td className="rule">the later the edges are worked, the more they hold</td>
        </tr>
        <tr>
          <th scope="row">Thin margin along a wetted edge</th>
          <td className="number">{speak.length(answers.taper_m)}</td>
          <td className="rule">this far in the film is under 90 % of what was poured</td>
        </tr>
        <tr>
          <th scope="row">Warmest the film gets</th>
          <td className="number">{speak.temperature(answers.peak_K)}</td>
          <td className="rule">in the middle of the first film</td>
        </tr>
      </tbody>
    </table>
  );
}
