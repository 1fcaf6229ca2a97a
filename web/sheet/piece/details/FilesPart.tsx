import { useState } from 'react';
import { holeDocuments, outlineDocument, templateDocument } from '#core/job/outline-document.ts';
import type { ImportedDrawing } from '#core/piece/files/imported-drawing.ts';
import { outlinePath } from '#core/piece/outline.ts';
import { bounds } from '#core/piece/path.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { Path } from '#web/draft/at-path.ts';
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
  const { piece, read, change } = usePieceAt(base);
  const [said, setSaid] = useState<Said | null>(null);

  const use = (drawing: ImportedDrawing) => {
    const outline = outlineDocument(drawing, system);
    if (!outline.ok) {
      setSaid({ done: 'Nothing was changed.', problems: outline.problems });
      return;
    }
    const { cutOuts, left } = holeDocuments(drawing, system);
    change('Use a drawing', (now) => ({
      ...withOutline(now, outline.value),
      // A drawing without holes says nothing about those that are there.
      cutOuts: drawing.cutOuts.length === 0 ? now.cutOuts : cutOuts.slice(0, 50),
    }));
    const holes = drawing.cutOuts.length === 0 ? '' : ` and ${counted(cutOuts.length, 'cut-out')}`;
    setSaid({
      done: `The outline${holes} now come from the drawing. Undo brings the old ones back.`,
      problems: left,
    });
  };

  const template = (drawing: ImportedDrawing) => {
    const outline = read.piece?.outline ?? null;
    const box = outline === null || piece === null ? null : bounds(outlinePath(outline));
    const middle =
      box === null
        ? { x_m: 0, y_m: 0 }
        : { x_m: (box.minX_m + box.maxX_m) / 2, y_m: (box.minY_m + box.maxY_m) / 2 };
    const cutOut = templateDocument(drawing, middle, 'template', system);
    if (!cutOut.ok) {
      setSaid({ done: 'Nothing was changed.', problems: cutOut.problems });
      return;
    }
    change('Use a template', (now) => ({ ...now, cutOuts: [...now.cutOuts, cutOut.value].slice(0, 50) }));
    setSaid({
      done: 'The cut-out stands in the middle of the piece, the last in the list of cut-outs. Type where it goes.',
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
