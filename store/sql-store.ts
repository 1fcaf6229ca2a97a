import { type Kysely, sql, type Transaction } from 'kysely';
import * as jobs from './job-rows.ts';
import * as offcuts from './offcut-rows.ts';
import * as resins from './resin-rows.ts';
import * as runs from './run-rows.ts';
import * as shop from './shop-rows.ts';
import type { Store } from './store.ts';
import type { Tables } from './tables.ts';

/** What the two databases need said differently while saving. */
export interface SaveDialect {
  readonly lockRow: jobs.LockRow;
  /** Keeps other saves of the shop waiting until this transaction ends. */
  lockShop(transaction: Transaction<Tables>): Promise<void>;
  /** The same for offcuts. */
  lockOffcuts(transaction: Transaction<Tables>): Promise<void>;
}

/** SQLite: a write transaction begins with the one write lock there is, so nothing more is needed. */
export const sqliteSaves: SaveDialect = {
  lockRow: (query) => query,
  lockShop: async () => {},
  lockOffcuts: async () => {},
};

/** PostgreSQL: the row of the job, or for the shop the table, is locked first; the check and the write follow. */
export const postgresSaves: SaveDialect = {
  lockRow: (query) => query.forUpdate(),
  async lockShop(transaction) {
    await sql`lock table shop in share row exclusive mode`.execute(transaction);
  },
  async lockOffcuts(transaction) {
    await sql`lock table offcut_movements in share row exclusive mode`.execute(transaction);
  },
};

/** The store over an open database that has been migrated. */
export function sqlStore(db: Kysely<Tables>, dialect: SaveDialect): Store {
  return {
    listJobs: (filter) => jobs.listJobs(db, filter?.archived),
    createJob: (job) => db.transaction().execute((t) => jobs.createJob(t, job, dialect.lockRow)),
    getJob: (id) => jobs.getJob(db, id),
    saveJob: (save) => db.transaction().execute((t) => jobs.saveJob(t, save, dialect.lockRow)),
    listVersions: (id) => jobs.listVersions(db, id),
    getVersion: (id, version) => jobs.getVersion(db, id, version),
    archiveJob: (id, at) => jobs.setArchived(db, id, at),
    restoreJob: (id) => jobs.setArchived(db, id, null),
    getShop: () => shop.getShop(db),
    saveShop: (save) =>
      db.transaction().execute(async (t) => {
        await dialect.lockShop(t);
        return await shop.saveShop(t, save);
      }),
    listResins: () => resins.listResins(db),
    createResin: (resin) => db.transaction().execute((t) => resins.createResin(t, resin, dialect.lockRow)),
    getResin: (id) => resins.getResin(db, id),
    saveResin: (save) => db.transaction().execute((t) => resins.saveResin(t, save, dialect.lockRow)),
    archiveResin: (id, at) => resins.setArchived(db, id, at),
    restoreResin: (id) => resins.setArchived(db, id, null),
    listOffcutMovements: () => offcuts.listMovements(db),
    moveOffcuts: (movement) =>
      db.transaction().execute(async (t) => {
        await dialect.lockOffcuts(t);
        return await offcuts.addMovement(t, movement);
      }),
    listRuns: (jobId) => runs.listRuns(db, jobId),
    openRun: (run) => runs.openRun(db, run),
    getRun: (id) => runs.getRun(db, id),
    addRunEvents: (add) => db.transaction().execute((t) => runs.addEvents(t, add, dialect.lockRow)),
    listRunEvents: (id, after) => runs.listEvents(db, id, after),
    close: () => db.destroy(),
  };
}
