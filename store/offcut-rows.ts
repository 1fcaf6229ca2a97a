/** Movements of offcuts in SQL, the same statements for both databases: only ever added to. */
import type { Kysely } from 'kysely';
import { movementProblems, OffcutMovement } from '#core/shelf/offcuts.ts';
import type { MovementOutcome, NewMovement, StoredMovement } from './store.ts';
import { UnreadableDocumentError } from './stored-document.ts';
import type { Tables } from './tables.ts';

type Db = Kysely<Tables>;

export async function listMovements(db: Db): Promise<readonly StoredMovement[]> {
  const rows = await db.selectFrom('offcut_movements').selectAll().orderBy('number').execute();
  return rows.map((row) => ({
    number: row.number,
    at: row.moved_at,
    movement: read(row.movement, row.number),
  }));
}

/** Within a transaction that no other movement of offcuts runs beside. */
export async function addMovement(db: Db, { movement, at }: NewMovement): Promise<MovementOutcome> {
  const before = await listMovements(db);
  const earlier = before.find((each) => each.movement.id === movement.id);
  if (earlier !== undefined) return { outcome: 'saved', number: earlier.number, savedAt: earlier.at };
  const problems = movementProblems(
    before.map((each) => each.movement),
    movement,
  );
  if (problems.length > 0) return { outcome: 'refused', problems };
  const number = (before.at(-1)?.number ?? 0) + 1;
  await db
    .insertInto('offcut_movements')
    .values({ number, id: movement.id, moved_at: at, movement: JSON.stringify(movement) })
    .execute();
  return { outcome: 'saved', number, savedAt: at };
}

function read(text: string, number: number): OffcutMovement {
  let input: unknown = null;
  try {
    input = JSON.parse(text);
  } catch {
    // Said below, as for anything else that is no movement.
  }
  const parsed = OffcutMovement.safeParse(input);
  if (!parsed.success) throw new UnreadableDocumentError(`Movement ${number} of offcuts cannot be read.`);
  return parsed.data;
}
