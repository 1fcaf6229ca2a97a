import type { CoatDocument } from '#core/job/document.ts';
import { useCards } from '#web/api/resin-queries.ts';
import { moved, without } from '#web/draft/at-path.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { QuantityField, SelectField, TextField } from '#web/field/sheet-fields.tsx';
import { useSheet } from '../context.tsx';
import { CoatPieces } from './CoatPieces.tsx';
import { ColourTable } from './ColourTable.tsx';
import { COAT_KINDS } from './new-coat.ts';

const kinds = COAT_KINDS.map((value) => ({ value, label: value }));
const edgeWays = [
  { value: 'wrapped', label: 'wrapped' },
  { value: 'dammed', label: 'dammed' },
];
const crews = ['1', '2', '3'].map((value) => ({
  value,
  label: value === '1' ? '1 person' : `${value} people`,
}));

interface Props {
  readonly coat: CoatDocument;
  readonly index: number;
  readonly count: number;
}

/** One coat as agreed. */
export function CoatForm({ coat, index, count }: Props) {
  const { edit, problems } = useSheet();
  const at = (key: string) => ['coats', index, key];
  const name = coat.name || coat.kind;
  const cards = useCards();
  const card = cards.all.find((known) => known.id === coat.resin);
  // A card from the archive stays while the coat has it.
  const offered =
    card === undefined || cards.offered.includes(card) ? cards.offered : [...cards.offered, card];
  const whole = [...(problems.get(`coats.${index}`) ?? []), ...(problems.get(`coats.${index}.id`) ?? [])];
  const move = (to: number) => edit('Move coat', '', (d) => ({ ...d, coats: moved(d.coats, index, to) }));
  return (
    <fieldset className="coat">
      <legend>
        <span className="coat-number">{index + 1}</span> {name}
      </legend>
      <div className="coat-moves">
        <button
          type="button"
          className="small"
          disabled={index === 0}
          aria-label={`Move ${name} up`}
          onClick={() => move(index - 1)}
        >
          Up
        </button>
        <button
          type="button"
          className="small"
          disabled={index === count - 1}
          aria-label={`Move ${name} down`}
          onClick={() => move(index + 1)}
        >
          Down
        </button>
        <button
          type="button"
          className="small"
          aria-label={`Remove ${name}`}
          onClick={() => edit(`Remove ${name}`, '', (d) => ({ ...d, coats: without(d.coats, index) }))}
        >
          Remove
        </button>
      </div>
      <CoatPieces coat={coat} index={index} />
      <div className="form form-tight">
        <SelectField label="Kind" path={at('kind')} options={kinds} />
        <TextField label="Name (the kind if empty)" path={at('name')} maxLength={80} />
        <SelectField
          label="Resin"
          path={at('resin')}
          options={offered.map((each) => ({ value: each.id, label: each.name }))}
        />
        <QuantityField label="Film on the top" path={at('film')} kind="film" />
        <SelectField label="Edges" path={at('edges')} options={edgeWays} />
        {coat.edges === 'wrapped' && (
          <QuantityField label="Film put on the faces" path={at('faceFilm')} kind="film" />
        )}
        <QuantityField label="Spare" path={at('allowance')} kind="percent" placeholder="10 %" />
        <QuantityField
          label="Parts A and B at"
          path={at('resinTemperature')}
          kind="temperature"
          placeholder="as the air"
        />
        <QuantityField label="Largest cup" path={at('largestCup')} kind="mass" placeholder="no limit" />
        <SelectField
          label="Crew"
          path={at('crew')}
          options={crews}
          onChosen={(crew) =>
            edit('Crew', '', (d) => ({
              ...d,
              coats: d.coats.map((c, i) => (i === index ? { ...c, crew: Number(crew) } : c)),
            }))
          }
        />
        <TextField
          label="First cup is mixed at"
          path={at('startsAt')}
          type="datetime-local"
          className="moment"
        />
      </div>
      {card !== undefined && (
        <p className="section-note">
          {card.description} Label: {card.label.map((figure) => `${figure.kind} ${figure.text}`).join('; ')}.
        </p>
      )}
      <ColourTable coat={coat} index={index} />
      {whole.map((problem) => (
        <p className="problem-block" role="alert" key={problem.code}>
          <ProblemText problem={problem} />
        </p>
      ))}
    </fieldset>
  );
}
