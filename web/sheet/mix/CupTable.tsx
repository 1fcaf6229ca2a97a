import type { CoatPlan } from '#core/pour/plan.ts';
import { fixed } from '#core/quantity/rounding.ts';
import { useSheet } from '../context.tsx';

/** Grams as the scale shows them. */
function grams(mass_kg: number): string {
  const value = mass_kg * 1000;
  return fixed(value, Math.abs(value - Math.round(value)) < 1e-6 ? 0 : value < 10 ? 2 : 1);
}

const signed = (share: number) => `${share < 0 ? '−' : '+'}${fixed(Math.abs(share) * 100, 2)} %`;

/** The cups in the order they are mixed: what the scale is to show, in figures read at arm's length. */
export function CupTable({ plan }: { readonly plan: CoatPlan }) {
  const { speak } = useSheet();
  return (
    <table className="ledger cups">
      <caption>Cups, in the order they are mixed; grams on the scale</caption>
      <thead>
        <tr>
          <th scope="col">Cup</th>
          <th scope="col">Colour</th>
          <th scope="col" className="number">
            A
          </th>
          <th scope="col" className="number">
            B
          </th>
          <th scope="col" className="number">
            Tint
          </th>
          <th scope="col" className="number">
            All
          </th>
          <th scope="col" className="number">
            Ratio off by
          </th>
        </tr>
      </thead>
      <tbody>
        {plan.cups.map((cup) => (
          <tr key={cup.number}>
            <th scope="row" className="cup-number">
              {cup.number}
            </th>
            <td className="cup-colour">
              <svg className="dot" viewBox="0 0 10 10" aria-hidden="true">
                <rect width="10" height="10" fill={cup.swatch} className="share-part" />
              </svg>{' '}
              {cup.colour}
              <span className="basis">{speak.volume(cup.volume_m3)}</span>
            </td>
            <td className="number big" data-label="A">
              {grams(cup.partA_kg)}
            </td>
            <td className="number big" data-label="B">
              {grams(cup.partB_kg)}
            </td>
            <td className="number big" data-label="Tint">
              {cup.colourant === 'none' ? '0' : grams(cup.tint_kg)}
              {cup.colourant !== 'none' && <span className="basis">{cup.colourant}</span>}
            </td>
            <td className="number" data-label="All">
              {grams(cup.mass_kg)}
            </td>
            <td className="number" data-label="Ratio off by">
              {signed(cup.ratioError)}
              <span className="basis">scale ± {fixed(cup.scaleError * 100, 2)} %</span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
