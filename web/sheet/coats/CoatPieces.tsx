import '../piece/pieces.css';
import type { CoatDocument } from '#core/job/document.ts';
import { coatedIds, piecesOf } from '#core/job/pieces.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { useSheet } from '../context.tsx';

/** Which pieces a coat is poured on; nothing to choose in a job of one. */
export function CoatPieces({ coat, index }: { readonly coat: CoatDocument; readonly index: number }) {
  const { document, edit, problems, warnings } = useSheet();
  const pieces = piecesOf(document);
  const place = `coats.${index}.pieces`;
  const said = [...(problems.get(place) ?? []), ...(warnings.get(place) ?? [])];
  if (pieces.length < 2 && said.length === 0) return null;
  const on = coatedIds(coat, pieces);
  const choose = (id: string, chosen: boolean) => {
    // In the order of the job; all of them is an empty list, so that a piece added later is coated too.
    const ids = pieces.map((piece) => piece.id).filter((each) => (each === id ? chosen : on.includes(each)));
    if (ids.length === 0) return;
    const list = ids.length === pieces.length ? [] : ids;
    edit('Pieces of a coat', place, (d) => ({
      ...d,
      coats: d.coats.map((each, i) => (i === index ? { ...each, pieces: list } : each)),
    }));
  };
  const left = pieces.filter(({ id }) => on.includes(id));
  return (
    <>
      <fieldset className="coat-pieces" id={`f-coats-${index}-pieces`} tabIndex={-1}>
        <legend className="field-label">Poured on</legend>
        {pieces.map(({ id, name }) => (
          <label key={id}>
            <input
              type="checkbox"
              checked={on.includes(id)}
              // The last one stays: a coat is poured on something.
              disabled={left.length === 1 && left[0]!.id === id}
              onChange={(event) => choose(id, event.target.checked)}
            />
            {name}
          </label>
        ))}
      </fieldset>
      {said.map((problem) => (
        <p className="section-note" role="alert" key={problem.code + (problem.read ?? '')}>
          <ProblemText problem={problem} />
        </p>
      ))}
    </>
  );
}
