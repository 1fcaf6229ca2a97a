import { DatabaseSync, type SQLInputValue } from 'node:sqlite';
import { Kysely, type SqliteDatabase, SqliteDialect, sql } from 'kysely';
import { type MigrationDialect, migrate } from './migrate.ts';
import { sqliteSaves, sqlStore } from './sql-store.ts';
import type { Store } from './store.ts';
import type { Tables } from './tables.ts';

/** `lock`: the transaction began as `begin immediate`, which is the lock. */
export const sqliteMigrations: MigrationDialect = { tableEnd: sql`strict`, lock: async () => {} };

/**
 * Opens, and makes if need be, a SQLite file, and brings it forward.
 * @param path of the file, in a folder that exists; ':memory:' for one that is gone when closed.
 * @param at now, ISO 8601: noted beside migrations applied.
 * @throws NewerDatabaseError if a newer Pourwright has changed it; an error of SQLite if it is no database or not writable.
 */
export async function openSqlite(path: string, at: string): Promise<Store> {
  const db = sqliteTables(path);
  try {
    await migrate(db, sqliteMigrations, at);
  } catch (error) {
    await db.destroy();
    throw error;
  }
  return sqlStore(db, sqliteSaves);
}

/** The file under Kysely, not migrated. */
export function sqliteTables(path: string): Kysely<Tables> {
  return new Kysely<Tables>({ dialect: new SqliteDialect({ database: async () => connect(path) }) });
}

/**
 * WAL lets readers go on while one writes; synchronous=FULL makes every commit reach the disk before it is answered (in WAL
 * mode the default, NORMAL, may lose the last commits when the power fails; sqlite.org/pragma.html#pragma_synchronous).
 */
function connect(path: string): SqliteDatabase {
  const database = new DatabaseSync(path, { timeout: 5000, enableForeignKeyConstraints: true });
  try {
    database.exec('pragma journal_mode = wal');
    database.exec('pragma synchronous = full');
  } catch (error) {
    database.close();
    throw error;
  }
  return {
    close: () => database.close(),
    prepare(text) {
      // A deferred transaction that reads and then writes fails at once, without waiting, if another process wrote
      // in between (sqlite.org/lang_transaction.html); an immediate one waits its turn first.
      const statement = database.prepare(text === 'begin' ? 'begin immediate' : text);
      return {
        reader: statement.columns().length > 0,
        all: (values) => statement.all(...(values as SQLInputValue[])),
        run: (values) => statement.run(...(values as SQLInputValue[])),
        iterate: (values) => statement.iterate(...(values as SQLInputValue[])),
      };
    },
  };
}
