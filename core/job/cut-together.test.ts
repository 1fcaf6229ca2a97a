import { describe, expect, it } from 'vitest';
import { bodyParts } from '#core/piece/body/body-parts.ts';
import { planCutting } from '#core/piece/cutting/plan-cutting.ts';
import type { Offcut } from '#core/shelf/offcuts.ts';
import { bodyWork } from './body-work.ts';
import { cutTogether, type PieceToCut } from './cut-together.ts';
import { JobDocument } from './document.ts';
import { Notes } from './notes.ts';
import { readPiece } from './read-piece.ts';
import { newShopBody, ShopBody } from './shop-body.ts';

const shop = ShopBody.parse(newShopBody());
const offcut: Offcut = {
  id: '0190d000-0000-7000-8000-0000000000aa',
  board: 'MDF',
  thickness_m: 0.019,
  length_m: 1.2,
  width_m: 0.3,
};

function toCut(id: string, more: object = {}, offcuts: readonly Offcut[] = []): PieceToCut {
  const { piece: document } = JobDocument.parse({
    format: 'pourwright job 1',
    piece: {
      outline: { shape: 'rectangle', length: '1000 mm', width: '500 mm' },
      bodyThickness: '38 mm',
      boardThickness: '19 mm',
      body: { sheets: [{ name: 'MDF', length: '2440 mm', width: '1220 mm' }] },
      ...more,
    },
  });
  const read = readPiece(document, new Notes());
  const work = bodyWork({ ...read, board: document.board, shop, offcuts, resin_kg: 0 });
  if (!work.ok || read.piece === null) throw new Error(JSON.stringify(work));
  const parts = bodyParts(read.piece, work.value.options);
  return { id, name: id, board: document.board, work: work.value, parts };
}
const sheetsOf = (group: ReturnType<typeof cutTogether>[number]) => {
  const plan = planCutting(group.parts, group.stock, { ...group.cutting, rounds: 50 });
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  return plan.value.sheets;
};

describe('pieces of a job cut together', () => {
  it('take one sheet where piece by piece they take two', () => {
    const both = cutTogether([toCut('counter'), toCut('shelf')]);
    expect(both).toHaveLength(1);
    const sheets = sheetsOf(both[0]!);
    expect(sheets).toHaveLength(1);
    const names = sheets.flatMap(({ parts }) => parts.map(({ name }) => name));
    expect(names).toContain('counter: field');
    expect(names).toContain('shelf: field');
    const single = [toCut('counter'), toCut('shelf')].flatMap((piece) => sheetsOf(cutTogether([piece])[0]!));
    expect(single).toHaveLength(2);
  });

  it('stay apart where the board or its thickness differs', () => {
    const lists = cutTogether([
      toCut('counter'),
      toCut('shelf', { board: 'plywood' }),
      toCut('thin', { boardThickness: '12 mm' }),
      toCut('second'),
    ]);
    expect(lists.map(({ board, thickness_m, pieces }) => [board, thickness_m, pieces])).toEqual([
      ['MDF', 0.019, ['counter', 'second']],
      ['plywood', 0.019, ['shelf']],
      ['MDF', 0.012, ['thin']],
    ]);
  });

  it('send a splash of another thickness to the pieces built of that board', () => {
    const splash = { splashes: [{ side: 'back', height: '100 mm', thickness: '12 mm' }] };
    const lists = cutTogether([toCut('counter', splash), toCut('thin', { boardThickness: '12 mm' })]);
    expect(lists[1]!.pieces).toEqual(['counter', 'thin']);
    expect(lists[1]!.parts.map(({ name }) => name)).toContain('counter: back splash');
    expect(lists[0]!.parts.map(({ name }) => name)).not.toContain('counter: back splash');
  });

  it('count a sheet and an offcut once, however many pieces name them, and the widest saw cut', () => {
    const [group] = cutTogether([
      toCut('counter', {}, [offcut]),
      toCut(
        'shelf',
        { body: { sheets: [{ name: 'MDF', length: '2440 mm', width: '1220 mm' }], kerf: '4 mm' } },
        [offcut],
      ),
    ]);
    expect(group!.stock).toHaveLength(2);
    expect(group!.offcuts.map((each) => each?.id ?? null)).toEqual([offcut.id, null]);
    expect(group!.cutting.kerf_m).toBeCloseTo(0.004, 9);
  });
});
