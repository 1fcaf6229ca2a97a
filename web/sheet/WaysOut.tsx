import type { WayOut } from '#core/pour/plan.ts';
import { signedDuration } from '#web/units/speak.ts';
import { Verdict } from './Verdict.tsx';

/** What would make it fit, each computed for this piece, with what it brings along. */
export function WaysOut({ ways }: { readonly ways: readonly WayOut[] }) {
  if (ways.length === 0) return null;
  return (
    <table className="ledger ways">
      <caption>Ways out, computed for this piece</caption>
      <thead>
        <tr>
          <th scope="col">Change</th>
          <th scope="col">Then</th>
          <th scope="col" className="number">
            Time
          </th>
          <th scope="col">What it brings</th>
        </tr>
      </thead>
      <tbody>
        {ways.map((way) => (
          <tr key={way.key}>
            <th scope="row">
              {way.label}
              <span className="basis">{way.change}</span>
            </th>
            <td>
              <Verdict verdict={way.verdict} />
            </td>
            <td className="number">{signedDuration(way.slack_s)}</td>
            <td>{way.note}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
