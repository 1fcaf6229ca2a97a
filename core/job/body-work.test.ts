import { describe, expect, it } from 'vitest';
import { bodyParts } from '#core/piece/body/body-parts.ts';
import { planCutting } from '#core/piece/cutting/plan-cutting.ts';
import { emptySurvey } from '#core/piece/survey/document.ts';
import { GENERIC_CARDS } from '#core/resin/cards.ts';
import type { Offcut } from '#core/shelf/offcuts.ts';
import { bodyWork, partsByBoard } from './body-work.ts';
import { checkShape } from './check-job.ts';
import { JobDocument } from './document.ts';
import { Notes } from './notes.ts';
import { checkJob } from './read-job.ts';
import { readPiece } from './read-piece.ts';
import { newShopBody, ShopBody } from './shop-body.ts';

const job = (piece: object): JobDocument =>
  JobDocument.parse({
    format: 'pourwright job 1',
    piece: {
      outline: { shape: 'rectangle', length: '48 in', width: '22 in' },
      bodyThickness: '1 1/2 in',
      boardThickness: '3/4 in',
      ...piece,
    },
  });
const problems = (body: object) => {
  const checked = checkJob(job({ body }), GENERIC_CARDS, 'us');
  return checked.ok ? [] : checked.problems;
};

describe('the body in a job document', () => {
  it('is the shop way in a job that was saved before there was one', () => {
    const { body: _, survey: __, ...old } = job({}).piece;
    const read = checkShape({ ...job({}), piece: old });
    expect(read.ok && read.value.piece.body).toEqual(job({}).piece.body);
    expect(read.ok && read.value.piece.survey).toBeNull();
  });

  it('is refused with the field, what was read and what is allowed in the units of the shop', () => {
    expect(problems({ kerf: '1 in' })).toMatchObject([
      { path: 'piece.body.kerf', code: 'length.range', read: '1 in', allowed: expect.stringMatching(/ in$/) },
    ]);
    expect(problems({ density: 'heavy' })).toMatchObject([{ path: 'piece.body.density', read: 'heavy' }]);
    expect(problems({ overhangs: [{ edge: 'bow', overhang: '10 in' }] })).toMatchObject([
      { path: 'piece.body.overhangs.0.edge', read: 'bow', allowed: 'front, right, back, left' },
    ]);
    expect(problems({ accessible: { topHeight: '34' } })).toMatchObject([
      { path: 'piece.body.accessible.topHeight' },
    ]);
    const sheet = { name: 'MDF', length: '97 in', width: '49 in', price: 'sixty', count: '1.5' };
    expect(problems({ sheets: [sheet] })).toMatchObject([
      { path: 'piece.body.sheets.0.price', read: 'sixty', allowed: expect.stringContaining('0 to 1000000') },
      { path: 'piece.body.sheets.0.count', read: '1.5', allowed: expect.stringContaining('whole number') },
    ]);
  });

  it('says at its place that a tape reading cannot be read', () => {
    const survey = emptySurvey();
    const bad = { ...survey, readings: [{ ...survey.readings[0]!, length: '48 parsecs' }] };
    const checked = checkJob(job({ survey: bad }), GENERIC_CARDS, 'us');
    expect(checked).toMatchObject({
      ok: false,
      problems: [{ path: 'piece.survey.readings.0.length', read: '48 parsecs' }],
    });
  });
});

const offcut = (n: number, more: object = {}): Offcut => ({
  ...{ id: `0190d000-0000-7000-8000-00000000000${n}`, board: 'MDF', thickness_m: 0.01905 },
  ...{ length_m: 1.3, width_m: 0.3 },
  ...more,
});
function work(piece: object, offcuts: readonly Offcut[] = [], shop = newShopBody()) {
  const document = job(piece).piece;
  const read = readPiece(document, new Notes());
  if (read.piece === null) throw new Error('no piece');
  const made = bodyWork({ ...read, board: document.board, shop, offcuts, resin_kg: 2 });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return { ...made.value, piece: read.piece };
}

describe('what a body is cut from', () => {
  it('is the shop sheets of its board and thickness, and says which of another thickness there are', () => {
    const { stock, otherThickness, cutting } = work({});
    expect(stock.map(({ name }) => name)).toEqual(['MDF 49 x 97']);
    expect(otherThickness).toEqual([]);
    expect(cutting).toMatchObject({ kerf_m: 0.003175, keep: { length_m: 0.6, width_m: 0.1 } });
    expect(work({ boardThickness: '1/2 in' })).toMatchObject({ stock: [], otherThickness: ['MDF 49 x 97'] });
    expect(work({ board: 'solid wood' })).toMatchObject({ stock: [], otherThickness: [] });
  });

  it('is what the job says before what the shop says', () => {
    const body = {
      kerf: '2 mm',
      sheets: [{ name: 'own', length: '2 m', width: '1 m', price: '30', count: '2' }],
    };
    expect(work({ body })).toMatchObject({
      stock: [{ name: 'own', length_m: 2, width_m: 1, price: 30, count: 2 }],
      cutting: { kerf_m: 0.002, trim_m: 0.006 },
      priced: true,
    });
  });

  it('counts areas and not money while one sheet has no price', () => {
    const sheets = [
      { name: 'a', length: '2 m', width: '1 m', price: '30' },
      { name: 'b', length: '1 m', width: '1 m' },
    ];
    const { priced, stock } = work({ body: { sheets } });
    expect(priced).toBe(false);
    expect(stock.every(({ price }) => price === undefined)).toBe(true);
  });

  it('takes offcuts of the same board and thickness first, unless told not to', () => {
    const shelf = [offcut(1), offcut(2, { board: 'plywood' }), offcut(3, { thickness_m: 0.0127 })];
    const { stock, offcuts } = work({}, shelf);
    expect(stock[0]).toMatchObject({ offcut: true, length_m: 1.3, count: 1 });
    expect(offcuts).toEqual([shelf[0], null]);
    expect(work({ body: { useOffcuts: false } }, shelf).offcuts).toEqual([null]);
  });

  it('is enough for the parts of a vanity, splash included, and the plan uses the offcut', () => {
    const made = work({ splashes: [{ side: 'back' }] }, [offcut(1)]);
    const parts = bodyParts(made.piece, made.options);
    expect(parts.map(({ name }) => name)).toContain('back splash');
    const plan = planCutting(partsByBoard(parts, made.boardThickness_m).own, made.stock, {
      ...made.cutting,
      rounds: 200,
      tidyRounds: 50,
    });
    expect(plan.ok && plan.value.sheets.map(({ name }) => name)).toEqual(['offcut', 'MDF 49 x 97']);
  });

  it('leaves a splash of another thickness to another board', () => {
    const made = work({ splashes: [{ side: 'back', thickness: '1/2 in' }] });
    const { own, others } = partsByBoard(bodyParts(made.piece, made.options), made.boardThickness_m);
    expect(others.map(({ name, thickness_m }) => [name, thickness_m])).toEqual([['back splash', 0.0127]]);
    expect(own.some(({ kind }) => kind === 'splash')).toBe(false);
  });

  it('weighs by the density that was typed, else by the board', () => {
    expect(work({ body: { density: '800 kg/m3' } }).options).toMatchObject({
      density_kg_m3: 800,
      densitySpread: 0.03,
      resin_kg: 2,
    });
    expect(work({ board: 'plywood' }).options).toMatchObject({ density_kg_m3: 600, grained: true });
  });

  it('asks for the height before it says anything about knee clearance', () => {
    expect(work({ body: { accessible: {} } })).toMatchObject({ needsTopHeight: true });
    expect(work({ body: { accessible: { topHeight: '34 in' } } }).options.accessible).toEqual({
      topHeight_m: 0.8636,
    });
  });

  it('is not told for a board too thick', () => {
    const document = job({ boardThickness: '5 in' }).piece;
    const read = readPiece(document, new Notes());
    expect(bodyWork({ ...read, board: 'MDF', shop: newShopBody(), offcuts: [], resin_kg: 0 })).toMatchObject({
      ok: false,
      problems: [{ path: 'piece.boardThickness', allowed: expect.any(String) }],
    });
  });
});

describe('the body figures of the shop', () => {
  it('are common practice until the shop says otherwise, and sheets that cannot be read are refused', () => {
    expect(newShopBody().sheets.length).toBeGreaterThan(0);
    const wrong = ShopBody.safeParse({ sheets: [{ name: 'x', length: 'long', width: '1 m' }] });
    expect(wrong.success).toBe(false);
    expect(wrong.error?.issues[0]).toMatchObject({ path: ['sheets', 0, 'length'] });
    expect(ShopBody.safeParse({ kerf_m: 1 }).success).toBe(false);
  });
});
