import { useEffect, useState } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import { describedBy, Labelled } from '#web/field/Labelled.tsx';

interface Props {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly maxLength?: number;
  readonly hideLabel?: boolean;
  readonly className?: string;
  readonly inputMode?: 'decimal' | 'text';
  /** Takes the text on leaving the field or Enter; a problem keeps the text and is shown. */
  readonly keep: (typed: string) => Problem | null;
}

/** A field that is kept when it is left. What was typed stays on a problem; a change from elsewhere comes in when it is not in use. */
export function KeptField(props: Props) {
  const { id, label, value, maxLength = 60, hideLabel, className, inputMode, keep } = props;
  const [typed, setTyped] = useState<string | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new value from outside ends the local problem
  useEffect(() => {
    setTyped(null);
    setProblem(null);
  }, [value]);
  const leave = () => {
    if (typed === null || typed === value) {
      setTyped(null);
      setProblem(null);
      return;
    }
    const found = keep(typed);
    setProblem(found);
  };
  return (
    <Labelled
      id={id}
      label={label}
      hideLabel={hideLabel}
      className={className}
      problems={problem === null ? [] : [problem]}
    >
      <input
        id={id}
        type="text"
        inputMode={inputMode}
        autoComplete="off"
        maxLength={maxLength}
        value={typed ?? value}
        aria-invalid={problem !== null}
        aria-describedby={describedBy(id, false, false)}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={leave}
        onKeyDown={(event) => {
          if (event.key === 'Enter') leave();
          if (event.key === 'Escape') {
            setTyped(null);
            setProblem(null);
          }
        }}
      />
    </Labelled>
  );
}
