/** Resin cards in SQL, the same statements for both databases. The caller gives a transaction wherever something is written. */
import type { Kysely } from 'kysely';
import type { ResinCardDocument } from '#core/resin/card-document.ts';
import { isRowNumber, type LockRow } from './job-rows.ts';
import type { CreateOutcome, NewResin, ResinSave, Saved, SaveOutcome, StoredResin } from './store.ts';
import { readStoredResin } from './stored-document.ts';
import { storable } from './summary.ts';
import type { Tables } from './tables.ts';
import { createVersioned, saveVersioned, type VersionedRows } from './versioned-save.ts';

type Db = Kysely<Tables>;

const newest = (db: Db) =>
  db
    .selectFrom('resins')
    .innerJoin('resin_versions', (join) =>
      join
        .onRef('resin_versions.resin_id', '=', 'resins.id')
        .onRef('resin_versions.version', '=', 'resins.version'),
    )
    .select(['resins.id', 'resins.version', 'archived_at', 'saved_at', 'document']);

type Row = Awaited<ReturnType<ReturnType<typeof newest>['executeTakeFirstOrThrow']>>;

const stored = (row: Row): StoredResin => ({
  id: row.id,
  version: row.version,
  savedAt: row.saved_at,
  archived: row.archived_at !== null,
  document: readStoredResin(row.document, row.id, row.version),
});

export async function listResins(db: Db): Promise<readonly StoredResin[]> {
  return (await newest(db).orderBy('name').orderBy('resins.id').execute()).map(stored);
}

export async function getResin(db: Db, id: string): Promise<StoredResin | null> {
  const row = await newest(db).where('resins.id', '=', id).executeTakeFirst();
  return row === undefined ? null : stored(row);
}

export function createResin(
  db: Db,
  resin: NewResin,
  lockRow: LockRow,
): Promise<CreateOutcome<ResinCardDocument>> {
  return createVersioned(versioned(db, resin, lockRow), resin.at);
}

export function saveResin(
  db: Db,
  save: ResinSave,
  lockRow: LockRow,
): Promise<SaveOutcome<ResinCardDocument>> {
  return saveVersioned(versioned(db, save, lockRow), save.baseVersion, save.at);
}

function versioned(db: Db, resin: NewResin, lockRow: LockRow): VersionedRows<ResinCardDocument> {
  const { id } = resin;
  const name = storable(resin.document.name);
  return {
    what: `resin ${id}`,
    lock: async () =>
      (await lockRow(db.selectFrom('resins').select('version').where('id', '=', id)).executeTakeFirst())
        ?.version,
    insert: async () =>
      (await db
        .insertInto('resins')
        .values({ id, version: 1, name, updated_at: resin.at, archived_at: null })
        .onConflict((c) => c.column('id').doNothing())
        .returning('id')
        .executeTakeFirst()) !== undefined,
    earlier: () => findSave(db, id, resin.saveId),
    insertVersion: (version) => insertVersion(db, resin, version),
    documentAt: (version) => getVersion(db, id, version),
    moveTo: async (version) =>
      (
        await db
          .updateTable('resins')
          .set({ version, name, updated_at: resin.at })
          .where('id', '=', id)
          .where('version', '=', version - 1)
          .executeTakeFirst()
      ).numUpdatedRows,
  };
}

/** `archivedAt` null takes it out. */
export async function setArchived(db: Db, id: string, archivedAt: string | null): Promise<boolean> {
  const result = await db
    .updateTable('resins')
    .set((e) => ({
      archived_at: archivedAt === null ? null : e.fn.coalesce('archived_at', e.val(archivedAt)),
    }))
    .where('id', '=', id)
    .executeTakeFirst();
  return result.numUpdatedRows === 1n;
}

async function getVersion(db: Db, id: string, version: number): Promise<ResinCardDocument | null> {
  if (!isRowNumber(version)) return null;
  const row = await db
    .selectFrom('resin_versions')
    .select('document')
    .where('resin_id', '=', id)
    .where('version', '=', version)
    .executeTakeFirst();
  return row === undefined ? null : readStoredResin(row.document, id, version);
}

async function insertVersion(db: Db, resin: NewResin, version: number): Promise<void> {
  await db
    .insertInto('resin_versions')
    .values({
      resin_id: resin.id,
      version,
      save_id: resin.saveId,
      saved_at: resin.at,
      document: JSON.stringify(resin.document),
    })
    .execute();
}

async function findSave(db: Db, id: string, saveId: string): Promise<Saved | undefined> {
  const row = await db
    .selectFrom('resin_versions')
    .select(['version', 'saved_at'])
    .where('resin_id', '=', id)
    .where('save_id', '=', saveId)
    .executeTakeFirst();
  return row && { outcome: 'saved', version: row.version, savedAt: row.saved_at };
}
