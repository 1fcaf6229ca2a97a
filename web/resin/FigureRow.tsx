import type { FigureDocument } from '#core/resin/card-document.ts';
import { END_CRITERIA } from '#core/resin/label.ts';
import { without } from '#web/draft/at-path.ts';
import { QuantityField, SelectField } from '#web/field/sheet-fields.tsx';
import { useCard } from './card-context.tsx';
import { figureNotes } from './figure-notes.ts';

const END_WORDS: Readonly<Record<(typeof END_CRITERIA)[number], string>> = {
  'viscosity doubled': 'viscosity doubled',
  '40 C': '40 °C (104 °F) in the cup',
  '50 C': '50 °C (122 °F) in the cup',
  gel: 'gel',
  unknown: 'not said',
};
const ends = END_CRITERIA.map((value) => ({ value, label: END_WORDS[value] }));

const EXAMPLE: Readonly<Record<FigureDocument['kind'], string>> = {
  'working time': '40 min',
  'pot life': '30 min',
  'recoat opens': '4 to 6 h',
  'recoat closes': '24 h',
  'dry hard': '12 h',
  handle: '24 h',
  'full cure': '7 d',
  viscosity: '900 cP',
  'largest film': '1/8 in',
};

/** One figure of the label, with what it tells and what it contradicts beside it. */
export function FigureRow({ figure, index }: { readonly figure: FigureDocument; readonly index: number }) {
  const { edit, read, shown } = useCard();
  const at = (key: string) => ['label', index, key];
  const { kind } = figure;
  const name = `${kind}, figure ${index + 1}`;
  const timed = kind !== 'viscosity' && kind !== 'largest film';
  const ending = kind === 'working time' || kind === 'pot life';
  const seen = read?.label.figures[index];
  const notes =
    seen === undefined || shown.behind || shown.fit === null ? [] : figureNotes(seen, shown.fit.card.account);
  return (
    <fieldset className="figure-row">
      <legend>{kind}</legend>
      <div className="form form-tight">
        <QuantityField label="Figure or range" path={at('value')} kind="words" placeholder={EXAMPLE[kind]} />
        {kind !== 'largest film' && (
          <QuantityField label="At" path={at('temperature')} kind="temperature" placeholder="not said" />
        )}
        {timed && <QuantityField label="Film" path={at('film')} kind="length" placeholder="not said" />}
        {ending && (
          <>
            <QuantityField label="Mass in a cup" path={at('mass')} kind="mass" placeholder="not said" />
            <SelectField label="Ends at" path={at('end')} options={ends} />
          </>
        )}
      </div>
      <button
        type="button"
        className="small figure-remove"
        aria-label={`Remove ${name}`}
        onClick={() => edit(`Remove ${kind}`, '', (d) => ({ ...d, label: without(d.label, index) }))}
      >
        Remove
      </button>
      {notes.map(({ tone, words }) => (
        <p key={words} className={`figure-note figure-note-${tone}`}>
          {words}
        </p>
      ))}
    </fieldset>
  );
}
