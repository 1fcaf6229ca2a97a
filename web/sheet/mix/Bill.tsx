import type { CoatQuantity } from '#core/mix/coat.ts';
import { sayWorking } from '#core/mix/say-working.ts';
import { useSheet } from '../context.tsx';

/** The bill of one coat: every line with how much, how it was got and what it rests on. */
export function Bill({ quantity }: { readonly quantity: CoatQuantity }) {
  const { speak } = useSheet();
  return (
    <table className="ledger bill">
      <caption>How the amount comes about</caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">Working</th>
          <th scope="col" className="number">
            Volume
          </th>
          <th scope="col" className="number">
            Grams
          </th>
        </tr>
      </thead>
      <tbody>
        {quantity.lines.map((line) => {
          const ranged = line.high_m3 - line.low_m3 > 0.02 * Math.abs(line.volume_m3);
          return (
            <tr key={line.key}>
              <th scope="row">
                {line.label}
                <span className="basis">{line.basis}</span>
                <span className="basis working-narrow">{sayWorking(line, speak.system)}</span>
              </th>
              <td className="working">{sayWorking(line, speak.system)}</td>
              <td className="number">
                {speak.volume(line.volume_m3)}
                {ranged && (
                  <span className="basis">
                    {speak.volume(line.low_m3)} to {speak.volume(line.high_m3)}
                  </span>
                )}
              </td>
              <td className="number">{Math.round(line.mass_kg * 1000)}</td>
            </tr>
          );
        })}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row" colSpan={2}>
            To mix
          </th>
          <td className="number">{speak.volume(quantity.volume_m3)}</td>
          <td className="number">{Math.round(quantity.mass_kg * 1000)}</td>
        </tr>
      </tfoot>
    </table>
  );
}
