import { useMemo } from 'react';
import { piecesOf } from '#core/job/pieces.ts';
import { useShop } from '#web/api/queries.ts';
import { CuttingPanel } from '#web/body/CuttingPanel.tsx';
import { cuttingForPaper } from '#web/body/use-cutting.ts';
import { useSheet } from '../context.tsx';
import { togetherKey } from '../piece/details/together.ts';
import { useJobCuts } from '../piece/details/use-job-cuts.ts';

/** The cuts of all pieces together, on a page of their own; nothing while there is nothing to cut from. */
export function CutListOrder() {
  const { document: job, system, speak } = useSheet();
  const { currency } = useShop();
  const { lists } = useJobCuts();
  const plans = useMemo(
    () =>
      lists
        .filter(({ stock }) => stock.length > 0)
        .map((list) => ({
          list,
          plan: cuttingForPaper({ parts: list.parts, stock: list.stock, options: list.cutting }),
        })),
    [lists],
  );
  return plans.map(({ list, plan }) => {
    const names = piecesOf(job).filter(({ id }) => list.pieces.includes(id));
    return (
      <section className="wo-body" key={togetherKey(list.board, list.thickness_m)}>
        <h2>
          Cut list, {list.board} {speak.length(list.thickness_m)}: {names.map(({ name }) => name).join(', ')}
        </h2>
        <CuttingPanel plan={plan} system={system} {...(list.priced ? { currency } : {})} />
      </section>
    );
  });
}
