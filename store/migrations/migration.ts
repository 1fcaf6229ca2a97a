import type { RawBuilder, SchemaModule } from 'kysely';

/**
 * One step forward of the database. A migration that has been released is never edited: databases out there have run it.
 * It is written against the tables as they stood then, so it uses nothing of `tables.ts`.
 */
export interface Migration {
  readonly number: number;
  readonly name: string;
  /** @param tableEnd what this database wants at the end of `create table`: `strict` for SQLite, nothing for PostgreSQL. */
  up(schema: SchemaModule, tableEnd: RawBuilder<unknown>): Promise<void>;
}
