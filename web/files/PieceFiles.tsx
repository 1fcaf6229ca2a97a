/** Drawings in and out: a DXF or SVG file read, looked at and used; the piece saved as one. */
import { useState } from 'react';
import { DropZone } from 'react-aria-components/DropZone';
import type { DrawingUnit } from '#core/piece/files/drawing-unit.ts';
import type { ImportedDrawing } from '#core/piece/files/imported-drawing.ts';
import type { Piece } from '#core/piece/piece.ts';
import type { Result } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { DrawingPreview } from './DrawingPreview.tsx';
import { readDrawing, tooLarge } from './read-drawing.ts';
import { saveDrawing, WAYS } from './save-drawing.ts';

interface Props {
  /** The piece as it stands; undefined while it is not sound, then nothing can be saved. */
  readonly piece?: Piece;
  readonly name: string;
  readonly system: System;
  readonly onUse: (drawing: ImportedDrawing) => void;
  /** Takes the drawing as a full-size template of one hole. */
  readonly onTemplate?: (drawing: ImportedDrawing) => void;
}

export function PieceFiles({ piece, name, system, onUse, onTemplate }: Props) {
  const [file, setFile] = useState<{ readonly name: string; readonly text: string } | null>(null);
  const [read, setRead] = useState<Result<ImportedDrawing> | null>(null);
  const [said, setSaid] = useState('');
  const take = async (chosen: File) => {
    setFile(null);
    setSaid(`Reading ${chosen.name} …`);
    try {
      const large = tooLarge(chosen.size);
      const text = large === null ? await chosen.text() : '';
      if (large === null) setFile({ name: chosen.name, text });
      setRead(large ?? readDrawing(chosen.name, text, {}));
      setSaid(chosen.name);
    } catch (error) {
      setRead(null);
      setSaid(
        `${chosen.name} could not be read (${error instanceof Error ? error.message : String(error)}).`,
      );
    }
  };
  return (
    <fieldset className="plain piece-files">
      <legend className="unseen">Drawing files</legend>
      <DropZone
        className="drop"
        aria-label="Drop a drawing here"
        getDropOperation={() => 'copy'}
        onDrop={async (event) => {
          const item = event.items.find((i) => i.kind === 'file');
          if (item !== undefined) await take(await item.getFile());
        }}
      >
        <label className="field">
          <span className="field-label">Drop a DXF or SVG drawing here, or choose one</span>
          <input
            type="file"
            accept=".dxf,.svg,image/svg+xml,image/vnd.dxf"
            onChange={(event) => {
              const chosen = event.target.files?.[0];
              // The same file can then be chosen again, after it was put right.
              event.target.value = '';
              if (chosen !== undefined) void take(chosen);
            }}
          />
        </label>
      </DropZone>
      <p role="status">{said}</p>
      {read !== null && (
        <DrawingAnswer
          read={read}
          system={system}
          onUnit={(unit) => file !== null && setRead(readDrawing(file.name, file.text, { unit }))}
          onUse={(drawing) => {
            onUse(drawing);
            setRead(null);
            setSaid('');
          }}
          {...(onTemplate === undefined
            ? {}
            : {
                onTemplate: (drawing) => {
                  onTemplate(drawing);
                  setRead(null);
                  setSaid('');
                },
              })}
        />
      )}
      <div className="actions">
        {WAYS.map((way) => (
          <button
            key={way.label}
            type="button"
            disabled={piece === undefined}
            onClick={() => {
              try {
                if (piece !== undefined) saveDrawing(piece, name, way, system);
              } catch (error) {
                setSaid(`Not saved: ${error instanceof Error ? error.message : String(error)}`);
              }
            }}
          >
            Save as {way.label}
          </button>
        ))}
      </div>
    </fieldset>
  );
}

interface AnswerProps {
  readonly read: Result<ImportedDrawing>;
  readonly system: System;
  readonly onUnit: (unit: DrawingUnit) => void;
  readonly onUse: (drawing: ImportedDrawing) => void;
  readonly onTemplate?: (drawing: ImportedDrawing) => void;
}

/** What came of a file: the picture and a button, the question for its unit, or what is wrong. */
export function DrawingAnswer({ read, system, onUnit, onUse, onTemplate }: AnswerProps) {
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
          <button type="button" className="primary" onClick={() => onUse(read.value)}>
            Use it
          </button>
          {onTemplate !== undefined && (
            <button type="button" onClick={() => onTemplate(read.value)}>
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
