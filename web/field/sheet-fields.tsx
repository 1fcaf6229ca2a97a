/** Fields tied to a place in a document (a job, a resin card): they keep exactly what was typed, and say what it was read as. */
import { useEffect, useRef, useState } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import { getAt, type Path } from '#web/draft/at-path.ts';
import { type QuantityKind, readingOf } from '#web/units/reading.ts';
import { useFields } from './fields-context.tsx';
import { describedBy, Labelled } from './Labelled.tsx';

interface FieldProps {
  readonly label: string;
  readonly path: Path;
  readonly hideLabel?: boolean;
  readonly className?: string;
  readonly onFocus?: () => void;
  /** First part of the id, where the same place has another field on the page. */
  readonly idFirst?: string;
}

const NONE: readonly Problem[] = [];
/** A problem is not shown while the text is still being typed, only after a pause or on leaving the field. */
const PAUSE_MS = 800;

function useField({ path, idFirst = 'f' }: FieldProps) {
  const sheet = useFields();
  const place = path.join('.');
  const value = String(getAt(sheet.document, path) ?? '');
  const id = `${idFirst}-${place.replaceAll('.', '-')}`;
  return {
    sheet,
    id,
    value,
    problems: sheet.problems.get(place) ?? NONE,
    warnings: sheet.warnings.get(place) ?? NONE,
  };
}

function useTyping() {
  const [typing, setTyping] = useState(false);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  useEffect(() => () => clearTimeout(timer.current), []);
  return {
    typing,
    typed: () => {
      setTyping(true);
      clearTimeout(timer.current);
      timer.current = setTimeout(() => setTyping(false), PAUSE_MS);
    },
    left: () => {
      clearTimeout(timer.current);
      setTyping(false);
    },
  };
}

/** A length, film, temperature, mass, share ...: any unit may be typed; the other system stands beside it. */
export function QuantityField({
  kind,
  placeholder,
  ...props
}: FieldProps & { readonly kind: QuantityKind; readonly placeholder?: string }) {
  const { sheet, id, value, problems, warnings } = useField(props);
  const { typing, typed, left } = useTyping();
  const reading = problems.length > 0 ? null : readingOf(kind, value, sheet.system);
  const shown = typing ? NONE : problems;
  return (
    <Labelled
      id={id}
      label={props.label}
      hideLabel={props.hideLabel}
      className={`field-quantity ${props.className ?? ''}`}
      aside={reading === null ? null : `= ${reading}`}
      problems={shown}
      warnings={typing ? NONE : warnings}
    >
      <input
        id={id}
        type="text"
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        maxLength={40}
        value={value}
        placeholder={placeholder}
        aria-invalid={shown.length > 0}
        aria-describedby={describedBy(id, reading !== null, warnings.length > 0)}
        onChange={(event) => {
          typed();
          sheet.set(props.label, props.path, event.target.value);
        }}
        onFocus={props.onFocus}
        onBlur={left}
      />
    </Labelled>
  );
}

export function TextField({
  type = 'text',
  maxLength = 200,
  ...props
}: FieldProps & {
  readonly type?: 'text' | 'email' | 'tel' | 'date' | 'datetime-local';
  readonly maxLength?: number;
}) {
  const { sheet, id, value, problems, warnings } = useField(props);
  return (
    <Labelled
      id={id}
      label={props.label}
      hideLabel={props.hideLabel}
      className={props.className}
      problems={problems}
      warnings={warnings}
    >
      <input
        id={id}
        type={type}
        autoComplete="off"
        maxLength={type === 'text' ? maxLength : undefined}
        value={value}
        aria-invalid={problems.length > 0}
        aria-describedby={describedBy(id, false, warnings.length > 0)}
        onChange={(event) => sheet.set(props.label, props.path, event.target.value)}
        onFocus={props.onFocus}
      />
    </Labelled>
  );
}

export function ProseField({ rows = 3, ...props }: FieldProps & { readonly rows?: number }) {
  const { sheet, id, value, problems } = useField(props);
  return (
    <Labelled
      id={id}
      label={props.label}
      className={`field-prose ${props.className ?? ''}`}
      problems={problems}
    >
      <textarea
        id={id}
        rows={rows}
        maxLength={4000}
        value={value}
        aria-invalid={problems.length > 0}
        aria-describedby={`${id}-problem`}
        onChange={(event) => sheet.set(props.label, props.path, event.target.value)}
      />
    </Labelled>
  );
}

export interface Option {
  readonly value: string;
  readonly label: string;
}

export function SelectField({
  options,
  onChosen,
  ...props
}: FieldProps & {
  readonly options: readonly Option[];
  /** Does more than change the one field. */
  readonly onChosen?: (value: string) => void;
}) {
  const { sheet, id, value, problems, warnings } = useField(props);
  const known = options.some((option) => option.value === value);
  return (
    <Labelled
      id={id}
      label={props.label}
      hideLabel={props.hideLabel}
      className={props.className}
      problems={problems}
      warnings={warnings}
    >
      <select
        id={id}
        value={value}
        aria-invalid={problems.length > 0}
        aria-describedby={describedBy(id, false, warnings.length > 0)}
        onChange={(event) =>
          onChosen === undefined
            ? sheet.set(props.label, props.path, event.target.value)
            : onChosen(event.target.value)
        }
        onFocus={props.onFocus}
      >
        {!known && <option value={value}>{value === '' ? 'choose' : value}</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </Labelled>
  );
}
