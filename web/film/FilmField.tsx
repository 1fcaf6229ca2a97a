import { useId } from 'react';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly problem: string | null;
}

/** A question's own figure: typed with any unit, kept as typed. */
export function FilmField({ label, value, onChange, problem }: Props) {
  const id = useId();
  return (
    <div className="field film-field" data-invalid={problem !== null || undefined}>
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        value={value}
        maxLength={40}
        autoComplete="off"
        aria-invalid={problem !== null}
        aria-describedby={`${id}-problem`}
        onChange={(event) => onChange(event.currentTarget.value)}
      />
      <span className="field-problem" id={`${id}-problem`}>
        {problem}
      </span>
    </div>
  );
}
