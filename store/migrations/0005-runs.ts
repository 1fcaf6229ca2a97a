import type { Migration } from './migration.ts';

export const runs: Migration = {
  number: 5,
  name: 'pours as they happened',
  async up(schema, tableEnd) {
    await schema
      .createTable('runs')
      .addColumn('id', 'text', (c) => c.primaryKey().notNull())
      .addColumn('job_id', 'text', (c) => c.notNull())
      .addColumn('coat_id', 'text', (c) => c.notNull())
      .addColumn('title', 'text', (c) => c.notNull())
      .addColumn('opened_at', 'text', (c) => c.notNull())
      .addColumn('last_event', 'integer', (c) => c.notNull())
      .addColumn('pour', 'text', (c) => c.notNull())
      .modifyEnd(tableEnd)
      .execute();
    await schema.createIndex('runs_by_job').on('runs').columns(['job_id', 'opened_at', 'id']).execute();
    await schema
      .createTable('run_events')
      .addColumn('run_id', 'text', (c) => c.notNull().references('runs.id'))
      .addColumn('number', 'integer', (c) => c.notNull())
      .addColumn('event_id', 'text', (c) => c.notNull())
      .addColumn('happened_at', 'text', (c) => c.notNull())
      .addColumn('event', 'text', (c) => c.notNull())
      .addPrimaryKeyConstraint('run_events_by_number', ['run_id', 'number'])
      .addUniqueConstraint('run_events_by_id', ['run_id', 'event_id'])
      .modifyEnd(tableEnd)
      .execute();
  },
};
