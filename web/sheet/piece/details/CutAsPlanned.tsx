import type { BodyWork } from '#core/job/body-work.ts';
import type { CuttingPlan } from '#core/piece/cutting/cutting.ts';
import type { Offcut, OffcutMovement } from '#core/shelf/offcuts.ts';
import { standingCuts } from '#core/shelf/offcuts.ts';
import { useMoveOffcuts, useOffcutShelf } from '#web/api/offcuts-api.ts';
import type { Path } from '#web/draft/at-path.ts';
import { uuid7 } from '#web/draft/uuid7.ts';
import { dayAndClock } from '#web/units/dates.ts';
import { useSheet } from '../../context.tsx';
import { counted } from '../../summaries.ts';
import { pieceKey } from './use-body-at.ts';
import { usePieceAt } from './use-piece-at.ts';

interface Props {
  readonly base: Path;
  readonly work: BodyWork;
  readonly plan: CuttingPlan;
}

/** Puts the offcuts worth keeping on the shelf and takes those that were cut up; undone by the opposite movement. */
export function CutAsPlanned({ base, work, plan }: Props) {
  const { jobId, document: job, system } = useSheet();
  const { document } = usePieceAt(base);
  const { movements, known } = useOffcutShelf();
  const { mutate, isPending, error } = useMoveOffcuts();
  const piece = pieceKey(job, base);
  const cut = standingCuts(
    movements.map(({ movement }) => movement),
    jobId,
    piece,
  ).at(-1);
  const { puts, takes } = movementOf(plan, work, document.board);
  const blank = { jobId, piece, puts: [], takes: [], reverses: null };
  const moves = puts.length + takes.length > 0;
  const at = movements.find(({ movement }) => movement.id === cut?.id)?.at;
  return (
    <div className="cut-as-planned">
      {cut === undefined ? (
        <p>
          <button
            type="button"
            className="primary"
            disabled={!known || isPending || !moves}
            onClick={() =>
              mutate({
                ...blank,
                id: uuid7(),
                why: 'cut as planned',
                puts: puts.map(named),
                takes: [...takes],
              })
            }
          >
            Cut as planned
          </button>{' '}
          <span className="section-note">
            {moves
              ? moveWords(puts.length, takes.length, 'goes', 'go', 'leaves', 'leave')
              : 'No offcut is worth keeping.'}
          </span>
        </p>
      ) : (
        <p>
          <strong>Cut as planned</strong>
          {at !== undefined && ` ${dayAndClock(Date.parse(at), system)}`}:{' '}
          {moveWords(cut.puts.length, cut.takes.length, 'went', 'went', 'left', 'left')}{' '}
          <button
            type="button"
            className="small"
            disabled={isPending}
            onClick={() => mutate({ ...blank, id: uuid7(), why: 'reversed', reverses: cut.id })}
          >
            Undo the cut
          </button>
        </p>
      )}
      <p role="status" className="unseen">
        {isPending ? 'Moving the offcuts …' : ''}
      </p>
      {error !== null && (
        <p className="fold-problem" role="alert">
          Not moved: {error.message}
        </p>
      )}
    </div>
  );
}

const named = (offcut: Omit<Offcut, 'id'>): Offcut => ({ ...offcut, id: uuid7() });

/** "2 offcuts go on the shelf, 1 offcut leaves it." */
function moveWords(
  puts: number,
  takes: number,
  goes: string,
  go: string,
  leaves: string,
  leave: string,
): string {
  const put = puts > 0 && `${counted(puts, 'offcut')} ${puts === 1 ? goes : go} on the shelf`;
  const took = takes > 0 && `${counted(takes, 'offcut')} ${takes === 1 ? leaves : leave} it`;
  return `${[put, took].filter(Boolean).join(', ')}.`;
}

/** What a plan does to the shelf. Sheets lie with their grain along x, so an offcut's length is what lies along x. */
export function movementOf(
  plan: CuttingPlan,
  work: BodyWork,
  board: Offcut['board'],
): { readonly puts: readonly Omit<Offcut, 'id'>[]; readonly takes: OffcutMovement['takes'] } {
  return {
    puts: plan.sheets.flatMap((sheet) =>
      sheet.offcuts.map((rest) => ({
        ...{ board, thickness_m: work.boardThickness_m },
        ...{ length_m: rest.alongX_m, width_m: rest.alongY_m },
      })),
    ),
    takes: plan.sheets.flatMap((sheet) => work.offcuts[sheet.stock]?.id ?? []),
  };
}
