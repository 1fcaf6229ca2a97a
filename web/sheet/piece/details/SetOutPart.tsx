import { piecesOf } from '#core/job/pieces.ts';
import type { Path } from '#web/draft/at-path.ts';
import { SetOutLinks } from '#web/set-out/SetOutLinks.tsx';
import { useSheet } from '../../context.tsx';
import { Fold } from './Fold.tsx';
import { usePieceAt } from './use-piece-at.ts';

/** The sheets the shop builds from, as PDF. */
export function SetOutPart({ base, id }: { readonly base: Path; readonly id: string }) {
  const { jobId, document, system, unsaved } = useSheet();
  const pieces = piecesOf(document);
  const place = pieces.find(({ path }) => path === base.join('.'));
  const several = place !== undefined && pieces.length > 1;
  const { piece } = usePieceAt(base);
  return (
    <Fold
      id={id}
      name="Set-out sheet"
      summary={
        piece === null
          ? 'Comes with the shape and all sizes of the piece.'
          : 'Dimensions, diagonals and cut-outs on paper; a true-scale template on tiles.'
      }
    >
      {piece === null ? (
        <p className="section-note">
          The sheet holds every dimension, the diagonals to check the glue-up by and the cut-outs from two
          edges. It needs a piece whose shape and sizes are all there.
        </p>
      ) : (
        <SetOutLinks jobId={jobId} system={system} unsaved={unsaved} {...(several ? { piece: place } : {})} />
      )}
    </Fold>
  );
}
