import type { Migration } from './migration.ts';

export const offcuts: Migration = {
  number: 4,
  name: 'offcuts on the shelf, and how the shop builds and cuts bodies',
  async up(schema, tableEnd) {
    await schema
      .createTable('offcut_movements')
      .addColumn('number', 'integer', (c) => c.primaryKey().notNull())
      .addColumn('id', 'text', (c) => c.notNull().unique())
      .addColumn('moved_at', 'text', (c) => c.notNull())
      .addColumn('movement', 'text', (c) => c.notNull())
      .modifyEnd(tableEnd)
      .execute();
    await schema
      .alterTable('shop')
      .addColumn('body', 'text', (c) => c.notNull().defaultTo('{}'))
      .execute();
  },
};
