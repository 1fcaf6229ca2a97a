import { useMemo } from 'react';
import type { PieceDocument } from '#core/job/document.ts';
import { emptyFit, type FitDocument } from '#core/job/fit-document.ts';
import { lengthToType } from '#core/quantity/length-to-type.ts';
import type { System } from '#core/quantity/units.ts';
import type { Path } from '#web/draft/at-path.ts';
import { FitPanel } from '#web/fit/FitPanel.tsx';
import { type FitTop, fitPicture } from '#web/fit/fit-picture.ts';
import { type Made, madeSizes } from '#web/fit/fit-words.ts';
import { toast } from '#web/shell/toasts.tsx';
import { problemsUnder, useSheet } from '../../context.tsx';
import { withShape } from '../outline-forms.ts';
import { Fold } from './Fold.tsx';
import { fitTop } from './fit-top.ts';
import { resinOnPiece_kg, useBodyAt } from './use-body-at.ts';
import { usePieceAt } from './use-piece-at.ts';

/** From the walls to the piece, and whether it gets to the room. */
export function FitPart({ base, id }: { readonly base: Path; readonly id: string }) {
  const { system, forecast, problems, document: job } = useSheet();
  const { document, piece, change } = usePieceAt(base);
  // Jobs from before this was asked hold none.
  const fit = document.fit ?? null;
  const path = base.join('.');
  const body = useBodyAt(base);
  const options = body?.ok ? body.value.work.options : null;
  const resin_kg = options?.resin_kg ?? resinOnPiece_kg(forecast, job, base);
  const top = useMemo(
    () => (piece === null ? null : fitTop(piece, options, resin_kg)),
    [piece, options, resin_kg],
  );
  const use = (sizes: Made) => {
    change('Use the size for the walls', (now) => withSizes(now, sizes, system));
    toast('The piece has the size for these walls. Undo brings the old one back.');
  };
  return (
    <Fold
      id={id}
      name="From wall to piece"
      summary={fit === null ? 'Nothing measured yet.' : fitSummary(fit, top, system)}
      problems={problemsUnder(problems, `${path}.fit`).length}
    >
      {fit === null ? (
        <>
          <p className="section-note">
            Type how wide and deep it is between the walls, and the narrow places on the way. You get the size
            to make, caulk or scribe for each wall, how far the piece can be turned in, and whether it goes
            through the door and round the stair.
          </p>
          <p>
            <button
              type="button"
              className="primary"
              onClick={() => change('Measure for the walls', (now) => ({ ...now, fit: emptyFit() }))}
            >
              Start with the walls
            </button>
          </p>
        </>
      ) : (
        <>
          <FitPanel
            base={[...base, 'fit']}
            document={fit}
            top={top}
            system={system}
            onUse={use}
            notUsable={notUsable(document)}
          />
          <p>
            <button
              type="button"
              className="small"
              onClick={() => change('Remove the wall measurements', (now) => ({ ...now, fit: null }))}
            >
              Remove these measurements
            </button>
          </p>
        </>
      )}
    </Fold>
  );
}

/** A rectangle takes both sizes, an L the length along its back wall; other outlines have no one length. */
function notUsable({ outline }: PieceDocument): string | null {
  return outline === null || outline.shape === 'rectangle' || outline.shape === 'ell'
    ? null
    : 'The outline is no rectangle or L: give it the size in its own fields.';
}

function withSizes(piece: PieceDocument, { length_m, depth_m }: Made, system: System): PieceDocument {
  const sizes = {
    ...(length_m === null ? {} : { length: lengthToType(length_m, system) }),
    ...(depth_m === null ? {} : { width: lengthToType(depth_m, system) }),
  };
  const from = piece.outline === null ? withShape(piece, 'rectangle') : piece;
  const { outline } = from;
  return outline?.shape === 'rectangle' || outline?.shape === 'ell'
    ? { ...from, outline: { ...outline, ...sizes } }
    : piece;
}

/** "Make it 47 7/8 in by 21 7/8 in; it goes in by door and stair." */
function fitSummary(fit: FitDocument, top: FitTop | null, system: System): string {
  const { piece, answers } = fitPicture(fit, top);
  if (piece === null) return 'The joints leave nothing of the piece.';
  const { length_m, depth_m } = madeSizes(piece, system);
  const size = [length_m, depth_m].flatMap((each) => (each === null ? [] : [lengthToType(each, system)]));
  const head = size.length === 0 ? 'No size yet' : `Make it ${size.join(' by ')}`;
  const places = (['door', 'passage', 'stair', 'lift'] as const).filter((place) => answers?.[place] != null);
  const stuck = places.filter((place) => answers?.[place]?.goes === false);
  if (places.length === 0) return `${head}.`;
  return stuck.length > 0
    ? `${head}. It does not get past: ${stuck.join(', ')}.`
    : `${head}. It gets past: ${places.join(', ')}.`;
}
