import type { Chance } from '#core/pour/chance/chance.ts';
import type { WayChance } from '#core/pour/chance/ways-chance.ts';
import { chanceSays, costWords, spareOrShort } from './chance-words.ts';

interface Props {
  readonly ways: readonly WayChance[];
  readonly now: Chance | null;
}

/** What would make it surer, the best chance first, with what each asks for. */
export function WaysByChance({ ways, now }: Props) {
  return (
    <table className="ledger ways">
      <caption>Ways out, computed for this piece, the best chance first</caption>
      <thead>
        <tr>
          <th scope="col">Change</th>
          <th scope="col">Chance then</th>
          <th scope="col">Middle pour</th>
          <th scope="col">What it costs</th>
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
            <td data-label="Chance then">
              {chanceSays(way.chance)}
              {now !== null && <span className="basis">{against(way.chance, now)}</span>}
            </td>
            <td data-label="Middle pour">{spareOrShort(way.chance.slack.mid_s)}</td>
            <td data-label="What it costs">{costWords(way.cost).join(', ')}</td>
            <td data-label="What it brings">{way.note}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** A difference no larger than twice its error is none. */
function against(then: Chance, now: Chance): string {
  const difference = then.chance - now.chance;
  const error = Math.hypot(then.standardError, now.standardError);
  if (Math.abs(difference) <= 2 * error) return 'no clear difference';
  return difference > 0 ? 'better than as planned' : 'worse than as planned';
}
