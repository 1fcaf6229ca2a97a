/** Fields of the look that are no place of the document yet: a choice, and a text with what it is read as. */
import { useId } from 'react';
import { Labelled } from '#web/field/Labelled.tsx';
import { useSheet } from '#web/sheet/context.tsx';
import { type QuantityKind, readingOf } from '#web/units/reading.ts';

interface ChosenProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly onChange: (value: T) => void;
}

export function Chosen<T extends string>({ label, value, options, onChange }: ChosenProps<T>) {
  const id = useId();
  return (
    <Labelled id={id} label={label}>
      <select
        id={id}
        value={value}
        onChange={(event) => {
          const option = options.find((each) => each.value === event.target.value);
          if (option !== undefined) onChange(option.value);
        }}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </Labelled>
  );
}

interface WordedProps {
  readonly label: string;
  readonly hideLabel?: boolean;
  readonly value: string;
  readonly placeholder?: string;
  readonly quantity?: QuantityKind;
  readonly problem?: string | null;
  readonly onChange: (value: string) => void;
  /** Left, or Enter pressed. */
  readonly onDone?: () => void;
}

export function Worded(props: WordedProps) {
  const { label, hideLabel, value, placeholder, quantity, problem = null, onChange, onDone } = props;
  const { system } = useSheet();
  const id = useId();
  const reading = quantity === undefined || problem !== null ? null : readingOf(quantity, value, system);
  return (
    <div className="field field-quantity" data-invalid={problem !== null || undefined}>
      <label className={hideLabel ? 'unseen' : 'field-label'} htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        maxLength={40}
        value={value}
        placeholder={placeholder}
        aria-invalid={problem !== null}
        aria-describedby={`${id}-problem ${id}-aside`}
        onChange={(event) => onChange(event.target.value)}
        onBlur={onDone}
        onKeyDown={(event) => {
          if (event.key !== 'Enter' || onDone === undefined) return;
          event.preventDefault();
          onDone();
        }}
      />
      <span className="field-aside" id={`${id}-aside`}>
        {reading === null ? '' : `= ${reading}`}
      </span>
      <span className="field-problem" id={`${id}-problem`} role={problem === null ? undefined : 'alert'}>
        {problem !== null && <span className="problem-text">{problem}</span>}
      </span>
    </div>
  );
}
