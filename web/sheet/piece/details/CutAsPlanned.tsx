import type { BodyWork } from '#core/job/body-work.ts';
import type { CuttingPlan } from '#core/piece/cutting/cutting.ts';
import type { Offcut, OffcutMovement } from '#core/shelf/offcuts.ts';
import { standingCuts } from '#core/shelf/offcuts.ts';
import { useMoveOffcuts, useOffcutShelf } from '#web/api/offcuts-api.ts';
import { uuid7 } from '#web/draft/uuid7.ts';
import { dayAndClock } from '#web/units/dates.ts';
import { useSheet } from '../../context.tsx';
import { counted } from '../../summaries.ts';

/** What of a body, or of several, a cut touches. */
export interface CutOf {
  readonly board: Offcut['board'];
  readonly boardThickness_m: number;
  readonly offcuts: BodyWork['offcuts'];
}

interface Props {
  /** As movements of offcuts name it: a piece of the job, or its pieces together. */
  readonly piece: string;
  readonly of: CutOf;
  readonly plan: CuttingPlan;
  /** Why it must not be cut so any more; the button is off. */
  readonly against?: string;
}

/** Puts the offcuts worth keeping on the shelf and takes those that were cut up; undone by the opposite movement. */
export function CutAsPlanned({ piece, of, plan, against }: Props) {
  const { jobId, system } = useSheet();
  const { movements, known } = useOffcutShelf();
  const { mutate, isPending, error } = useMoveOffcuts();
  const cut = standingCuts(
    movements.map(({ movement }) => movement),
    jobId,
    piece,
  ).at(-1);
  const { puts, takes } = movementOf(plan, of);
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
            disabled={!known || isPending || !moves || against !== undefined}
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
            {against !== undefined
              ? against
              : moves
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
  { board, boardThickness_m, offcuts }: CutOf,
): { readonly puts: readonly Omit<Offcut, 'id'>[]; readonly takes: OffcutMovement['takes'] } {
  return {
    puts: plan.sheets.flatMap((sheet) =>
      sheet.offcuts.map((rest) => ({
        ...{ board, thickness_m: boardThickness_m },
        ...{ length_m: rest.alongX_m, width_m: rest.alongY_m },
      })),
    ),
    takes: plan.sheets.flatMap((sheet) => offcuts[sheet.stock]?.id ?? []),
  };
}
