import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp } from './test-app.ts';

let folder: string;
const script = 'console.log("pour");\n'.repeat(200);
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pourwright-web-'));
  mkdirSync(join(folder, 'dist', 'assets'), { recursive: true });
  writeFileSync(join(folder, 'secret.txt'), 'not yours');
  writeFileSync(join(folder, 'dist', 'index.html'), '<!doctype html><title>Pourwright</title>');
  writeFileSync(join(folder, 'dist', 'sw.js'), script);
  writeFileSync(join(folder, 'dist', 'assets', 'index-a1B2c3D4.js'), script);
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});
const served = () => testApp({ webRoot: join(folder, 'dist') });

describe('the web app', () => {
  it.each(['/', '/jobs/0190d000-0000-7000-8000-000000000001', '/shop'])(
    'answers %s with its one page',
    async (path) => {
      const answer = await (await served()).call('GET', path);
      expect(answer.status).toBe(200);
      expect(answer.headers.get('content-type')).toBe('text/html; charset=utf-8');
      expect(answer.headers.get('cache-control')).toBe('no-cache');
      expect(answer.text).toContain('<title>Pourwright');
    },
  );

  it('lets files with a hash in their name be kept for ever, and no others', async () => {
    const { call } = await served();
    const hashed = await call('GET', '/assets/index-a1B2c3D4.js');
    expect(hashed.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
    expect(hashed.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
    expect((await call('GET', '/sw.js')).headers.get('cache-control')).toBe('no-cache');
  });

  it('is not sent again when the browser has it', async () => {
    const { call } = await served();
    const etag = (await call('GET', '/sw.js')).headers.get('etag')!;
    expect(await call('GET', '/sw.js', undefined, { 'if-none-match': etag })).toMatchObject({
      status: 304,
      text: '',
    });
    expect((await call('GET', '/sw.js', undefined, { 'if-none-match': 'W/"other"' })).status).toBe(200);
  });

  it.each([
    ['br, gzip', 'br'],
    ['gzip, deflate', 'gzip'],
    ['br;q=0, gzip;q=0.5', 'gzip'],
    ['identity', null],
  ])('is packed as the browser can take it: %s', async (accepted, encoding) => {
    const { app } = await served();
    const answer = await app.request('http://localhost/sw.js', { headers: { 'accept-encoding': accepted } });
    expect(answer.headers.get('content-encoding')).toBe(encoding);
    expect(answer.headers.get('vary')).toBe('Accept-Encoding');
    const bytes = new Uint8Array(await answer.arrayBuffer());
    const unpack = encoding === 'br' ? brotliDecompressSync : encoding === 'gzip' ? gunzipSync : Buffer.from;
    expect(unpack(bytes).toString()).toBe(script);
    if (encoding !== null) expect(bytes.length).toBeLessThan(script.length / 10);
  });

  it.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/assets/..%2f..%2fsecret.txt',
    '/assets/....//secret.txt',
    '/..%5csecret.txt',
    '/assets/missing.js',
    '//etc/passwd.txt',
  ])('does not lead out of its folder, nor answers a missing file with a page: %s', async (path) => {
    const answer = await (await served()).call('GET', path);
    expect(answer.status).toBe(404);
    expect(answer.text).not.toContain('not yours');
  });

  it('refuses an address that cannot be read', async () => {
    expect((await (await served()).call('GET', '/%ff%fe')).status).toBe(400);
  });

  it('answers HEAD, and nothing else', async () => {
    const { call } = await served();
    expect(await call('HEAD', '/')).toMatchObject({ status: 200, text: '' });
    expect((await call('POST', '/')).status).toBe(404);
  });

  it('that is not built says how to build it', async () => {
    const answer = await (await testApp({ webRoot: join(folder, 'nowhere') })).call('GET', '/');
    expect(answer).toMatchObject({
      status: 503,
      body: { error: { message: expect.stringContaining('npm run build') } },
    });
  });
});
