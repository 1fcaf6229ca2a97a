/** The description served at /api/openapi.json is complete, and what the app answers is what it describes. */
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { JOB_FORMAT } from '#core/job/document.ts';
import { freezePour, frozenText } from '#core/pour/run/frozen-pour.ts';
import { plan, request } from '#core/pour/run/sample-run.check.ts';
import { openApi } from './openapi.ts';
import { testApp } from './test-app.ts';

const uuid = () => crypto.randomUUID();
const uuid7 = () => `0192f0c0-0000-7${uuid().slice(15)}`;
const document = { format: JOB_FORMAT, title: 'Bar top' };

interface Operation {
  readonly operationId: string;
  readonly requestBody?: { readonly content: Record<string, { readonly schema: object }> };
  readonly responses: Record<string, { readonly content: Record<string, { readonly schema: object }> }>;
}
const paths = openApi('0.0.0').paths as Record<string, Record<string, Operation>>;
// zod writes both a format and a pattern; the pattern is what is checked here.
const ajv = new Ajv2020({ strict: false, validateFormats: false, allErrors: true });

describe('the OpenAPI description', () => {
  it('is served, as OpenAPI 3.1, and so is the schema of a job file', async () => {
    const { call } = await testApp();
    const served = await call('GET', '/api/openapi.json');
    expect(served.body).toMatchObject({ openapi: '3.1.0', info: { title: 'Pourwright', version: '0.0.0' } });
    expect(served.body.paths).toEqual(paths);
    const schema = await call('GET', '/api/job.schema.json');
    expect(schema.headers.get('content-type')).toBe('application/schema+json');
    const accepts = ajv.compile(schema.body);
    expect(accepts(document)).toBe(true);
    expect(accepts({ ...document, title: 7 })).toBe(false);
  });

  it('has every route of the app, and the app has every route of it', async () => {
    const { app } = await testApp();
    const served = app.routes
      .filter((route) => route.method !== 'ALL' && route.path.startsWith('/api/'))
      .map((route) => `${route.method} ${route.path.replaceAll(/:(\w+)/g, '{$1}')}`);
    const described = Object.entries(paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
    );
    expect([...new Set(served)].sort()).toEqual(described.sort());
    expect(described.length).toBe(34);
  });

  it('has schemas that are all valid, and names every part of a path', () => {
    for (const [path, methods] of Object.entries(paths))
      for (const operation of Object.values(methods)) {
        for (const { content } of [operation.requestBody, ...Object.values(operation.responses)].filter(
          (x) => !!x,
        ))
          for (const { schema } of Object.values(content)) expect(() => ajv.compile(schema)).not.toThrow();
        const inPath = [...path.matchAll(/\{(\w+)\}/g)].map((m) => m[1]);
        const { parameters = [] } = operation as { parameters?: { name: string; in: string }[] };
        expect(parameters.filter((p) => p.in === 'path').map((p) => p.name)).toEqual(inPath);
      }
  });

  it('describes what is answered: every status of every route that can be brought about', async () => {
    const { call } = await testApp();
    const seen = new Set<string>();
    /** Calls, and holds request and answer against the description. */
    const check = async (status: number, method: string, path: string, address: string, body?: unknown) => {
      const answer = await call(method, address, body);
      expect([address, answer.status, answer.status === status ? '' : answer.text]).toEqual([
        address,
        status,
        '',
      ]);
      const operation = paths[path]?.[method.toLowerCase()];
      const described = operation?.responses[status]?.content;
      expect(Object.keys(described ?? {})).toEqual([answer.headers.get('content-type')]);
      const accepts = ajv.compile(Object.values(described ?? {})[0]!.schema);
      expect([address, accepts(answer.body ?? answer.text), accepts.errors ?? null]).toEqual([
        address,
        true,
        null,
      ]);
      if (status < 300 && body !== undefined)
        expect(ajv.compile(operation!.requestBody!.content['application/json']!.schema)(body)).toBe(true);
      seen.add(`${operation!.operationId} ${status}`);
    };
    const [id, none] = [uuid(), uuid()];
    const job = '/api/jobs/{id}';
    const save = (over = {}) => ({ baseVersion: 1, saveId: uuid(), document, ...over });
    const wrong = { ...document, room: { air: 'warm' } };
    const shop = { name: 'Bench One' };
    await check(200, 'GET', '/api/health', '/api/health');
    await check(201, 'POST', '/api/jobs', '/api/jobs', { id, saveId: uuid(), document });
    await check(409, 'POST', '/api/jobs', '/api/jobs', { id, saveId: uuid(), document });
    await check(422, 'POST', '/api/jobs', '/api/jobs', { id, saveId: uuid(), document: wrong });
    await check(400, 'POST', '/api/jobs', '/api/jobs', { id });
    await check(413, 'POST', '/api/jobs', '/api/jobs', 'x'.repeat(1_000_001));
    await check(200, 'GET', '/api/jobs', '/api/jobs?archived=false');
    await check(400, 'GET', '/api/jobs', '/api/jobs?archived=x');
    await check(200, 'PUT', job, `/api/jobs/${id}`, save());
    await check(409, 'PUT', job, `/api/jobs/${id}`, save());
    await check(409, 'PUT', job, `/api/jobs/${id}`, save({ baseVersion: 77 }));
    await check(422, 'PUT', job, `/api/jobs/${id}`, save({ document: wrong }));
    await check(404, 'PUT', job, `/api/jobs/${none}`, save());
    for (const [path, method] of [
      ['', 'GET'],
      ['/file', 'GET'],
      ['/versions', 'GET'],
      ['/archive', 'POST'],
      ['/restore', 'POST'],
    ] as const) {
      await check(200, method, job + path, `/api/jobs/${id}${path}`);
      await check(404, method, job + path, `/api/jobs/${none}${path}`);
      await check(400, method, job + path, `/api/jobs/7${path}`);
    }
    const whole = uuid();
    const outline = { shape: 'round', diameter: '12 in' };
    const piece = { outline, bodyThickness: '3/4 in' };
    await check(201, 'POST', '/api/jobs', '/api/jobs', {
      id: whole,
      saveId: uuid(),
      document: { ...document, piece },
    });
    for (const file of ['/set-out.pdf', '/template.pdf']) {
      await check(200, 'GET', job + file, `/api/jobs/${whole}${file}?paper=a4`);
      await check(422, 'GET', job + file, `/api/jobs/${id}${file}`);
      await check(404, 'GET', job + file, `/api/jobs/${none}${file}`);
      await check(400, 'GET', job + file, `/api/jobs/${whole}${file}?paper=a5`);
    }
    const poured = uuid();
    const coats = [{ id: 'c', film: '3 mm', faceFilm: '0.5 mm', edges: 'dammed' }];
    await check(201, 'POST', '/api/jobs', '/api/jobs', {
      id: poured,
      saveId: uuid(),
      document: { ...document, piece, coats },
    });
    for (const file of ['approval.pdf', 'pour-map.pdf', 'full-size.pdf', 'picture.png']) {
      await check(200, 'GET', `${job}/look/${file}`, `/api/jobs/${poured}/look/${file}?coat=c`);
      await check(422, 'GET', `${job}/look/${file}`, `/api/jobs/${id}/look/${file}`);
      await check(404, 'GET', `${job}/look/${file}`, `/api/jobs/${none}/look/${file}`);
      await check(400, 'GET', `${job}/look/${file}`, `/api/jobs/${poured}/look/${file}?paper=a5`);
    }
    const starts = uuid();
    await check(201, 'POST', '/api/jobs', '/api/jobs', {
      id: starts,
      saveId: uuid(),
      document: {
        ...document,
        piece,
        room: { air: '21 C' },
        coats: [{ ...coats[0], resin: 'regular-50', startsAt: '2026-05-14T09:00' }],
      },
    });
    const ics = `${job}/calendar.ics`;
    await check(200, 'GET', ics, `/api/jobs/${starts}/calendar.ics?zone=America/Chicago`);
    await check(400, 'GET', ics, `/api/jobs/${starts}/calendar.ics?zone=Mars`);
    await check(404, 'GET', ics, `/api/jobs/${none}/calendar.ics?zone=UTC`);
    await check(422, 'GET', ics, `/api/jobs/${id}/calendar.ics?zone=UTC`);
    await check(200, 'GET', `${job}/versions/{version}`, `/api/jobs/${id}/versions/1`);
    await check(404, 'GET', `${job}/versions/{version}`, `/api/jobs/${id}/versions/9`);
    const resin = '/api/resins/{id}';
    const card = { format: 'pourwright resin 1', id: 'slow', name: 'Slow', mix: { byVolume: '2:1' } };
    const put = (over = {}) => ({ baseVersion: 1, saveId: uuid(), document: card, ...over });
    await check(201, 'POST', '/api/resins', '/api/resins', { saveId: uuid(), document: card });
    await check(409, 'POST', '/api/resins', '/api/resins', { saveId: uuid(), document: card });
    await check(422, 'POST', '/api/resins', '/api/resins', {
      saveId: uuid(),
      document: { ...card, mix: {} },
    });
    await check(400, 'POST', '/api/resins', '/api/resins', { document: card });
    await check(200, 'GET', '/api/resins', '/api/resins');
    await check(200, 'GET', '/api/fitted-resins', '/api/fitted-resins');
    await check(200, 'PUT', resin, '/api/resins/slow', put());
    await check(409, 'PUT', resin, '/api/resins/slow', put());
    await check(422, 'PUT', resin, '/api/resins/slow', put({ document: { ...card, id: 'other' } }));
    await check(404, 'PUT', resin, '/api/resins/none', put({ document: { ...card, id: 'none' } }));
    for (const [path, method] of [
      ['', 'GET'],
      ['/archive', 'POST'],
      ['/restore', 'POST'],
    ] as const) {
      await check(200, method, resin + path, `/api/resins/slow${path}`);
      await check(404, method, resin + path, `/api/resins/none${path}`);
      await check(400, method, resin + path, `/api/resins/A${path}`);
    }
    await check(200, 'GET', '/api/shop', '/api/shop');
    await check(200, 'PUT', '/api/shop', '/api/shop', { baseVersion: 0, saveId: uuid(), shop });
    await check(200, 'GET', '/api/shop', '/api/shop');
    await check(409, 'PUT', '/api/shop', '/api/shop', { baseVersion: 0, saveId: uuid(), shop });
    const offcut = { id: uuid(), board: 'MDF', thickness_m: 0.019, length_m: 1, width_m: 0.3 };
    const put1 = { movement: { id: uuid(), why: 'cut as planned', jobId: id, puts: [offcut] } };
    const moves = '/api/offcut-movements';
    await check(201, 'POST', moves, moves, put1);
    await check(201, 'POST', moves, moves, put1);
    await check(422, 'POST', moves, moves, { movement: { ...put1.movement, id: uuid() } });
    await check(400, 'POST', moves, moves, { movement: { ...put1.movement, why: 'because' } });
    await check(200, 'GET', moves, moves);
    const run = '/api/runs/{id}';
    const one = uuid7();
    const opened = {
      jobId: id,
      title: 'Bar top',
      pour: JSON.parse(frozenText(freezePour(request, plan, '1'))),
    };
    await check(200, 'PUT', run, `/api/runs/${one}`, opened);
    await check(422, 'PUT', run, `/api/runs/${one}`, {
      ...opened,
      pour: { ...opened.pour, modelVersion: '2' },
    });
    await check(400, 'PUT', run, `/api/runs/${one}`, { ...opened, jobId: 'x' });
    await check(200, 'GET', run, `/api/runs/${one}`);
    await check(404, 'GET', run, `/api/runs/${none}`);
    await check(200, 'GET', '/api/runs', `/api/runs?job=${id}`);
    await check(400, 'GET', '/api/runs', '/api/runs?job=x');
    const event = { id: uuid7(), run: one, device: uuid7(), at_s: 0, wall_ms: 5, kind: 'started' };
    const sent = { after: 0, now_ms: 5, events: [event] };
    await check(200, 'POST', `${run}/events`, `/api/runs/${one}/events`, sent);
    await check(404, 'POST', `${run}/events`, `/api/runs/${none}/events`, sent);
    await check(400, 'POST', `${run}/events`, `/api/runs/${one}/events`, { ...sent, now_ms: 'x' });
    await check(200, 'GET', '/api/openapi.json', '/api/openapi.json');
    await check(200, 'GET', '/api/job.schema.json', '/api/job.schema.json');
    const own = Object.values(paths)
      .flatMap((methods) => Object.values(methods))
      .flatMap((o) => Object.keys(o.responses).map((status) => `${o.operationId} ${status}`))
      // Brought about in guards.test.ts, the same for every route.
      .filter((name) => !/ (400|403|413|415|500|503)$/.test(name));
    expect(own.filter((name) => !seen.has(name))).toEqual([]);
  });
});
