import { useMemo } from 'react';
import type { CutTogether } from '#core/job/cut-together.ts';
import { FIRST_PIECE_ID } from '#core/job/document.ts';
import { piecesOf } from '#core/job/pieces.ts';
import { standingCuts } from '#core/shelf/offcuts.ts';
import { useOffcutShelf } from '#web/api/offcuts-api.ts';
import { useShop } from '#web/api/queries.ts';
import { CuttingPanel } from '#web/body/CuttingPanel.tsx';
import { useCutting } from '#web/body/use-cutting.ts';
import { Guard } from '#web/shell/Guard.tsx';
import { useSheet } from '../../context.tsx';
import { counted } from '../../summaries.ts';
import { CutAsPlanned } from './CutAsPlanned.tsx';
import { Fold } from './Fold.tsx';
import { togetherKey } from './together.ts';
import { useJobCuts } from './use-job-cuts.ts';

/** The parts of all pieces of the job out of the same sheets, one plan for each board and thickness. */
export function CutList() {
  const { speak } = useSheet();
  const { lists, waiting, others } = useJobCuts();
  const count = lists.reduce(
    (sum, { parts }) => sum + parts.reduce((n, part) => n + (part.count ?? 1), 0),
    0,
  );
  return (
    <div className="folds">
      <Fold
        id="cut-list"
        name="Cut list"
        summary={
          lists.length === 0
            ? 'The parts of all pieces together, when their shapes and sizes are there.'
            : `${counted(count, 'part')} of all pieces together, ${lists
                .map(({ board, thickness_m }) => `${board} ${speak.length(thickness_m)}`)
                .join(' and ')}.`
        }
      >
        <p className="section-note">
          Parts of one board and thickness are cut out of the same sheets, whichever piece they belong to.
          Sheets, saw cut and grain are those of the pieces, under Body.
        </p>
        {waiting.length > 0 && <p>Not in it yet, as sizes are missing or wrong: {waiting.join(', ')}.</p>}
        {others.length > 0 && (
          <p>Of a board no body is built of, and not in the cuts below: {others.join(', ')}.</p>
        )}
        {lists.map((list) => (
          <Together key={togetherKey(list.board, list.thickness_m)} list={list} />
        ))}
      </Fold>
    </div>
  );
}

function Together({ list }: { readonly list: CutTogether }) {
  const { jobId, document: job, system, speak } = useSheet();
  const { currency } = useShop();
  const { movements } = useOffcutShelf();
  const { parts, stock, cutting } = list;
  const asked = JSON.stringify({ parts, stock, options: cutting });
  // The same question stays the same object when something else of the job is typed.
  const request = useMemo(() => (stock.length === 0 ? null : JSON.parse(asked)), [stock.length, asked]);
  const { plan, working, failed } = useCutting(request);
  const names = piecesOf(job).filter(({ id }) => list.pieces.includes(id));
  const cutAlone = names.filter(
    ({ id }) =>
      standingCuts(
        movements.map(({ movement }) => movement),
        jobId,
        id === FIRST_PIECE_ID ? '' : id,
      ).length > 0,
  );
  const title = `${list.board} ${speak.length(list.thickness_m)}: ${names.map(({ name }) => name).join(', ')}`;
  return (
    <section aria-label={title}>
      <h4 className="fold-title">{title}</h4>
      {stock.length === 0 ? (
        <p className="section-note">
          There is no sheet of this board to cut from. Add one under Body, or to the sheets of the shop.
        </p>
      ) : (
        <Guard what="The cutting plan" of={list}>
          <p role="status" className="section-note">
            {working && 'Planning the cuts …'}
            {failed !== null && `The cuts could not be planned: ${failed}`}
          </p>
          {plan?.ok && (
            <CutAsPlanned
              piece={togetherKey(list.board, list.thickness_m)}
              of={{ board: list.board, boardThickness_m: list.thickness_m, offcuts: list.offcuts }}
              plan={plan.value}
              {...(cutAlone.length === 0
                ? {}
                : { against: `Cut by itself already: ${cutAlone.map(({ name }) => name).join(', ')}.` })}
            />
          )}
          {plan !== null && (
            <CuttingPanel plan={plan} system={system} {...(list.priced ? { currency } : {})} />
          )}
        </Guard>
      )}
    </section>
  );
}
