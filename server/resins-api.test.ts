import { describe, expect, it } from 'vitest';
import { JOB_FORMAT } from '#core/job/document.ts';
import { ResinCardDocument } from '#core/resin/card-document.ts';
import { AT, testApp } from './test-app.ts';

const uuid = () => crypto.randomUUID();
const input = {
  format: 'pourwright resin 1',
  id: 'shop-slow',
  name: 'Shop slow',
  mix: { byVolume: '2:1' },
  label: [
    { kind: 'working time', value: '40 min' },
    { kind: 'recoat opens', value: '12 h' },
  ],
} as const;
const document = ResinCardDocument.parse(input);
const path = '/api/resins/shop-slow';

async function withCard() {
  const tested = await testApp();
  await tested.call('POST', '/api/resins', { saveId: uuid(), document: input });
  return tested;
}

describe('resin cards over HTTP', () => {
  it('are made once, with what was left out filled in, listed and read', async () => {
    const { call } = await testApp();
    const body = { saveId: uuid(), document: input };
    for (let sent = 0; sent < 2; sent += 1)
      expect(await call('POST', '/api/resins', body)).toMatchObject({ status: 201, body: { version: 1 } });
    const stored = { id: 'shop-slow', version: 1, savedAt: AT, archived: false, document };
    expect((await call('GET', path)).body).toEqual(stored);
    expect((await call('GET', '/api/resins')).body).toEqual({ resins: [stored] });
    const taken = await call('POST', '/api/resins', { ...body, saveId: uuid() });
    expect(taken).toMatchObject({ status: 409, body: { conflict: { current: { version: 1 }, base: null } } });
  });

  it('are saved; a second save on the same version is a conflict with both documents to compare', async () => {
    const { call } = await withCard();
    const save = (name: string) =>
      call('PUT', path, { baseVersion: 1, saveId: uuid(), document: { ...input, name } });
    expect(await save('Mine')).toMatchObject({ status: 200, body: { version: 2 } });
    const late = await save('Yours');
    expect(late.status).toBe(409);
    expect(late.body.conflict).toEqual({
      current: { version: 2, document: { ...document, name: 'Mine' } },
      base: document,
    });
    expect(late.body.error.message).toContain('you edited version 1, the newest is 2');
  });

  const wrong = (over: object) => ({ ...input, ...over });
  it.each([
    ['nothing', null, ''],
    ['a list', [], ''],
    ['another format', wrong({ format: 'pourwright resin 9' }), 'format'],
    ['a name of the wrong kind', wrong({ name: 7 }), 'name'],
    ['a field that a card does not have', wrong({ colour: 'red' }), ''],
    ['an id with a slash', wrong({ id: 'a/b' }), 'id'],
    ['the id of a generic card', wrong({ id: 'quick-20' }), 'id'],
    ['no mix ratio', wrong({ mix: {} }), 'mix.byVolume'],
    ['a ratio of 0', wrong({ mix: { byVolume: '2:0' } }), 'mix.byVolume'],
    ['ratios that disagree', wrong({ mix: { byVolume: '2:1', byWeight: '1:1' } }), 'mix.byWeight'],
    [
      'a recoat time before the end of working time',
      wrong({ label: [input.label[0], { kind: 'recoat opens', value: '30 min' }] }),
      'label.1.value',
    ],
    [
      'a temperature in the wrong unit',
      wrong({ label: [{ ...input.label[0], temperature: '75 C' }] }),
      'label.0.temperature',
    ],
    ['a figure that is empty', wrong({ label: [{ kind: 'working time', value: '' }] }), 'label.0.value'],
    [
      'readings that go back in time',
      wrong({
        observations: [
          {
            id: 'o',
            kind: 'cup temperatures',
            mass: '100 g',
            air: '75 F',
            readings: ['1 min', '3 min', '2 min'].map((at) => ({ at, temperature: '75 F' })),
          },
        ],
      }),
      'observations.0.readings.2.at',
    ],
  ])('that are or hold %s are refused, naming the field, and nothing is stored', async (_, sent, field) => {
    const { call } = await testApp();
    const answer = await call('POST', '/api/resins', { saveId: uuid(), document: sent });
    expect(answer.status).toBe(422);
    expect(answer.body.problems[0].path).toBe(field);
    expect((await call('GET', '/api/resins')).body.resins).toEqual([]);
  });

  it('say what is allowed: 75 C is asked back as 75 F', async () => {
    const { call } = await withCard();
    const label = [{ ...input.label[0], temperature: '75 C' }];
    const answer = await call('PUT', path, {
      baseVersion: 1,
      saveId: uuid(),
      document: wrong({ label }),
    });
    expect(answer.body.problems[0]).toMatchObject({ code: 'temperature.other-unit', read: '75 C' });
    expect(answer.body.problems[0].message).toContain('did you mean 75 °F?');
    expect((await call('GET', path)).body.version).toBe(1);
  });

  it('keep their id', async () => {
    const { call } = await withCard();
    const save = { baseVersion: 1, saveId: uuid(), document: wrong({ id: 'other' }) };
    expect(await call('PUT', path, save)).toMatchObject({
      status: 422,
      body: { problems: [{ path: 'id' }] },
    });
  });

  it('go into the archive and come back', async () => {
    const { call } = await withCard();
    expect(await call('POST', `${path}/archive`)).toMatchObject({ status: 200, body: { archived: true } });
    expect((await call('GET', path)).body.archived).toBe(true);
    expect((await call('GET', '/api/fitted-resins')).body.cards).toMatchObject([{ archived: true }]);
    expect(await call('POST', `${path}/restore`)).toMatchObject({ status: 200, body: { archived: false } });
  });

  it.each(['UPPER', '-x', 'a%20b', 'x'.repeat(61)])('have no address like %s', async (id) => {
    const { call } = await testApp();
    expect(await call('GET', `/api/resins/${id}`)).toMatchObject({
      status: 400,
      body: { error: { code: 'id.resin' } },
    });
  });

  it.each([
    ['GET', ''],
    ['PUT', ''],
    ['POST', '/archive'],
    ['POST', '/restore'],
  ])('that do not exist are 404: %s %s', async (method, rest) => {
    const { call } = await testApp();
    const body = method === 'PUT' ? { baseVersion: 1, saveId: uuid(), document: input } : undefined;
    expect((await call(method, `${path}${rest}`, body)).status).toBe(404);
  });
});

describe('a job over HTTP', () => {
  const job = (resin: string) => ({
    id: uuid(),
    saveId: uuid(),
    document: {
      format: JOB_FORMAT,
      coats: [{ id: 'c', resin, film: '4 fl oz/sq ft', faceFilm: '0.5 mm' }],
    },
  });

  it('may use a card of the shop, archived or not, and no other', async () => {
    const { call } = await withCard();
    expect((await call('POST', '/api/jobs', job('shop-slow'))).status).toBe(201);
    await call('POST', `${path}/archive`);
    expect((await call('POST', '/api/jobs', job('shop-slow'))).status).toBe(201);
    const unknown = await call('POST', '/api/jobs', job('shop-fast'));
    expect(unknown.status).toBe(422);
    expect(unknown.body.problems[0]).toMatchObject({
      path: 'coats.0.resin',
      read: 'shop-fast',
      allowed: 'quick-20, regular-50, shop-slow',
    });
  });

  it('is held to the limits of the card it uses', async () => {
    const { call } = await testApp();
    const label = [...input.label, { kind: 'largest film', value: '1 mm' }];
    await call('POST', '/api/resins', { saveId: uuid(), document: { ...input, label } });
    const thick = await call('POST', '/api/jobs', job('shop-slow'));
    expect(thick.body.problems).toMatchObject([{ path: 'coats.0.film', code: 'coat.film-too-thick' }]);
  });
});

describe('fitted cards', () => {
  it('are what the document leads to, and follow it', async () => {
    const { call } = await withCard();
    const working = async () =>
      (await call('GET', '/api/fitted-resins')).body.cards[0].card.model.kRef_per_s as number;
    const before = await working();
    const label = [{ kind: 'working time', value: '20 min' }, input.label[1]];
    await call('PUT', path, { baseVersion: 1, saveId: uuid(), document: { ...input, label } });
    // Half the working time is about twice the rate; the recoat time of 12 h stays and holds some of it back.
    expect((await working()) / before).toBeGreaterThan(1.6);
    expect((await working()) / before).toBeLessThan(2.6);
  });
});
