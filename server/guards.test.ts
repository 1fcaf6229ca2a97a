import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { JOB_FORMAT } from '#core/job/document.ts';
import type { Store } from '#store/store.ts';
import { INLINE_STYLE_HASHES } from './guards.ts';
import { BODY_LIMIT_bytes } from './read-request.ts';
import { testApp } from './test-app.ts';

const uuid = () => crypto.randomUUID();
const newJob = () => ({ id: uuid(), saveId: uuid(), document: { format: JOB_FORMAT } });

describe('every answer', () => {
  it.each(['/', '/api/jobs', '/api/nothing', '/api/jobs/x'])(
    'to %s tells the browser what it may do',
    async (path) => {
      const { call } = await testApp();
      const { headers } = await call('GET', path);
      const policy = headers.get('content-security-policy') ?? '';
      for (const part of [
        "default-src 'none'",
        "script-src 'self' 'wasm-unsafe-eval';",
        "frame-ancestors 'none'",
        "base-uri 'none'",
      ])
        expect(policy).toContain(part);
      expect(policy.replace("'wasm-unsafe-eval'", '')).not.toMatch(/unsafe|\*|https?:/);
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('referrer-policy')).toBe('no-referrer');
      expect(headers.get('cross-origin-opener-policy')).toBe('same-origin');
      expect(headers.get('access-control-allow-origin')).toBeNull();
    },
  );

  it('of the API is not kept by caches', async () => {
    const { call } = await testApp();
    expect((await call('GET', '/api/jobs')).headers.get('cache-control')).toBe('no-store');
  });

  it('allows exactly the inline styles that the installed controls put into the page', () => {
    const text = (file: string) =>
      readFileSync(
        join(import.meta.dirname, '../node_modules/react-aria/dist/private', `${file}.mjs`),
        'utf8',
      );
    const hashes = ['interactions/usePress', 'overlays/usePreventScroll'].map((file) => {
      const source = text(file);
      const attribute = /const \S+PRESSABLE_ATTRIBUTE = '([^']+)'/.exec(source)?.[1] ?? '';
      const style = /style\.textContent = `([\s\S]*?)`\.trim\(\)/.exec(source)?.[1] ?? '';
      const css = style.replace(/\$\{[^}]+\}/, attribute).trim();
      return `'sha256-${createHash('sha256').update(css).digest('base64')}'`;
    });
    expect(hashes).toEqual(INLINE_STYLE_HASHES);
  });
});

describe('the host name', () => {
  const ask = async (host: string, hosts: readonly string[] = []) =>
    (await (await testApp({ hosts })).call('GET', '/api/health', undefined, { host })).status;

  it.each(['localhost', 'localhost:4180', '127.0.0.1:4180', '[::1]:4180', 'LOCALHOST', 'localhost.'])(
    '%s is ours',
    async (host) => expect(await ask(host)).toBe(200),
  );

  it.each([
    'evil.example',
    'evil.example:4180',
    'localhost.evil.example',
    '127.0.0.1.evil.example',
    '192.168.1.9',
    '',
  ])('"%s" is not', async (host) => expect(await ask(host)).toBe(403));

  it('may be one the shop has set, or any numeric address, when told so', async () => {
    expect(await ask('bench.local:4180', ['bench.local'])).toBe(200);
    expect(await ask('192.168.1.9:4180', ['*address'])).toBe(200);
    expect(await ask('[fd00::9]:4180', ['*address'])).toBe(200);
    expect(await ask('evil.example', ['*address'])).toBe(403);
  });
});

describe('a write', () => {
  const write = async (headers: Record<string, string>) =>
    (await (await testApp()).call('POST', '/api/jobs', newJob(), { host: 'localhost:4180', ...headers }))
      .status;

  it.each([
    ['a program that is no browser', {}],
    ['our own page', { origin: 'http://localhost:4180', 'sec-fetch-site': 'same-origin' }],
    ['a browser that sends no Sec-Fetch-Site', { origin: 'http://localhost:4180' }],
  ])('from %s is taken', async (_, headers: Record<string, string>) => {
    expect(await write(headers)).toBe(201);
  });

  it.each([
    ['another site', { origin: 'https://evil.example', 'sec-fetch-site': 'cross-site' }],
    ['another port of this computer', { origin: 'http://localhost:9999', 'sec-fetch-site': 'same-site' }],
    ['a page without an origin', { origin: 'null' }],
    ['another site that hides its origin', { 'sec-fetch-site': 'cross-site' }],
    ['an origin that only begins like ours', { origin: 'http://localhost:4180.evil.example' }],
    ['an origin that is no address', { origin: 'localhost:4180' }],
  ])('from %s is refused', async (_, headers: Record<string, string>) => {
    expect(await write(headers)).toBe(403);
  });

  it('without a body is refused from another site too', async () => {
    const { call } = await testApp();
    const job = newJob();
    await call('POST', '/api/jobs', job);
    const answer = await call('POST', `/api/jobs/${job.id}/archive`, undefined, {
      origin: 'https://evil.example',
    });
    expect(answer.status).toBe(403);
    expect((await call('GET', `/api/jobs/${job.id}`)).body.archived).toBe(false);
  });
});

describe('a body', () => {
  const send = async (body: string, headers: Record<string, string> = {}) =>
    await (await testApp()).call('POST', '/api/jobs', body, headers);
  const full = (over: object) => JSON.stringify({ ...newJob(), ...over });

  it.each(['', '{', '{"id":', 'id=1', '\u0000', '[1,'])('that is not JSON is refused: %j', async (body) => {
    expect(await send(body)).toMatchObject({ status: 400, body: { error: { code: 'body.json' } } });
  });

  it.each(['null', '[]', '7', '"text"', '{}'])('that is %s is refused', async (body) => {
    expect(await send(body)).toMatchObject({ status: 400, body: { error: { code: 'body.shape' } } });
  });

  it.each([
    'text/plain',
    'application/x-www-form-urlencoded',
    'multipart/form-data',
    'application/jsonp',
    '',
  ])('sent as "%s" is refused', async (type) => {
    expect(await send(full({}), { 'content-type': type })).toMatchObject({
      status: 415,
      body: { error: { code: 'body.type', message: expect.stringContaining('application/json') } },
    });
  });

  it('with a charset is taken', async () => {
    expect((await send(full({}), { 'content-type': 'application/json; charset=utf-8' })).status).toBe(201);
  });

  it('over the limit is refused with the limit, whatever length it claims', async () => {
    const huge = full({ document: 'x'.repeat(BODY_LIMIT_bytes) });
    for (const headers of [{}, { 'content-length': '10' }])
      expect(await send(huge, headers)).toMatchObject({
        status: 413,
        body: { error: { message: 'The body is too large. Allowed: up to 1000000 bytes.' } },
      });
  });

  it('that is not UTF-8 is refused', async () => {
    const { app } = await testApp();
    const body = new Uint8Array([0x22, 0xff, 0xfe, 0x22]);
    const headers = { 'content-type': 'application/json' };
    const answer = await app.request('http://localhost/api/jobs', { method: 'POST', headers, body });
    expect(answer.status).toBe(400);
    expect(await answer.json()).toMatchObject({ error: { code: 'body.utf8' } });
  });

  it.each([
    ['baseVersion', { baseVersion: '1' }],
    ['baseVersion', { baseVersion: 1.5 }],
    ['baseVersion', { baseVersion: -1 }],
    ['baseVersion', { baseVersion: 2 ** 31 }],
    ['saveId', { saveId: 'again' }],
    ['saveId', { saveId: null }],
    ['extra', { extra: 1 }],
  ])('with a wrong %s is refused, naming it: %j', async (field, over) => {
    const { call } = await testApp();
    const body = { baseVersion: 1, saveId: uuid(), document: { format: JOB_FORMAT }, ...over };
    const answer = await call('PUT', `/api/jobs/${uuid()}`, body);
    expect(answer.status).toBe(400);
    expect(answer.body.error.message).toContain(field);
  });
});

describe('an address', () => {
  it.each([
    '/api/jobs/1',
    '/api/jobs/..',
    "/api/jobs/' or 1=1",
    `/api/jobs/${'a'.repeat(5000)}`,
    '/api/jobs/%00',
  ])('whose id is no UUID is refused: %s', async (path) => {
    const { call } = await testApp();
    expect([400, 404]).toContain((await call('GET', path)).status);
  });

  it('under /api that does not exist is 404 in JSON', async () => {
    const { call } = await testApp();
    for (const path of ['/api', '/api/', '/api/nothing', '/api/jobs/', '/api/shop/x'])
      expect(await call('GET', path)).toMatchObject({
        status: 404,
        body: { error: { code: 'api.missing' } },
      });
  });

  it('asked for in a way it does not know says which it knows', async () => {
    const { call } = await testApp();
    const answer = await call('DELETE', `/api/jobs/${uuid()}`);
    expect(answer).toMatchObject({ status: 405, body: { error: { code: 'api.method' } } });
    expect(answer.headers.get('allow')).toBe('GET, PUT');
  });

  it('with a query that is not known is refused', async () => {
    const { call } = await testApp();
    expect((await call('GET', '/api/jobs?archived=maybe')).status).toBe(400);
    expect((await call('GET', '/api/jobs?sort=x')).status).toBe(400);
  });
});

describe('the log', () => {
  it('has one line for each request that failed, with the id of the answer and nothing that was sent', async () => {
    const { call, log } = await testApp();
    await call('GET', '/api/jobs');
    expect(log).toEqual([]);
    const answer = await call('POST', '/api/jobs?token=sesame', '{"name":"Private Person"', {
      cookie: 'sesame',
    });
    expect(log).toHaveLength(1);
    expect(log[0]).toContain(`400 POST /api/jobs id=${answer.body.error.id} body.json`);
    expect(log[0]).not.toMatch(/sesame|Private/);
  });

  it('has the fault of the server, which the answer keeps to itself', async () => {
    const broken = new Proxy({} as Store, {
      get: () => async () => {
        throw new Error('disk on fire\nsecond line');
      },
    });
    const { call, log } = await testApp({ store: broken });
    const answer = await call('GET', '/api/jobs');
    expect(answer.status).toBe(500);
    expect(answer.text).not.toContain('fire');
    expect(log[0]).toContain(`id=${answer.body.error.id} Error: disk on fire at `);
    expect(await call('GET', '/api/health')).toMatchObject({
      status: 503,
      body: { error: { code: 'store.down' } },
    });
  });
});
