import type { Migration } from './migration.ts';

export const jobs: Migration = {
  number: 1,
  name: 'jobs and all their versions',
  async up(schema, tableEnd) {
    await schema
      .createTable('jobs')
      .addColumn('id', 'text', (c) => c.primaryKey().notNull())
      .addColumn('version', 'integer', (c) => c.notNull())
      .addColumn('title', 'text', (c) => c.notNull())
      .addColumn('customer_name', 'text', (c) => c.notNull())
      .addColumn('stage', 'text', (c) => c.notNull())
      .addColumn('hand_over', 'text', (c) => c.notNull())
      .addColumn('first_pour_at', 'text', (c) => c.notNull())
      .addColumn('updated_at', 'text', (c) => c.notNull())
      .addColumn('archived_at', 'text')
      .modifyEnd(tableEnd)
      .execute();
    await schema
      .createTable('job_versions')
      .addColumn('job_id', 'text', (c) => c.notNull().references('jobs.id'))
      .addColumn('version', 'integer', (c) => c.notNull())
      .addColumn('save_id', 'text', (c) => c.notNull())
      .addColumn('saved_at', 'text', (c) => c.notNull())
      .addColumn('document', 'text', (c) => c.notNull())
      .addPrimaryKeyConstraint('job_versions_by_number', ['job_id', 'version'])
      .addUniqueConstraint('job_versions_by_save', ['job_id', 'save_id'])
      .modifyEnd(tableEnd)
      .execute();
  },
};
