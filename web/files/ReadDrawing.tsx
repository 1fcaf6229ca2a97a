/** A DXF or SVG file chosen or dropped, read here, looked at and used. */
import { useState } from 'react';
import { DropZone } from 'react-aria-components/DropZone';
import type { ImportedDrawing } from '#core/piece/files/imported-drawing.ts';
import type { Result } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { DrawingAnswer, type DrawingUses } from './DrawingAnswer.tsx';
import { readDrawing, tooLarge } from './read-drawing.ts';

export function ReadDrawing({ system, onUse, onTemplate }: DrawingUses & { readonly system: System }) {
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
  const then = (use: (drawing: ImportedDrawing) => void) => (drawing: ImportedDrawing) => {
    use(drawing);
    setRead(null);
    setSaid('');
  };
  return (
    <>
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
          {...(onUse === undefined ? {} : { onUse: then(onUse) })}
          {...(onTemplate === undefined ? {} : { onTemplate: then(onTemplate) })}
        />
      )}
    </>
  );
}
