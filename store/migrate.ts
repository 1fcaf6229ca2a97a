import { type Kysely, type RawBuilder, sql, type Transaction } from 'kysely';
import { MIGRATIONS } from './migrations/list.ts';
import type { Migration } from './migrations/migration.ts';
import type { Tables } from './tables.ts';

/** Thrown on opening a database that a newer Pourwright has already changed. Nothing was touched. */
export class NewerDatabaseError extends Error {
  override readonly name = 'NewerDatabaseError';
}

/** What differs between the databases while migrating. */
export interface MigrationDialect {
  readonly tableEnd: RawBuilder<unknown>;
  /** Keeps a second server that opens the same database at this moment waiting until the migrations are through. */
  lock(transaction: Transaction<Tables>): Promise<void>;
}

/**
 * Brings a database forward to the newest migration, all in one transaction: after a failure it is as it was before.
 * @param at when, ISO 8601, noted beside each migration applied.
 * @param migrations only tests pass another list.
 * @returns the numbers applied now; none if it was up to date.
 * @throws NewerDatabaseError if the database holds a migration this code does not know.
 */
export async function migrate(
  db: Kysely<Tables>,
  dialect: MigrationDialect,
  at: string,
  migrations: readonly Migration[] = MIGRATIONS,
): Promise<readonly number[]> {
  return await db.transaction().execute(async (transaction) => {
    await dialect.lock(transaction);
    await transaction.schema
      .createTable('applied_migrations')
      .ifNotExists()
      .addColumn('number', 'integer', (c) => c.primaryKey().notNull())
      .addColumn('name', 'text', (c) => c.notNull())
      .addColumn('applied_at', 'text', (c) => c.notNull())
      .modifyEnd(dialect.tableEnd)
      .execute();
    const { newest } = await transaction
      .selectFrom('applied_migrations')
      .select(sql<number>`coalesce(max(number), 0)`.as('newest'))
      .executeTakeFirstOrThrow();
    const known = migrations.at(-1)?.number ?? 0;
    if (newest > known)
      throw new NewerDatabaseError(
        `This database was last opened by a newer Pourwright (its tables are at step ${newest}, this version knows ` +
          `step ${known}). Nothing was changed. Install the newer version, or open a backup made before it.`,
      );
    const todo = migrations.filter((m) => m.number > newest);
    for (const migration of todo) {
      await migration.up(transaction.schema, dialect.tableEnd);
      await transaction
        .insertInto('applied_migrations')
        .values({ number: migration.number, name: migration.name, applied_at: at })
        .execute();
    }
    return todo.map((m) => m.number);
  });
}
