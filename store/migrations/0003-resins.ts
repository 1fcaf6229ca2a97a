import type { Migration } from './migration.ts';

export const resins: Migration = {
  number: 3,
  name: 'resin cards of the shop and all their versions',
  async up(schema, tableEnd) {
    await schema
      .createTable('resins')
      .addColumn('id', 'text', (c) => c.primaryKey().notNull())
      .addColumn('version', 'integer', (c) => c.notNull())
      .addColumn('name', 'text', (c) => c.notNull())
      .addColumn('updated_at', 'text', (c) => c.notNull())
      .addColumn('archived_at', 'text')
      .modifyEnd(tableEnd)
      .execute();
    await schema
      .createTable('resin_versions')
      .addColumn('resin_id', 'text', (c) => c.notNull().references('resins.id'))
      .addColumn('version', 'integer', (c) => c.notNull())
      .addColumn('save_id', 'text', (c) => c.notNull())
      .addColumn('saved_at', 'text', (c) => c.notNull())
      .addColumn('document', 'text', (c) => c.notNull())
      .addPrimaryKeyConstraint('resin_versions_by_number', ['resin_id', 'version'])
      .addUniqueConstraint('resin_versions_by_save', ['resin_id', 'save_id'])
      .modifyEnd(tableEnd)
      .execute();
  },
};
