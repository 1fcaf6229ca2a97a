import type { Migration } from './migration.ts';

export const shop: Migration = {
  number: 2,
  name: 'the shop',
  async up(schema, tableEnd) {
    await schema
      .createTable('shop')
      .addColumn('version', 'integer', (c) => c.primaryKey().notNull())
      .addColumn('save_id', 'text', (c) => c.notNull().unique())
      .addColumn('saved_at', 'text', (c) => c.notNull())
      .addColumn('name', 'text', (c) => c.notNull())
      .addColumn('system', 'text', (c) => c.notNull())
      .addColumn('currency', 'text', (c) => c.notNull())
      .addColumn('rates', 'text', (c) => c.notNull())
      .modifyEnd(tableEnd)
      .execute();
    await schema.createIndex('jobs_by_update').on('jobs').columns(['updated_at', 'id']).execute();
  },
};
