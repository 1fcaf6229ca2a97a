import { useMemo } from 'react';
import type { PieceDocument } from '#core/job/document.ts';
import { useOffcutShelf } from '#web/api/offcuts-api.ts';
import { useShop } from '#web/api/queries.ts';
import { BodyPanel } from '#web/body/BodyPanel.tsx';
import { CuttingPanel } from '#web/body/CuttingPanel.tsx';
import { cuttingForPaper } from '#web/body/use-cutting.ts';
import { getAt, type Path } from '#web/draft/at-path.ts';
import { useSheet } from '../context.tsx';
import { bodyForPaper, pieceKey, resinOnPiece_kg, shelfBefore } from '../piece/details/use-body-at.ts';

/** Parts list, cautions and cut list of a piece, on a page of their own; nothing while there is nothing to build. */
interface Props {
  readonly base: Path;
  readonly name: string;
  /** False where the pieces of the job are cut together, on a list of their own. */
  readonly withCuts: boolean;
}

export function BodyOrder({ base, name, withCuts }: Props) {
  const { jobId, document: job, forecast, system } = useSheet();
  const { body, currency } = useShop();
  const { movements } = useOffcutShelf();
  const found = useMemo(() => {
    const made = bodyForPaper(
      getAt(job, base) as PieceDocument,
      body,
      shelfBefore(
        movements.map(({ movement }) => movement),
        jobId,
        pieceKey(job, base),
      ),
      Math.round(resinOnPiece_kg(forecast, job, base) * 1000) / 1000,
    );
    return made === null
      ? null
      : { ...made, plan: made.request === null || !withCuts ? null : cuttingForPaper(made.request) };
  }, [job, base, body, movements, jobId, forecast, withCuts]);
  if (found === null) return null;
  return (
    <section className="wo-body">
      <h2>{name}</h2>
      <BodyPanel piece={found.piece} system={system} options={found.work.options} />
      {found.plan !== null && (
        <CuttingPanel plan={found.plan} system={system} {...(found.work.priced ? { currency } : {})} />
      )}
    </section>
  );
}
