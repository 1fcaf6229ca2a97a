/** Where a full-size template comes in as a cut-out. */
import { useEffect, useRef, useState } from 'react';
import type { ImportedDrawing } from '#core/piece/files/imported-drawing.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { ReadDrawing } from '#web/files/ReadDrawing.tsx';

interface Props {
  readonly id: string;
  readonly system: System;
  /** What keeps the drawing from being a cut-out; empty when it was taken. */
  readonly onDrawing: (drawing: ImportedDrawing) => readonly Problem[];
  readonly onClose: () => void;
}

export function TemplatePanel({ id, system, onDrawing, onClose }: Props) {
  const [wrong, setWrong] = useState<readonly Problem[]>([]);
  const panel = useRef<HTMLElement>(null);
  useEffect(() => panel.current?.querySelector<HTMLElement>('input')?.focus(), []);
  return (
    <section
      className="editor-panel"
      id={`${id}-template`}
      aria-labelledby={`${id}-template-name`}
      ref={panel}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.preventDefault();
        onClose();
      }}
    >
      <h3 id={`${id}-template-name`}>Sink template</h3>
      <button type="button" className="small editor-done" onClick={onClose}>
        Close
      </button>
      <p>
        A drawing of the hole at full size, one closed line. It is put where there is room for it; then move
        and turn it.
      </p>
      <ReadDrawing system={system} onTemplate={(drawing) => setWrong(onDrawing(drawing))} />
      {wrong.length > 0 && (
        <div role="alert">
          {wrong.map((problem) => (
            <p key={problem.code + problem.message} className="fold-problem">
              <ProblemText problem={problem} />
            </p>
          ))}
        </div>
      )}
    </section>
  );
}
