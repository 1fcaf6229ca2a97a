/** Jobs in SQL, the same statements for both databases. The caller gives a transaction wherever something is written. */
import type { Kysely, SelectQueryBuilder } from 'kysely';
import type { JobDocument } from '#core/job/document.ts';
import type {
  CreateOutcome,
  JobSave,
  JobSummary,
  NewJob,
  Saved,
  SaveOutcome,
  StoredJob,
  StoredVersion,
  VersionNote,
} from './store.ts';
import { readStored } from './stored-document.ts';
import { summaryColumns } from './summary.ts';
import type { Tables } from './tables.ts';
import { createVersioned, saveVersioned, type VersionedRows } from './versioned-save.ts';

type Db = Kysely<Tables>;

/** Locks the row read until the transaction ends. PostgreSQL needs it said; SQLite lets only one transaction write at all. */
export type LockRow = <T extends 'jobs' | 'resins' | 'runs', O>(
  query: SelectQueryBuilder<Tables, T, O>,
) => SelectQueryBuilder<Tables, T, O>;

export async function listJobs(db: Db, archived: boolean | undefined): Promise<readonly JobSummary[]> {
  const rows = await db
    .selectFrom('jobs')
    .selectAll()
    .$if(archived === true, (q) => q.where('archived_at', 'is not', null))
    .$if(archived === false, (q) => q.where('archived_at', 'is', null))
    .orderBy('updated_at', 'desc')
    .orderBy('id')
    .execute();
  return rows.map((row) => ({
    id: row.id,
    title: row.title,
    customerName: row.customer_name,
    stage: row.stage as JobSummary['stage'],
    handOver: row.hand_over,
    firstPourAt: row.first_pour_at,
    version: row.version,
    updatedAt: row.updated_at,
    archived: row.archived_at !== null,
  }));
}

export function createJob(db: Db, job: NewJob, lockRow: LockRow): Promise<CreateOutcome> {
  return createVersioned(versioned(db, job, lockRow), job.at);
}

export function saveJob(db: Db, save: JobSave, lockRow: LockRow): Promise<SaveOutcome> {
  return saveVersioned(versioned(db, save, lockRow), save.baseVersion, save.at);
}

function versioned(db: Db, job: NewJob, lockRow: LockRow): VersionedRows<JobDocument> {
  const { id } = job;
  return {
    what: `job ${id}`,
    lock: async () =>
      (await lockRow(db.selectFrom('jobs').select('version').where('id', '=', id)).executeTakeFirst())
        ?.version,
    insert: async () =>
      (await db
        .insertInto('jobs')
        .values({ id, version: 1, ...summaryColumns(job.document), updated_at: job.at, archived_at: null })
        .onConflict((c) => c.column('id').doNothing())
        .returning('id')
        .executeTakeFirst()) !== undefined,
    earlier: () => findSave(db, id, job.saveId),
    insertVersion: (version) => insertVersion(db, job, version),
    documentAt: async (version) => (await getVersion(db, id, version))?.document ?? null,
    moveTo: async (version) =>
      (
        await db
          .updateTable('jobs')
          .set({ version, ...summaryColumns(job.document), updated_at: job.at })
          .where('id', '=', id)
          .where('version', '=', version - 1)
          .executeTakeFirst()
      ).numUpdatedRows,
  };
}

export async function getJob(db: Db, id: string): Promise<StoredJob | null> {
  const row = await db
    .selectFrom('jobs')
    .innerJoin('job_versions', (join) =>
      join.onRef('job_versions.job_id', '=', 'jobs.id').onRef('job_versions.version', '=', 'jobs.version'),
    )
    .select(['jobs.version', 'archived_at', 'saved_at', 'document'])
    .where('jobs.id', '=', id)
    .executeTakeFirst();
  if (row === undefined) return null;
  return {
    id,
    version: row.version,
    savedAt: row.saved_at,
    archived: row.archived_at !== null,
    document: readStored(row.document, id, row.version),
  };
}

export async function listVersions(db: Db, id: string): Promise<readonly VersionNote[] | null> {
  const rows = await db
    .selectFrom('job_versions')
    .select(['version', 'save_id', 'saved_at'])
    .where('job_id', '=', id)
    .orderBy('version')
    .execute();
  if (rows.length === 0) return null;
  return rows.map((row) => ({ version: row.version, saveId: row.save_id, savedAt: row.saved_at }));
}

export async function getVersion(db: Db, id: string, version: number): Promise<StoredVersion | null> {
  if (!isRowNumber(version)) return null;
  const row = await db
    .selectFrom('job_versions')
    .select(['document', 'saved_at'])
    .where('job_id', '=', id)
    .where('version', '=', version)
    .executeTakeFirst();
  if (row === undefined) return null;
  return { version, savedAt: row.saved_at, document: readStored(row.document, id, version) };
}

/** `archivedAt` null takes it out. */
export async function setArchived(db: Db, id: string, archivedAt: string | null): Promise<boolean> {
  const result = await db
    .updateTable('jobs')
    .set((e) => ({
      archived_at: archivedAt === null ? null : e.fn.coalesce('archived_at', e.val(archivedAt)),
    }))
    .where('id', '=', id)
    .executeTakeFirst();
  return result.numUpdatedRows === 1n;
}

/** Versions are 32-bit in PostgreSQL, which answers a larger one with an error instead of no row. */
export function isRowNumber(version: number): boolean {
  return Number.isInteger(version) && version >= 1 && version <= 2_147_483_647;
}

async function insertVersion(db: Db, job: NewJob, version: number): Promise<void> {
  const document = JSON.stringify(job.document satisfies JobDocument);
  await db
    .insertInto('job_versions')
    .values({ job_id: job.id, version, save_id: job.saveId, saved_at: job.at, document })
    .execute();
}

async function findSave(db: Db, id: string, saveId: string): Promise<Saved | undefined> {
  const row = await db
    .selectFrom('job_versions')
    .select(['version', 'saved_at'])
    .where('job_id', '=', id)
    .where('save_id', '=', saveId)
    .executeTakeFirst();
  return row && { outcome: 'saved', version: row.version, savedAt: row.saved_at };
}
