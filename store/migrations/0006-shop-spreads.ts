import type { Migration } from './migration.ts';

export const shopSpreads: Migration = {
  number: 6,
  name: 'time zone of the shop, and how evenly it works',
  async up(schema) {
    await schema
      .alterTable('shop')
      .addColumn('time_zone', 'text', (c) => c.notNull().defaultTo(''))
      .execute();
    await schema
      .alterTable('shop')
      .addColumn('spreads', 'text', (c) => c.notNull().defaultTo('{}'))
      .execute();
  },
};
