import type { FilmOutlook } from '#core/pour/film-outlook.ts';
import { formatDensity } from '#core/quantity/format.ts';
import type { Speak } from '#web/units/speak.ts';
import { fineText, rangeText } from './reason-words.ts';
import { Why } from './Why.tsx';

interface Props {
  readonly outlook: FilmOutlook;
  readonly speak: Speak;
}

const CELLS = { no: 'none', maybe: 'perhaps', yes: 'yes' } as const;
/** A coat of many colours has hundreds of pairs: what is more than this is folded. */
const PAIRS_OPEN = 10;

/** Every pair of colours of the coat, the heavier over the lighter: whether it sinks in cells, and which goes under. */
export function CellSection({ outlook, speak }: Props) {
  const { pairs, densities, crispOrder } = outlook.colours;
  if (pairs.length === 0) return null;
  const uneven = pairs.some(({ answer }) => answer.goesUnder !== undefined);
  const more = pairs.slice(PAIRS_OPEN);
  return (
    <section className="film-answer" aria-label="Cells">
      <h5>Cells where colours overlap</h5>
      <p>
        {uneven
          ? `For crisp boundaries pour in this order, the heaviest under: ${crispOrder.join(', ')}. For cells pour the other way round.`
          : 'All colours weigh the same: no cells, whichever goes under.'}
      </p>
      <PairTable pairs={pairs.slice(0, PAIRS_OPEN)} speak={speak} />
      {more.length > 0 && (
        <details className="film-why">
          <summary>{more.length} more pairs, of smaller shares</summary>
          <PairTable pairs={more} speak={speak} />
        </details>
      )}
      <p className="rules-note">
        {densities
          .map((of) => `${of.name} ${formatDensity(of.density_kg_m3, speak.system, { decimals: 3 })}`)
          .join(', ')}{' '}
        (densities of the colourants from memory).
      </p>
      <Why what="cells" reasons={pairs[0]!.answer.reasons} range="e-folds" system={speak.system} />
    </section>
  );
}

interface TableProps {
  readonly pairs: FilmOutlook['colours']['pairs'];
  readonly speak: Speak;
}

function PairTable({ pairs, speak }: TableProps) {
  return (
    <table className="ledger">
      <caption className="unseen">Pairs of colours, the heavier poured over the lighter</caption>
      <thead>
        <tr>
          <th scope="col">Poured over</th>
          <th scope="col">Cells</th>
          <th scope="col" className="number">
            Apart
          </th>
          <th scope="col">By gel</th>
          <th scope="col">Crisp: goes under</th>
        </tr>
      </thead>
      <tbody>
        {pairs.map(({ bottom, top, answer }) => (
          <tr key={`${bottom.name} ${top.name}`}>
            <th scope="row">
              {top.name} over {bottom.name}
            </th>
            <td data-label="Cells">{CELLS[answer.cells]}</td>
            <td className="number" data-label="Apart">
              {answer.cells === 'no' || answer.pitch_m === undefined
                ? '–'
                : fineText(answer.pitch_m, speak.system)}
            </td>
            <td data-label="By gel">{rangeText(answer.eFolds, 'e-folds', speak.system)}</td>
            <td data-label="Crisp: goes under">{answer.goesUnder ?? 'either'}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
