import { describe, expect, it } from 'vitest';
import { JOB_FORMAT } from '#core/job/document.ts';
import { testApp } from '../test-app.ts';

const piece = {
  outline: { shape: 'rectangle', length: '12 in', width: '8 in', cornerRadius: '' },
  bodyThickness: '3/4 in',
};
const coat = {
  id: 'colour',
  name: 'Colour coat',
  film: '4 fl oz/sq ft',
  faceFilm: '0.5 mm',
  edges: 'dammed',
  colours: [
    { name: 'slate', swatch: '#23262b', share: '70 %', colourant: 'pigment paste', load: '3 %', key: 'dark' },
    { name: 'moss', swatch: '#2e5a4b', share: '30 %', colourant: 'pigment paste', load: '3 %', key: 'green' },
  ],
  look: {
    version: 1,
    ground: 'dark',
    moves: [{ kind: 'puddle', id: 'p', colour: 'green', volume_m3: 2e-5, path: [[0.1, 0.1]] }],
  },
};

async function withJob(change: object = {}) {
  const { call, app } = await testApp();
  const id = crypto.randomUUID();
  const document = { format: JOB_FORMAT, title: 'Küchentheke 1/2', piece, coats: [coat], ...change };
  const saved = await call('POST', '/api/jobs', { id, saveId: crypto.randomUUID(), document });
  expect([saved.status, saved.text]).toEqual([201, saved.text]);
  const get = (path: string) => call('GET', `/api/jobs/${id}/look/${path}`);
  const raw = async (path: string) =>
    new Uint8Array(
      await (await app.request(`http://localhost:4180/api/jobs/${id}/look/${path}`)).arrayBuffer(),
    );
  return { call, get, raw };
}

describe('the routes of a look', { timeout: 120_000 }, () => {
  it('answer sheets on the paper asked for, named after the job', async () => {
    const { get } = await withJob();
    for (const [path, name] of [
      ['approval.pdf', 'look'],
      ['pour-map.pdf', 'pour-map'],
      ['full-size.pdf', 'full-size'],
    ] as const) {
      const answer = await get(`${path}?paper=a4`);
      expect([path, answer.status]).toEqual([path, 200]);
      expect(answer.headers.get('content-type')).toBe('application/pdf');
      expect(answer.headers.get('content-disposition')).toContain(`Kchentheke-1-2-${name}.pdf`);
      expect(answer.text.startsWith('%PDF-')).toBe(true);
      expect(answer.text).toContain('595.275591');
    }
  });

  it('answer a picture of the width asked for, its pixels as large as the header says', async () => {
    const { raw } = await withJob();
    for (const width of [64, 301]) {
      const bytes = Buffer.from(await raw(`picture.png?width=${width}&show=top`));
      expect(bytes.subarray(1, 4).toString()).toBe('PNG');
      expect([bytes.readUInt32BE(16), bytes.readUInt32BE(20)]).toEqual([
        width,
        Math.round((width * 8) / 12 + 0.49),
      ]);
    }
  });

  it('say what is still missing, by field', async () => {
    const none = await withJob({ coats: [] });
    const missing = await none.get('approval.pdf');
    expect(missing.status).toBe(422);
    expect(missing.body.problems[0].path).toBe('coats');
    const bare = await withJob({ piece: {} });
    const answer = await bare.get('picture.png');
    expect(answer.status).toBe(422);
    expect(answer.body.problems[0].path).toBe('piece');
    const wrong = await withJob({
      coats: [{ ...coat, look: { ...coat.look, moves: [{ ...coat.look.moves[0], colour: 'blue' }] } }],
    });
    const named = await wrong.get('pour-map.pdf');
    expect(named.status).toBe(422);
    expect(named.body.problems[0].path).toBe('coats.0.look.moves.0.colour');
  });

  it('name the coats there are where another is asked for, and refuse other widths', async () => {
    const { get, call } = await withJob();
    const other = await get('approval.pdf?coat=clear');
    expect(other.status).toBe(404);
    expect(other.body.error.message).toBe('The job has no coat "clear". Allowed: colour (Colour coat).');
    expect((await get('approval.pdf?coat=colour&units=metric')).status).toBe(200);
    const wide = await get('picture.png?width=9000');
    expect(wide.status).toBe(400);
    expect(wide.body.error.message).toContain('64 to 4000 pixels');
    const nowhere = await call('GET', `/api/jobs/${crypto.randomUUID()}/look/picture.png`);
    expect(nowhere.status).toBe(404);
  });
});
