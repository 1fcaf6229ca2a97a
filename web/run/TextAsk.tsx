import { useId, useState } from 'react';
import type { Problem, Result } from '#core/quantity/problem.ts';
import { describedBy, Labelled } from '#web/field/Labelled.tsx';

interface Props {
  readonly label: string;
  /** How it may be typed. */
  readonly hint: string;
  readonly read: (text: string) => Result<number>;
  /** null: nothing usable stands there. */
  readonly onRead: (value: number | null) => void;
  readonly start?: string;
}

/** One figure to type, with its unit or without. */
export function TextAsk({ label, hint, read, onRead, start = '' }: Props) {
  const id = useId();
  const [text, setText] = useState(start);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  return (
    <Labelled id={id} label={label} aside={hint} problems={problems}>
      <input
        id={id}
        type="text"
        autoComplete="off"
        value={text}
        aria-invalid={problems.length > 0}
        aria-describedby={describedBy(id, true, false)}
        onChange={({ target }) => {
          setText(target.value);
          const found = target.value.trim() === '' ? null : read(target.value);
          setProblems([]);
          onRead(found?.ok ? found.value : null);
        }}
        onBlur={() => {
          const found = text.trim() === '' ? null : read(text);
          setProblems(found === null || found.ok ? [] : found.problems);
        }}
      />
    </Labelled>
  );
}
