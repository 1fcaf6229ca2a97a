import './pieces.css';
import type { PieceDocument } from '#core/job/document.ts';
import { MOST_PIECES, withCopy, withoutPiece, withPiece } from '#core/job/pieces.ts';
import { uuid7 } from '#web/draft/uuid7.ts';
import { TextField } from '#web/field/sheet-fields.tsx';
import { toast } from '#web/shell/toasts.tsx';
import { problemsUnder, useSheet } from '../context.tsx';
import { togetherSummary } from '../summaries.ts';
import type { ChosenPiece } from './chosen-piece.ts';

/** The pieces of the job in a row; the rest of the section shows the one that is chosen. */
export function PieceChooser({ pieces, index, chosen, base, choose }: ChosenPiece) {
  const { edit, forecast, problems, speak } = useSheet();
  const several = pieces.length > 1;
  const full = pieces.length >= MOST_PIECES;
  const add = (label: string, make: (id: string) => Parameters<typeof edit>[2]) => {
    const id = uuid7();
    edit(label, '', make(id));
    choose(id);
  };
  const remove = () => {
    const next = pieces[index + 1] ?? pieces[index - 1];
    edit(`Remove ${chosen.name}`, '', (job) => withoutPiece(job, chosen.id));
    // The piece after the first one becomes the first.
    choose(index === 0 ? pieces[0]!.id : (next?.id ?? chosen.id));
    toast(`${chosen.name} is removed. Undo brings it back.`);
  };
  return (
    <section className="pieces" aria-label="Pieces of this job">
      <div className="pieces-row">
        <span className="pieces-label">Pieces of this job</span>
        {pieces.map(({ id, name, path }) => {
          const wrong = problemsUnder(problems, path).length;
          return (
            <button
              type="button"
              key={id}
              className="pieces-one"
              aria-pressed={id === chosen.id}
              onClick={() => choose(id)}
            >
              {name}
              {wrong > 0 && <span className="part-problems"> {wrong} to mend</span>}
            </button>
          );
        })}
        <button
          type="button"
          className="small"
          disabled={full}
          onClick={() => add('Add a piece', (id) => (job) => withPiece(job, id, builtLike(job.piece)))}
        >
          + Add a piece
        </button>
      </div>
      {full && <p className="section-note">A job holds up to {MOST_PIECES} pieces.</p>}
      <div className="pieces-own">
        {several && <TextField label="Name of this piece" path={[...base, 'name']} maxLength={80} />}
        <button
          type="button"
          className="small"
          disabled={full}
          onClick={() => add(`Duplicate ${chosen.name}`, (id) => (job) => withCopy(job, chosen.id, id))}
        >
          Duplicate {chosen.name}
        </button>
        {several && (
          <button type="button" className="small" onClick={remove}>
            Remove {chosen.name}
          </button>
        )}
      </div>
      {several && <p className="section-note">{togetherSummary(forecast, speak)}</p>}
    </section>
  );
}

/** A further piece is mostly built of the same board as the first. */
function builtLike({ board, boardThickness, bodyThickness }: PieceDocument): Partial<PieceDocument> {
  return { board, boardThickness, bodyThickness };
}
