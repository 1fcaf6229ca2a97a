/** The fields of what a map is asked with. */
import { useId } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import { Labelled } from '#web/field/Labelled.tsx';
import { type ChoiceField, FIELD_NAMES, type TypedChoices } from './map-choices.ts';

interface Props {
  readonly typed: TypedChoices;
  readonly problems: readonly Problem[];
  readonly onChange: (typed: TypedChoices) => void;
  /** First minute of the plan a map may show. */
  readonly from_min: number;
  readonly hasPuddles: boolean;
}

export function MapChoices({ typed, problems, onChange, from_min, hasPuddles }: Props) {
  const id = useId();
  const set = (part: Partial<TypedChoices>): void => onChange({ ...typed, ...part });
  const field = (name: ChoiceField) => {
    const own = problems.filter((problem) => problem.path === name);
    return (
      <Labelled id={`${id}-${name}`} label={FIELD_NAMES[name]} problems={own}>
        <input
          id={`${id}-${name}`}
          inputMode={name === 'cell' ? 'text' : 'decimal'}
          autoComplete="off"
          maxLength={40}
          value={typed[name]}
          aria-invalid={own.length > 0}
          aria-describedby={`${id}-${name}-problem`}
          onChange={(event) => set({ [name]: event.target.value })}
        />
      </Labelled>
    );
  };
  return (
    <div className="form form-tight">
      <Labelled id={`${id}-start`} label="Start from">
        <select
          id={`${id}-start`}
          value={typed.start}
          onChange={(event) => set({ start: event.target.value === 'puddles' ? 'puddles' : 'even' })}
        >
          <option value="even">An even film</option>
          {hasPuddles && <option value="puddles">This coat’s puddles</option>}
        </select>
      </Labelled>
      {field('cell')}
      {field('tiltX')}
      {field('tiltY')}
      <Labelled id={`${id}-moment`} label="Moment shown">
        <select
          id={`${id}-moment`}
          value={typed.moment}
          onChange={(event) => {
            const moment = event.target.value === 'minute' ? 'minute' : 'gel';
            set({ moment, minute: typed.minute === '' ? String(from_min) : typed.minute });
          }}
        >
          <option value="gel">At gel</option>
          <option value="minute">At a minute of the plan</option>
        </select>
      </Labelled>
      {typed.moment === 'minute' && field('minute')}
    </div>
  );
}
