import { useEffect, useId, useState } from 'react';
import type { LookMoveDocument } from '#core/look/look-document.ts';
import { sayProblem } from '#core/quantity/problem.ts';
import { useSheet } from '#web/sheet/context.tsx';
import { Chosen, Worded } from './Chosen.tsx';
import { fieldsOf, fieldText, type MoveField, readField } from './move-fields.ts';

interface Props {
  readonly move: LookMoveDocument;
  readonly colours: readonly { readonly value: string; readonly label: string }[];
  readonly edges: readonly string[];
  /** A place is set on the picture: it is not asked for here. */
  readonly placeless?: boolean;
  readonly onChange: (move: LookMoveDocument) => void;
}

/** Everything of a move, typed; a change counts when its field is left or Enter is pressed. */
export function MoveFields({ move, colours, edges, placeless = false, onChange }: Props) {
  const { system } = useSheet();
  const id = useId();
  const fields = fieldsOf(move).filter((field) => !placeless || !PLACES.test(field.key));
  return (
    <div className="form form-tight look-fields">
      {move.kind === 'puddle' && (
        <Chosen
          label="Colour"
          value={move.colour}
          options={colours}
          onChange={(colour) => onChange({ ...move, colour })}
        />
      )}
      {fields.map((field) => (
        <FieldOf key={field.key} field={field} system={system} onChange={onChange} />
      ))}
      {move.kind === 'fogged edge' && (
        <>
          <div className="field">
            <label className="field-label" htmlFor={`${id}-colour`}>
              Sprayed colour, by eye
            </label>
            <input
              id={`${id}-colour`}
              type="color"
              className="swatch-input"
              value={move.colour}
              onChange={(event) => onChange({ ...move, colour: event.target.value })}
            />
          </div>
          <fieldset className="plain wide">
            <legend className="field-label">Edges (none ticked: every finished edge)</legend>
            {edges.map((edge) => (
              <label className="tick-box look-edge" key={edge}>
                <input
                  type="checkbox"
                  checked={move.edges.includes(edge)}
                  onChange={(event) =>
                    onChange({
                      ...move,
                      edges: event.target.checked
                        ? [...move.edges, edge]
                        : move.edges.filter((each) => each !== edge),
                    })
                  }
                />
                {edge}
              </label>
            ))}
          </fieldset>
        </>
      )}
    </div>
  );
}

const PLACES = /^(?:place|through|centre)-/;

function FieldOf({
  field,
  system,
  onChange,
}: {
  readonly field: MoveField;
  readonly system: 'us' | 'metric';
  readonly onChange: (move: LookMoveDocument) => void;
}) {
  const shown = fieldText(field, system);
  const [text, setText] = useState(shown);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    setText(shown);
    setProblem(null);
  }, [shown]);
  return (
    <Worded
      label={field.label}
      value={text}
      problem={problem}
      onChange={setText}
      onDone={() => {
        if (text === shown) {
          setProblem(null);
          return;
        }
        const read = readField(text, field, system);
        setProblem(read.ok ? null : read.problems.map(sayProblem).join(' '));
        if (read.ok) onChange(field.put(read.value));
      }}
    />
  );
}
