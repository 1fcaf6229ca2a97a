import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { emptyJob } from '#core/job/document.ts';
import { storeAcceptance } from './acceptance.ts';
import { openSqlite, sqliteTables } from './sqlite.ts';

const AT = '2026-05-14T09:00:00.000Z';
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pourwright-store-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

/** Another process tries to save on base version 1, 2, 3 ...; answers with the outcome of each. */
async function saveFromAnotherProcess(path: string, id: string, count: number): Promise<string[]> {
  const program = `
    import { openSqlite } from ${JSON.stringify(pathToFileURL(join(import.meta.dirname, 'sqlite.ts')).href)};
    const store = await openSqlite(${JSON.stringify(path)}, '${AT}');
    const outcomes = [];
    for (let baseVersion = 1; baseVersion <= ${count}; baseVersion += 1) {
      const document = (await store.getJob('${id}')).document;
      const save = { id: '${id}', baseVersion, document, saveId: crypto.randomUUID(), at: '${AT}' };
      outcomes.push((await store.saveJob(save)).outcome);
    }
    await store.close();
    console.log(JSON.stringify(outcomes));`;
  const { stdout } = await promisify(execFile)(process.execPath, ['--input-type=module', '-e', program]);
  return JSON.parse(stdout);
}

storeAcceptance('SQLite in memory', () => openSqlite(':memory:', AT));
storeAcceptance('SQLite in a file', () => openSqlite(join(folder, 'acceptance.sqlite'), AT));

describe('a SQLite file', () => {
  it('holds what was saved after closing and opening', async () => {
    const path = join(folder, 'reopen.sqlite');
    const id = crypto.randomUUID();
    const first = await openSqlite(path, AT);
    await first.createJob({ id, document: emptyJob('kept'), saveId: crypto.randomUUID(), at: AT });
    await first.close();
    await first.close();
    const second = await openSqlite(path, AT);
    expect((await second.getJob(id))?.document).toEqual(emptyJob('kept'));
    await second.close();
  });

  it('that two processes save into at once stores every version once, and tells the other of a conflict', async () => {
    const path = join(folder, 'shared.sqlite');
    const store = await openSqlite(path, AT);
    const id = crypto.randomUUID();
    await store.createJob({ id, document: emptyJob(), saveId: crypto.randomUUID(), at: AT });
    const runs = await Promise.all([
      saveFromAnotherProcess(path, id, 40),
      saveFromAnotherProcess(path, id, 40),
    ]);
    for (let i = 0; i < 40; i += 1)
      expect(runs.map((outcomes) => outcomes[i]).sort()).toEqual(['conflict', 'saved']);
    expect((await store.listVersions(id))?.map((n) => n.version)).toEqual(
      Array.from({ length: 41 }, (_, i) => i + 1),
    );
    await store.close();
  }, 60_000);

  it('writes ahead, reaches the disk at every commit and checks foreign keys', async () => {
    const db = sqliteTables(join(folder, 'pragmas.sqlite'));
    const pragma = async (name: string) => (await sql.raw(`pragma ${name}`).execute(db)).rows[0];
    expect(await pragma('journal_mode')).toEqual({ journal_mode: 'wal' });
    expect(await pragma('synchronous')).toEqual({ synchronous: 2 });
    expect(await pragma('foreign_keys')).toEqual({ foreign_keys: 1 });
    expect(await pragma('busy_timeout')).toEqual({ timeout: 5000 });
    await db.destroy();
  });

  it('that is no database is refused', async () => {
    const path = join(folder, 'letter.sqlite');
    writeFileSync(path, 'Dear customer, '.repeat(100));
    await expect(openSqlite(path, AT)).rejects.toThrow('file is not a database');
  });

  it('whose document was damaged says which version of which job', async () => {
    const path = join(folder, 'damaged.sqlite');
    const store = await openSqlite(path, AT);
    const id = crypto.randomUUID();
    await store.createJob({ id, document: emptyJob(), saveId: crypto.randomUUID(), at: AT });
    const other = new DatabaseSync(path);
    other.prepare('update job_versions set document = ?').run('{"format":');
    await expect(store.getJob(id)).rejects.toThrow(
      `Version 1 of job ${id} is stored as something that is not`,
    );
    other.prepare('update job_versions set document = ?').run('{"format":"pourwright job 1","title":7}');
    await expect(store.getJob(id)).rejects.toThrow(`Version 1 of job ${id} cannot be read. title:`);
    other.prepare('update job_versions set document = ?').run('{"format":"pourwright job 1"}');
    expect((await store.getJob(id))?.document).toEqual(emptyJob());
    other.close();
    await store.close();
  });
});
