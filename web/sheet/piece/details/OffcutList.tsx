import type { BoardName } from '#core/piece/body/board-names.ts';
import type { OffcutMovement } from '#core/shelf/offcuts.ts';
import { useMoveOffcuts, useOffcutShelf } from '#web/api/offcuts-api.ts';
import { uuid7 } from '#web/draft/uuid7.ts';
import { toast } from '#web/shell/toasts.tsx';
import { useSheet } from '../../context.tsx';

/** What lies on the shelf of one board, and a way to take off what was burnt or given away. */
export function OffcutList({ board }: { readonly board: BoardName }) {
  const { speak } = useSheet();
  const { shelf, known } = useOffcutShelf();
  const { mutateAsync, isPending, error } = useMoveOffcuts();
  const here = shelf.filter((offcut) => offcut.board === board);
  const send = (movement: OffcutMovement) => mutateAsync(movement).catch(() => undefined);
  const takeOff = async (id: string) => {
    const movement: OffcutMovement = {
      ...{ id: uuid7(), jobId: null, piece: '', why: 'taken by hand', puts: [], takes: [id], reverses: null },
    };
    try {
      await mutateAsync(movement);
    } catch {
      return;
    }
    toast('The offcut is off the shelf.', {
      label: 'Undo',
      run: () => void send({ ...movement, id: uuid7(), why: 'reversed', takes: [], reverses: movement.id }),
    });
  };
  return (
    <>
      {error !== null && (
        <p className="fold-problem" role="alert">
          Not moved: {error.message}
        </p>
      )}
      {here.length === 0 ? (
        <p className="section-note">
          {known
            ? `No offcut of ${board} is on the shelf. Those worth keeping are put there when you press "Cut as planned".`
            : 'Reading the shelf …'}
        </p>
      ) : (
        <ul className="plain-list offcuts" aria-label={`Offcuts of ${board} on the shelf`}>
          {here.map(({ id, length_m, width_m, thickness_m }) => {
            const size = `${speak.length(length_m)} x ${speak.length(width_m)}, ${speak.length(thickness_m)}`;
            return (
              <li key={id}>
                <span>{size}</span>
                <button
                  type="button"
                  className="small"
                  disabled={isPending}
                  aria-label={`Gone: offcut ${size}, off the shelf`}
                  onClick={() => void takeOff(id)}
                >
                  Gone
                </button>
              </li>
            );
          })}
        </ul>
      )}
    </>
  );
}
