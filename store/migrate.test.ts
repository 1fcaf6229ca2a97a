import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { emptyJob } from '#core/job/document.ts';
import { newShopBody } from '#core/job/shop-body.ts';
import { DEFAULT_SPREADS } from '#core/pour/chance/spreads.ts';
import { ResinCardDocument } from '#core/resin/card-document.ts';
import { migrate } from './migrate.ts';
import { MIGRATIONS } from './migrations/list.ts';
import { openSqlite, sqliteMigrations, sqliteTables } from './sqlite.ts';

const AT = '2026-05-14T09:00:00.000Z';
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pourwright-migrate-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

/** The file as the first release's migration left it, written down in SQL so that later code cannot change it. */
function oldFile(name: string): string {
  const path = join(folder, name);
  const db = new DatabaseSync(path);
  db.exec(`
    create table applied_migrations (number integer not null primary key, name text not null, applied_at text not null) strict;
    create table jobs (id text not null primary key, version integer not null, title text not null,
      customer_name text not null, stage text not null, hand_over text not null, first_pour_at text not null,
      updated_at text not null, archived_at text) strict;
    create table job_versions (job_id text not null references jobs (id), version integer not null, save_id text not null,
      saved_at text not null, document text not null,
      constraint job_versions_by_number primary key (job_id, version),
      constraint job_versions_by_save unique (job_id, save_id)) strict;
    insert into applied_migrations values (1, 'jobs and all their versions', '${AT}');
    insert into jobs values ('01890000-0000-7000-8000-000000000001', 2, 'Old bar top', 'C', 'agreed', '', '', '${AT}', null);
    insert into job_versions values
      ('01890000-0000-7000-8000-000000000001', 1, 's1', '${AT}', '{"format":"pourwright job 1","title":"Old bar"}'),
      ('01890000-0000-7000-8000-000000000001', 2, 's2', '${AT}', '{"format":"pourwright job 1","title":"Old bar top"}');
  `);
  db.close();
  return path;
}

describe('migrations', () => {
  it('are numbered 1, 2, 3 ...', () => {
    expect(MIGRATIONS.map((m) => m.number)).toEqual(MIGRATIONS.map((_, i) => i + 1));
  });

  it('make, on a new file, the same tables that an old file is brought to', async () => {
    const tables = async (path: string) => {
      await (await openSqlite(path, AT)).close();
      const db = new DatabaseSync(path);
      const names = db
        .prepare("select name from sqlite_schema where name not like 'sqlite_%' order by name")
        .all();
      const columns = names.map(({ name }) => [
        name,
        db
          .prepare('select name, type, "notnull", pk from pragma_table_info(?)')
          .all(String(name))
          .map((c) => ({ ...c })),
      ]);
      db.close();
      return columns;
    };
    expect(await tables(oldFile('same.sqlite'))).toEqual(await tables(join(folder, 'new.sqlite')));
  });

  it('bring an old file forward with its jobs, which can then be saved on', async () => {
    const store = await openSqlite(oldFile('old.sqlite'), AT);
    const id = '01890000-0000-7000-8000-000000000001';
    expect((await store.listJobs())[0]).toMatchObject({ title: 'Old bar top', version: 2, stage: 'agreed' });
    expect((await store.getJob(id))?.document).toEqual(emptyJob('Old bar top'));
    expect((await store.getVersion(id, 1))?.document).toEqual(emptyJob('Old bar'));
    const save = { id, baseVersion: 2, document: emptyJob('New'), saveId: crypto.randomUUID(), at: AT };
    expect(await store.saveJob(save)).toMatchObject({ outcome: 'saved', version: 3 });
    expect(await store.getShop()).toBeNull();
    await store.close();
  });

  it('bring a file of the release before resin cards forward: jobs and shop stay, cards can be kept', async () => {
    const path = oldFile('before-resins.sqlite');
    const db = new DatabaseSync(path);
    db.exec(`
      create table shop (version integer not null primary key, save_id text not null unique, saved_at text not null,
        name text not null, system text not null, currency text not null, rates text not null) strict;
      create index jobs_by_update on jobs (updated_at, id);
      insert into applied_migrations values (2, 'the shop', '${AT}');
      insert into shop values (1, 's1', '${AT}', 'Old Yard', 'metric', 'EUR', '{}');
    `);
    db.close();
    const store = await openSqlite(path, AT);
    expect(await store.getShop()).toMatchObject({ version: 1, shop: { name: 'Old Yard', system: 'metric' } });
    expect((await store.listJobs())[0]).toMatchObject({ title: 'Old bar top' });
    expect(await store.listResins()).toEqual([]);
    const document = ResinCardDocument.parse({ format: 'pourwright resin 1', id: 'slow', name: 'Slow' });
    const made = await store.createResin({ id: 'slow', document, saveId: 's', at: AT });
    expect(made).toEqual({ outcome: 'saved', version: 1, savedAt: AT });
    expect((await store.getResin('slow'))?.document).toEqual(document);
    await store.close();
  });

  it('bring a file of the release before offcuts forward: the shop stays and cuts as shops do', async () => {
    const path = oldFile('before-offcuts.sqlite');
    const db = new DatabaseSync(path);
    db.exec(`
      create table shop (version integer not null primary key, save_id text not null unique, saved_at text not null,
        name text not null, system text not null, currency text not null, rates text not null) strict;
      create index jobs_by_update on jobs (updated_at, id);
      create table resins (id text not null primary key, version integer not null, name text not null,
        updated_at text not null, archived_at text) strict;
      create table resin_versions (resin_id text not null references resins (id), version integer not null,
        save_id text not null, saved_at text not null, document text not null,
        constraint resin_versions_by_number primary key (resin_id, version),
        constraint resin_versions_by_save unique (resin_id, save_id)) strict;
      insert into applied_migrations values (2, 'the shop', '${AT}'), (3, 'resin cards', '${AT}');
      insert into shop values (1, 's1', '${AT}', 'Old Yard', 'metric', 'EUR', '{}');
    `);
    db.close();
    const store = await openSqlite(path, AT);
    const old = await store.getShop();
    expect(old).toMatchObject({ version: 1, shop: { name: 'Old Yard', body: newShopBody() } });
    const shop = { ...old!.shop, body: { ...old!.shop.body, kerf_m: 0.002 } };
    expect(await store.saveShop({ baseVersion: 1, shop, saveId: 's2', at: AT })).toMatchObject({
      version: 2,
    });
    expect((await store.getShop())?.shop.body.kerf_m).toBe(0.002);
    expect(old!.shop).toMatchObject({ timeZone: '', spreads: DEFAULT_SPREADS });
    expect(await store.listOffcutMovements()).toEqual([]);
    expect(await store.listRuns()).toEqual([]);
    await store.close();
  });

  it('run once', async () => {
    const db = sqliteTables(':memory:');
    expect(await migrate(db, sqliteMigrations, AT)).toEqual(MIGRATIONS.map((m) => m.number));
    expect(await migrate(db, sqliteMigrations, AT)).toEqual([]);
    await db.destroy();
  });

  it('leave the file as it was when one of them fails', async () => {
    const path = oldFile('fails.sqlite');
    const db = sqliteTables(path);
    const broken = {
      number: MIGRATIONS.length + 1,
      name: 'breaks',
      up: async () => {
        throw new Error('disk full');
      },
    };
    await expect(migrate(db, sqliteMigrations, AT, [...MIGRATIONS, broken])).rejects.toThrow('disk full');
    await db.destroy();
    const after = new DatabaseSync(path);
    expect(after.prepare('select number from applied_migrations').all()).toHaveLength(1);
    expect(after.prepare("select name from sqlite_schema where name = 'shop'").all()).toHaveLength(0);
    after.close();
  });

  it('refuse a database that a newer version has changed, and say what to do', async () => {
    const path = join(folder, 'future.sqlite');
    await (await openSqlite(path, AT)).close();
    const db = new DatabaseSync(path);
    db.prepare('insert into applied_migrations values (?, ?, ?)').run(99, 'from the future', AT);
    db.close();
    await expect(openSqlite(path, AT)).rejects.toThrow(
      /newer Pourwright \(its tables are at step 99, .*Nothing was changed\. Install the newer version/,
    );
  });
});
