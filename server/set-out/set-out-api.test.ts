import { describe, expect, it } from 'vitest';
import { JOB_FORMAT } from '#core/job/document.ts';
import { testApp } from '../test-app.ts';

const rectangle = { shape: 'rectangle', length: '42 in', width: '21 1/2 in', cornerRadius: '1/2 in' };
const whole = { outline: rectangle, bodyThickness: '1 1/2 in' };

async function withJob(piece: object, title = 'Küchentheke 1/2') {
  const { call } = await testApp();
  const id = crypto.randomUUID();
  const saved = await call('POST', '/api/jobs', {
    id,
    saveId: crypto.randomUUID(),
    document: { format: JOB_FORMAT, title, piece },
  });
  expect(saved.status).toBe(201);
  return { call, get: (path: string) => call('GET', `/api/jobs/${id}/${path}`) };
}

describe('the PDF routes', () => {
  it('answer a sheet and a template, named after the job, on the paper asked for', async () => {
    const { get } = await withJob(whole);
    for (const [path, box] of [
      ['set-out.pdf', '[0 0 792 612]'],
      ['set-out.pdf?paper=letter&units=metric', '[0 0 792 612]'],
      ['set-out.pdf?paper=a4', '[0 0 841.889764 595.275591]'],
      ['template.pdf?paper=a4', '595.275591'],
    ] as const) {
      const answer = await get(path);
      expect(answer.status).toBe(200);
      expect(answer.headers.get('content-type')).toBe('application/pdf');
      const name = path.startsWith('set-out') ? 'set-out' : 'template';
      expect(answer.headers.get('content-disposition')).toBe(
        `attachment; filename="Kchentheke-1-2-${name}.pdf"; filename*=UTF-8''K%C3%BCchentheke-1-2-${name}.pdf`,
      );
      expect(answer.text.startsWith('%PDF-')).toBe(true);
      expect(answer.text).toContain(box);
    }
  });

  it('take paper and units of the shop where none are asked for', async () => {
    const { call, get } = await withJob(whole);
    const shop = { name: 'Bench One', system: 'metric' };
    await call('PUT', '/api/shop', { baseVersion: 0, saveId: crypto.randomUUID(), shop });
    expect((await get('set-out.pdf')).text).toContain('[0 0 841.889764 595.275591]');
  });

  it('name what is missing while there is no outline, field by field', async () => {
    const none = await withJob({});
    for (const path of ['set-out.pdf', 'template.pdf']) {
      const answer = await none.get(path);
      expect(answer.status).toBe(422);
      expect(answer.body.problems.map((p: { path: string }) => p.path)).toContain('piece.outline');
      expect(answer.body.problems[0].message).toMatch(/^Nothing can be set out yet: still needed is /);
    }
    const half = await withJob({ outline: { ...rectangle, width: '' }, bodyThickness: '1 1/2 in' });
    const answer = await half.get('set-out.pdf');
    expect(answer.body.problems).toEqual([
      {
        path: 'piece.outline.width',
        code: 'piece.missing',
        message: 'Nothing can be set out yet: still needed is the depth.',
      },
    ]);
  });

  it('explain a piece that cannot be built at the field it was typed in, in the units of the shop', async () => {
    const cutOut = {
      name: 'tap',
      shape: 'round',
      length: '2 in',
      fromLeft: '1/2 in',
      fromFront: '10 in',
      rim: 'dammed',
    };
    const { get } = await withJob({ ...whole, cutOuts: [cutOut] });
    for (const path of ['set-out.pdf', 'template.pdf']) {
      const answer = await get(path);
      expect(answer.status).toBe(422);
      expect(answer.body.problems[0].path).toBe('piece.cutOuts.0.fromLeft');
      expect(JSON.stringify(answer.body.problems)).not.toContain(' mm');
    }
  });

  it('refuse another paper, other units, and questions they do not know', async () => {
    const { get } = await withJob(whole);
    for (const asked of ['set-out.pdf?paper=a5', 'set-out.pdf?units=cubits', 'template.pdf?scale=2']) {
      const answer = await get(asked);
      expect(answer.status).toBe(400);
      expect(answer.body.error.code).toBe('query.shape');
    }
    expect((await get('set-out.pdf?paper=a5')).body.error.message).toContain('the paper is a4 or letter');
  });
});

describe('a job of several pieces', () => {
  const shelf = {
    id: 'b',
    name: 'shelf',
    outline: { shape: 'rectangle', length: '36 in', width: '10 in' },
    bodyThickness: '1 in',
  };
  async function several(second: object) {
    const { call } = await testApp();
    const id = crypto.randomUUID();
    const document = { format: JOB_FORMAT, title: 'Kitchen', piece: whole, otherPieces: [second] };
    const saved = await call('POST', '/api/jobs', { id, saveId: crypto.randomUUID(), document });
    expect(saved.status).toBe(201);
    return (path: string) => call('GET', `/api/jobs/${id}/${path}`);
  }
  const pages = (text: string) => text.match(/\/Type \/Page\b/g)?.length ?? 0;

  it('is set out on pages of its own a piece, and one piece where one is asked for', async () => {
    const get = await several(shelf);
    const [all, first, second] = [
      await get('set-out.pdf'),
      await get('set-out.pdf?piece=piece'),
      await get('set-out.pdf?piece=b'),
    ];
    expect(pages(all.text)).toBe(pages(first.text) + pages(second.text));
    expect(pages(first.text)).toBeGreaterThanOrEqual(2);
    expect(second.headers.get('content-disposition')).toContain('"Kitchen-shelf-set-out.pdf"');
    expect((await get('template.pdf?piece=b')).headers.get('content-disposition')).toContain(
      '"Kitchen-shelf-template.pdf"',
    );
    expect((await get('set-out.pdf?piece=c')).status).toBe(404);
  });

  it('says what is missing at the piece that lacks it, and sets out the others when asked for them', async () => {
    const get = await several({ ...shelf, bodyThickness: '' });
    const all = await get('set-out.pdf');
    expect(all.status).toBe(422);
    expect(all.body.problems.map((p: { path: string }) => p.path)).toEqual(['otherPieces.0.bodyThickness']);
    expect((await get('set-out.pdf?piece=piece')).status).toBe(200);
    expect((await get('template.pdf')).status).toBe(200);
  });
});
