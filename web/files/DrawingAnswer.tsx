/** What came of a drawing file: the picture and what can be done with it, the question for its unit, or what is wrong. */
import type { DrawingUnit } from '#core/piece/files/drawing-unit.ts';
import type { ImportedDrawing } from '#core/piece/files/imported-drawing.ts';
import type { Result } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { DrawingPreview } from './DrawingPreview.tsx';

export interface DrawingUses {
  /** Takes the drawing as the outline of the piece. */
  readonly onUse?: (drawing: ImportedDrawing) => void;
  /** Takes the drawing as a full-size template of one hole. */
  readonly onTemplate?: (drawing: ImportedDrawing) => void;
}

interface Props extends DrawingUses {
  readonly read: Result<ImportedDrawing>;
  readonly system: System;
  readonly onUnit: (unit: DrawingUnit) => void;
}

export function DrawingAnswer({ read, system, onUnit, onUse, onTemplate }: Props) {
  if (read.ok)
    return (
      <div>
        <DrawingPreview drawing={read.value} system={system} />
        {read.warnings.map((w) => (
          <p key={w.code + w.message}>
            <ProblemText problem={w} />
          </p>
        ))}
        <p className="actions">
          {onUse !== undefined && (
            <button type="button" className="primary" onClick={() => onUse(read.value)}>
              Use it
            </button>
          )}
          {onTemplate !== undefined && (
            <button
              type="button"
              {...(onUse === undefined ? { className: 'primary' } : {})}
              onClick={() => onTemplate(read.value)}
            >
              Use it as a cut-out
            </button>
          )}
        </p>
      </div>
    );
  const question = read.problems.find((p) => p.code === 'file.unit');
  if (question !== undefined)
    return (
      <fieldset className="plain">
        <legend>
          {question.message} It is {question.read}.
        </legend>
        {(question.allowed ?? '').split(', ').map((unit) => (
          <button key={unit} type="button" onClick={() => onUnit(unit as DrawingUnit)}>
            {unit}
          </button>
        ))}
      </fieldset>
    );
  return (
    <div role="alert">
      {read.problems.map((p) => (
        <p key={p.code + p.message + p.read}>
          <ProblemText problem={p} />
        </p>
      ))}
    </div>
  );
}
