/** Pours as they happened, in SQL, the same statements for both databases: a frozen pour, and events only ever added to. */
import type { Kysely, Selectable } from 'kysely';
import { FrozenPourDocument, frozenText } from '#core/pour/run/frozen-pour.ts';
import { RunEvent } from '#core/pour/run/run-event.ts';
import type { LockRow } from './job-rows.ts';
import type { NewRun, NewRunEvents, RunSummary, StoredRun, StoredRunEvent } from './store.ts';
import { UnreadableDocumentError } from './stored-document.ts';
import type { Tables } from './tables.ts';

type Db = Kysely<Tables>;

export async function listRuns(db: Db, jobId: string | undefined): Promise<readonly RunSummary[]> {
  const rows = await db
    .selectFrom('runs')
    .select(['id', 'job_id', 'coat_id', 'title', 'opened_at', 'last_event'])
    .$if(jobId !== undefined, (q) => q.where('job_id', '=', jobId!))
    .orderBy('opened_at', 'desc')
    .orderBy('id')
    .execute();
  return rows.map(summaryOf);
}

export async function openRun(db: Db, run: NewRun): Promise<{ outcome: 'saved'; openedAt: string }> {
  await db
    .insertInto('runs')
    .values({
      id: run.id,
      job_id: run.jobId,
      coat_id: run.pour.plan.coatId,
      title: run.title.replaceAll('\0', '').toWellFormed(),
      opened_at: run.at,
      last_event: 0,
      pour: frozenText(run.pour),
    })
    .onConflict((c) => c.column('id').doNothing())
    .execute();
  const row = await db
    .selectFrom('runs')
    .select('opened_at')
    .where('id', '=', run.id)
    .executeTakeFirstOrThrow();
  return { outcome: 'saved', openedAt: row.opened_at };
}

export async function getRun(db: Db, id: string): Promise<StoredRun | null> {
  const row = await db.selectFrom('runs').selectAll().where('id', '=', id).executeTakeFirst();
  if (row === undefined) return null;
  const pour = FrozenPourDocument.safeParse(parsed(row.pour));
  if (!pour.success) throw new UnreadableDocumentError(`The pour of run ${id} cannot be read.`);
  return { ...summaryOf(row), pour: pour.data };
}

/** Within a transaction. */
export async function addEvents(
  db: Db,
  { id, events }: NewRunEvents,
  lockRow: LockRow,
): Promise<number | null> {
  const run = await lockRow(
    db.selectFrom('runs').select('last_event').where('id', '=', id),
  ).executeTakeFirst();
  if (run === undefined) return null;
  const ids = events.map(({ event }) => event.id);
  const there = new Set(
    ids.length === 0
      ? []
      : (
          await db
            .selectFrom('run_events')
            .select('event_id')
            .where('run_id', '=', id)
            .where('event_id', 'in', ids)
            .execute()
        ).map((row) => row.event_id),
  );
  let number = run.last_event;
  for (const { event, happenedAt } of events) {
    if (event.run !== id || there.has(event.id)) continue;
    there.add(event.id);
    number += 1;
    await db
      .insertInto('run_events')
      .values({ run_id: id, number, event_id: event.id, happened_at: happenedAt, event: textOf(event) })
      .execute();
  }
  if (number !== run.last_event)
    await db.updateTable('runs').set({ last_event: number }).where('id', '=', id).execute();
  return number;
}

export async function listEvents(
  db: Db,
  id: string,
  after: number,
): Promise<readonly StoredRunEvent[] | null> {
  const run = await db.selectFrom('runs').select('id').where('id', '=', id).executeTakeFirst();
  if (run === undefined) return null;
  const rows = await db
    .selectFrom('run_events')
    .selectAll()
    .where('run_id', '=', id)
    .where('number', '>', after)
    .orderBy('number')
    .execute();
  return rows.map(({ number, happened_at, event }) => {
    const read = RunEvent.safeParse(parsed(event));
    if (!read.success) throw new UnreadableDocumentError(`Event ${number} of run ${id} cannot be read.`);
    return { number, happenedAt: happened_at, event: read.data };
  });
}

/** PostgreSQL keeps no NUL and no half of a surrogate pair in a text. */
const textOf = (event: RunEvent) =>
  JSON.stringify(event, (_key, value) =>
    typeof value === 'string' ? value.replaceAll('\0', '').toWellFormed() : value,
  );

function summaryOf(row: Omit<Selectable<Tables['runs']>, 'pour'>): RunSummary {
  return {
    id: row.id,
    jobId: row.job_id,
    coatId: row.coat_id,
    title: row.title,
    openedAt: row.opened_at,
    lastEvent: row.last_event,
  };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
