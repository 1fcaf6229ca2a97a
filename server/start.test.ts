/** What stands between the command line and the app: options, ports, the demo shop, file names. */
import { createServer } from 'node:net';
import { describe, expect, it } from 'vitest';
import { JobDocument } from '#core/job/document.ts';
import { demo } from '#examples/demo.ts';
import { openSqlite } from '#store/sqlite.ts';
import { freePort } from '../scripts/postgres-cluster.ts';
import { seedDemo } from './demo.ts';
import { attachment } from './job-file-name.ts';
import { listen } from './listen.ts';
import { isLoopback, namesFor, readOptions } from './options.ts';
import { AT, testApp } from './test-app.ts';

describe('the command line', () => {
  it('without anything means this computer only', () => {
    expect(readOptions([])).toEqual({
      demo: false,
      port: 4180,
      portGiven: false,
      host: '127.0.0.1',
      allowHosts: [],
      data: './data',
      help: false,
    });
  });

  it('takes its options', () => {
    const args = '--demo --port 80 --host 0.0.0.0 --allow-host a.local --allow-host b.local --data x'.split(
      ' ',
    );
    expect(readOptions(args)).toEqual({
      demo: true,
      port: 80,
      portGiven: true,
      host: '0.0.0.0',
      allowHosts: ['a.local', 'b.local'],
      data: 'x',
      help: false,
    });
  });

  it.each([
    [['--port', '0'], '1 to 65535'],
    [['--port', '65536'], '1 to 65535'],
    [['--port', '80x'], '1 to 65535'],
    [['--port', ''], '1 to 65535'],
    [['--port=-1'], '1 to 65535'],
    [['--host', 'a b'], 'host name'],
    [['--data', ''], 'a folder'],
    [['--quiet'], 'quiet'],
    [['extra'], 'extra'],
    [['--port'], 'port'],
  ])('%j is refused, saying what is allowed', (args, what) => {
    expect(() => readOptions(args)).toThrow(what);
  });

  it('knows which addresses only this computer can reach', () => {
    for (const host of ['127.0.0.1', '127.9.9.9', '::1', 'localhost']) expect(isLoopback(host)).toBe(true);
    for (const host of ['0.0.0.0', '::', '192.168.1.9', '127.evil.example'])
      expect(isLoopback(host)).toBe(false);
    expect([namesFor('0.0.0.0'), namesFor('fd00::9'), namesFor('192.168.1.9')]).toEqual([
      ['*address'],
      ['[fd00::9]'],
      ['192.168.1.9'],
    ]);
  });
});

describe('listening', () => {
  it('takes the next free port when none was asked for, and says which', async () => {
    const { app } = await testApp();
    const port = await freePort();
    const other = createServer();
    await new Promise<void>((resolve) => other.listen(port, '127.0.0.1', resolve));
    const listening = await listen(app, '127.0.0.1', port, false);
    expect(Number(new URL(listening.address).port)).toBeGreaterThan(port);
    expect(await (await fetch(`${listening.address}/api/health`)).json()).toEqual({
      ok: true,
      version: '0.0.0',
    });
    await expect(listen(app, '127.0.0.1', port, true)).rejects.toThrow(`Port ${port} is taken`);
    await listening.stop();
    await listening.stop();
    await expect(fetch(`${listening.address}/api/health`)).rejects.toThrow();
    other.close();
  });

  it('refuses a body over the limit on a real connection too', async () => {
    const { app } = await testApp();
    const listening = await listen(app, '127.0.0.1', await freePort(), true);
    const answer = await fetch(`${listening.address}/api/jobs`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: 'x'.repeat(5_000_000),
    });
    expect(answer.status).toBe(413);
    expect((await fetch(`${listening.address}/api/health`)).status).toBe(200);
    await listening.stop();
  });
});

describe('the demo shop', () => {
  it('fills an empty store once, with jobs the server would accept', async () => {
    const store = await openSqlite(':memory:', AT);
    const example = demo('2026-05-14');
    expect(await seedDemo(store, example, AT, () => crypto.randomUUID())).toBe(example.jobs.length);
    expect((await store.getShop())?.shop.name).toBe(example.shop.name);
    for (const { id, document } of example.jobs)
      expect((await store.getJob(id))?.document).toEqual(JobDocument.parse(document));
    expect(await seedDemo(store, example, AT, () => crypto.randomUUID())).toBe(0);
    expect((await store.listVersions(example.jobs[0]!.id))?.length).toBe(1);
    await store.close();
  });

  it('with a job that cannot be used stores nothing and names the field', async () => {
    const store = await openSqlite(':memory:', AT);
    const { shop, jobs } = demo('2026-05-14');
    const broken = {
      shop,
      jobs: [...jobs, { id: 'x', document: { ...jobs[0]!.document, room: { air: 'warm' } } }],
    };
    await expect(seedDemo(store, broken, AT, () => crypto.randomUUID())).rejects.toThrow(/job x .*room\.air/);
    expect(await store.listJobs()).toEqual([]);
    await store.close();
  });
});

describe('the name of a job file', () => {
  it.each([
    ['Bar top', 'Bar-top', 'Bar-top'],
    ['', 'job', 'job'],
    ['../../etc/passwd', 'etc-passwd', 'etc-passwd'],
    ['a"; x="b\r\nSet-Cookie: c', 'a-x-b-Set-Cookie-c', 'a-x-b-Set-Cookie-c'],
    ['Küche 2', 'Kche-2', 'K%C3%BCche-2'],
    ['面', 'job', '%E9%9D%A2'],
    ['\ud800', 'job', 'job'],
    ['x'.repeat(500), 'x'.repeat(60), 'x'.repeat(60)],
  ])('from the title %j is harmless', (title, ascii, encoded) => {
    expect(attachment(title)).toBe(
      `attachment; filename="${ascii}.pourwright.json"; filename*=UTF-8''${encoded}.pourwright.json`,
    );
  });
});
