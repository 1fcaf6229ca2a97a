/** Drawings in and out: a DXF or SVG file read, looked at and used; the piece saved as one. */
import { useState } from 'react';
import type { ImportedDrawing } from '#core/piece/files/imported-drawing.ts';
import type { Piece } from '#core/piece/piece.ts';
import type { System } from '#core/quantity/units.ts';
import { ReadDrawing } from './ReadDrawing.tsx';
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
  const [said, setSaid] = useState('');
  return (
    <fieldset className="plain piece-files">
      <legend className="unseen">Drawing files</legend>
      <ReadDrawing system={system} onUse={onUse} {...(onTemplate === undefined ? {} : { onTemplate })} />
      <div className="actions">
        {WAYS.map((way) => (
          <button
            key={way.label}
            type="button"
            disabled={piece === undefined}
            onClick={() => {
              try {
                if (piece !== undefined) saveDrawing(piece, name, way, system);
                setSaid('');
              } catch (error) {
                setSaid(`Not saved: ${error instanceof Error ? error.message : String(error)}`);
              }
            }}
          >
            Save as {way.label}
          </button>
        ))}
      </div>
      <p role="status">{said}</p>
    </fieldset>
  );
}
