import { hc } from 'hono/client';
import { describe, expect, it } from 'vitest';
import { emptyJob, JOB_FORMAT } from '#core/job/document.ts';
import type { App } from './app.ts';
import { AT, testApp } from './test-app.ts';

const uuid = () => crypto.randomUUID();
const input = { format: JOB_FORMAT, title: 'Bar top' } as const;

async function withJob() {
  const tested = await testApp();
  const id = uuid();
  await tested.call('POST', '/api/jobs', { id, saveId: uuid(), document: input });
  return { ...tested, id, path: `/api/jobs/${id}` };
}

describe('jobs over HTTP', () => {
  it('are made, with what was left out filled in, and read', async () => {
    const { call, id, path } = await withJob();
    expect(await call('GET', path)).toMatchObject({
      status: 200,
      body: { id, version: 1, savedAt: AT, archived: false, document: emptyJob('Bar top') },
    });
    const list = await call('GET', '/api/jobs');
    expect(list.body.jobs).toMatchObject([{ id, title: 'Bar top', version: 1, archived: false }]);
  });

  it('sent twice under one save id are made once', async () => {
    const { call } = await testApp();
    const body = { id: uuid().toUpperCase(), saveId: uuid(), document: input };
    for (const sent of [body, { ...body, id: body.id.toLowerCase() }])
      expect(await call('POST', '/api/jobs', sent)).toMatchObject({
        status: 201,
        body: { version: 1, savedAt: AT },
      });
    expect((await call('GET', '/api/jobs')).body.jobs).toHaveLength(1);
  });

  it('made under a taken id are refused with the job that has it', async () => {
    const { call, id } = await withJob();
    const again = await call('POST', '/api/jobs', { id, saveId: uuid(), document: { ...input, title: 'x' } });
    expect(again.status).toBe(409);
    expect(again.body.conflict).toEqual({
      current: { version: 1, document: emptyJob('Bar top') },
      base: null,
    });
  });

  it('are saved; a second save on the same version is a conflict with both documents to compare', async () => {
    const { call, path } = await withJob();
    const save = (title: string, baseVersion: number) =>
      call('PUT', path, { baseVersion, saveId: uuid(), document: { ...input, title } });
    expect(await save('mine', 1)).toMatchObject({ status: 200, body: { version: 2, savedAt: AT } });
    const conflict = await save('yours', 1);
    expect(conflict.status).toBe(409);
    expect(conflict.body.conflict).toEqual({
      current: { version: 2, document: emptyJob('mine') },
      base: emptyJob('Bar top'),
    });
    expect(conflict.body.error.message).toContain('you edited version 1, the newest is 2');
    const versions = await call('GET', `${path}/versions`);
    expect(versions.body.versions.map((v: { version: number }) => v.version)).toEqual([1, 2]);
    expect((await call('GET', `${path}/versions/1`)).body.document.title).toBe('Bar top');
  });

  it('with a text that cannot be read are refused with the field, and nothing is stored', async () => {
    const { call, path } = await withJob();
    const document = { ...input, room: { air: 'warm' } };
    const answer = await call('PUT', path, { baseVersion: 1, saveId: uuid(), document });
    expect(answer.status).toBe(422);
    expect(answer.body.problems).toMatchObject([{ path: 'room.air', read: 'warm' }]);
    expect((await call('GET', path)).body.version).toBe(1);
  });

  it.each([
    ['nothing', null, ''],
    ['another format', { format: 'pourwright job 999' }, 'format'],
    ['a title of the wrong kind', { ...input, title: 7 }, 'title'],
    ['a field that a job does not have', { ...input, colour: 'red' }, ''],
    ['an unknown stage', { ...input, agreed: { stage: 'lost' } }, 'agreed.stage'],
  ])('that are %s are refused, naming the field', async (_, document, path) => {
    const { call } = await testApp();
    const answer = await call('POST', '/api/jobs', { id: uuid(), saveId: uuid(), document });
    expect(answer.status).toBe(422);
    expect(answer.body.problems[0].path).toBe(path);
    expect((await call('GET', '/api/jobs')).body.jobs).toEqual([]);
  });

  it('go into the archive and come back', async () => {
    const { call, path } = await withJob();
    const count = async (query: string) => (await call('GET', `/api/jobs${query}`)).body.jobs.length;
    expect(await call('POST', `${path}/archive`)).toMatchObject({ status: 200, body: { archived: true } });
    expect([await count(''), await count('?archived=true'), await count('?archived=false')]).toEqual([
      1, 1, 0,
    ]);
    expect(await call('POST', `${path}/restore`)).toMatchObject({ status: 200, body: { archived: false } });
    expect([await count(''), await count('?archived=true'), await count('?archived=false')]).toEqual([
      1, 0, 1,
    ]);
  });

  it('download as a job file that can be sent again', async () => {
    const { call, path } = await withJob();
    const file = await call('GET', `${path}/file`);
    expect(file.headers.get('content-disposition')).toBe(
      `attachment; filename="Bar-top.pourwright.json"; filename*=UTF-8''Bar-top.pourwright.json`,
    );
    const again = await call('POST', '/api/jobs', { id: uuid(), saveId: uuid(), document: file.body });
    expect(again.status).toBe(201);
  });

  it.each([
    ['GET', ''],
    ['PUT', ''],
    ['GET', '/file'],
    ['GET', '/versions'],
    ['GET', '/versions/1'],
    ['POST', '/archive'],
    ['POST', '/restore'],
  ])('that do not exist are 404: %s %s', async (method, rest) => {
    const { call } = await testApp();
    const body = method === 'PUT' ? { baseVersion: 1, saveId: uuid(), document: input } : undefined;
    const answer = await call(method, `/api/jobs/${uuid()}${rest}`, body);
    expect(answer.status).toBe(404);
    expect(answer.body.error.message).toContain('no such job');
  });

  it.each(['0', '-1', '1.5', 'one', '99999999999999'])('have no version "%s"', async (version) => {
    const { call, path } = await withJob();
    expect(await call('GET', `${path}/versions/${version}`)).toMatchObject({
      status: 400,
      body: { error: { code: 'version.number' } },
    });
  });

  it('are spoken to by the typed client', async () => {
    const { app } = await testApp();
    const client = hc<App>('http://localhost', { fetch: app.request });
    const id = uuid();
    const made = await client.api.jobs.$post({ json: { id, saveId: uuid(), document: input } });
    expect(made.status).toBe(201);
    const saved = await client.api.jobs[':id'].$put({
      param: { id },
      json: { baseVersion: 9, saveId: uuid(), document: input },
    });
    if (saved.status !== 409) throw new Error(`expected a conflict, got ${saved.status}`);
    const current: number = (await saved.json()).conflict.current.version;
    expect(current).toBe(1);
    const list = await client.api.jobs.$get({ query: {} });
    expect((await list.json()).jobs[0]?.title).toBe('Bar top');
  });
});

describe('the shop over HTTP', () => {
  it('starts as a new one, is saved, and a save on an old version is a conflict', async () => {
    const { call } = await testApp();
    const first = await call('GET', '/api/shop');
    expect(first.body).toMatchObject({ version: 0, savedAt: null, shop: { system: 'us', currency: 'USD' } });
    const shop = { name: 'Bench One', system: 'metric', currency: 'EUR', rates: { mix_s: 200 } };
    const save = { baseVersion: 0, saveId: uuid(), shop };
    for (let sent = 0; sent < 2; sent += 1)
      expect(await call('PUT', '/api/shop', save)).toMatchObject({ status: 200, body: { version: 1 } });
    const read = (await call('GET', '/api/shop')).body;
    expect(read).toMatchObject({
      version: 1,
      savedAt: AT,
      shop: { name: 'Bench One', rates: { mix_s: 200 } },
    });
    expect(read.shop.rates.tint_s).toBe(45);
    const late = await call('PUT', '/api/shop', { ...save, saveId: uuid() });
    expect(late.status).toBe(409);
    expect(late.body.conflict.current.version).toBe(1);
  });

  it.each([
    ['a currency that is none', { currency: 'dollars' }, 'shop.currency'],
    ['an unknown system', { system: 'old' }, 'shop.system'],
    ['a speed of zero', { rates: { pour_kg_per_s: 0 } }, 'shop.rates.pour_kg_per_s'],
    ['a rate nobody knows', { rates: { luck: 1 } }, 'shop.rates'],
  ])('refuses %s', async (_, shop, field) => {
    const { call } = await testApp();
    const answer = await call('PUT', '/api/shop', { baseVersion: 0, saveId: uuid(), shop });
    expect(answer.status).toBe(400);
    expect(answer.body.error.message).toContain(field);
  });
});
