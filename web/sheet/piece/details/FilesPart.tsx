import { useState } from 'react';
import { holeDocuments, outlineDocument } from '#core/job/outline-document.ts';
import type { ImportedDrawing } from '#core/piece/files/imported-drawing.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { useShop } from '#web/api/queries.ts';
import type { Path } from '#web/draft/at-path.ts';
import { withTemplate } from '#web/editor/holes.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { PieceFiles } from '#web/files/PieceFiles.tsx';
import { useSheet } from '../../context.tsx';
import { counted } from '../../summaries.ts';
import { Fold } from './Fold.tsx';
import { usePieceAt } from './use-piece-at.ts';
import { withOutline } from './with-outline.ts';

interface Said {
  readonly done: string;
  readonly problems: readonly Problem[];
}

/** Drawings in and out: what a file holds becomes the outline, its holes the cut-outs; undo brings the old ones back. */
export function FilesPart({ base, id }: { readonly base: Path; readonly id: string }) {
  const { system, document: job } = useSheet();
  const { document: now, piece, read, change } = usePieceAt(base);
  const { rates } = useShop();
  const [said, setSaid] = useState<Said | null>(null);

  const use = (drawing: ImportedDrawing) => {
    const outline = outlineDocument(drawing, system);
    if (!outline.ok) {
      setSaid({ done: 'Nothing was changed.', problems: outline.problems });
      return;
    }
    const { cutOuts, left } = holeDocuments(drawing, system);
    change('Use a drawing', (p) => ({
      ...withOutline(p, outline.value),
      // A drawing without holes says nothing about those that are there.
      cutOuts: drawing.cutOuts.length === 0 ? p.cutOuts : cutOuts.slice(0, 50),
    }));
    const holes = drawing.cutOuts.length === 0 ? '' : ` and ${counted(cutOuts.length, 'cut-out')}`;
    setSaid({
      done: `The outline${holes} now come from the drawing. Undo brings the old ones back.`,
      problems: left,
    });
  };

  const template = (drawing: ImportedDrawing) => {
    if (read.piece === null) {
      setSaid({ done: 'Nothing was changed: the piece has no shape that can be read yet.', problems: [] });
      return;
    }
    const made = withTemplate(now, read.piece, drawing, { system, snaps: true }, rates);
    if (!made.ok) {
      setSaid({ done: 'Nothing was changed.', problems: made.problems });
      return;
    }
    const cutOut = made.value.cutOuts.at(-1)!;
    change('Add sink template', (p) => ({ ...p, cutOuts: [...p.cutOuts, cutOut] }));
    setSaid({
      done: `The cut-out "${cutOut.name}" is the last in the list of cut-outs. Drag it on the drawing, or type where it goes and how it is turned.`,
      problems: [],
    });
  };

  return (
    <Fold
      id={id}
      name="Drawing files"
      summary={
        piece === null
          ? 'DXF or SVG in; out when the piece is complete.'
          : 'DXF or SVG in and out, also a full-size template of a sink.'
      }
    >
      <PieceFiles
        {...(piece === null ? {} : { piece })}
        name={job.title}
        system={system}
        onUse={use}
        onTemplate={template}
      />
      {piece === null && (
        <p className="section-note">
          A drawing can be saved when the shape and all sizes of the piece are there.
        </p>
      )}
      <div role="status">
        {said !== null && <p>{said.done}</p>}
        {said?.problems.map((problem) => (
          <p key={problem.code + problem.message} className="fold-problem">
            <ProblemText problem={problem} />
          </p>
        ))}
      </div>
    </Fold>
  );
}
