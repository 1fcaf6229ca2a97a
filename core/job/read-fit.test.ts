import { describe, expect, it } from 'vitest';
import { GENERIC_CARDS } from '#core/resin/cards.ts';
import { checkShape } from './check-job.ts';
import { emptyFit, type FitDocument } from './fit-document.ts';
import { readFit } from './read-fit.ts';
import { checkJob } from './read-job.ts';
import { job, withPiece } from './sample.check.ts';

const at = 'piece.fit';
const problems = (fit: FitDocument) => {
  const read = readFit(fit, at);
  return read.ok ? [] : read.problems.map(({ path, code }) => `${path} ${code}`);
};

describe('what was measured at the walls', () => {
  it('has the usual joints and overhangs until others are typed, and no sizes', () => {
    const read = readFit(emptyFit(), at);
    if (!read.ok) throw new Error('not read');
    const { walls, way } = read.value;
    expect([walls.clearance_m, walls.widestCaulk_m, walls.scribeSpare_m]).toEqual([
      0.003175, 0.00635, 0.00635,
    ]);
    expect([walls.overhang_m, walls.endOverhang_m]).toEqual([0.0254, 0.0127]);
    expect([walls.depth_m, walls.backGap_m, walls.alcove.back.width_m]).toEqual([null, null, null]);
    expect(way).toEqual({ door: null, passage: null, stair: null, lift: null, liftEach_kg: 25 });
  });

  it('is read in either system of units', () => {
    const read = readFit(
      {
        ...emptyFit(),
        clearance: '2 mm',
        depth: '21 in',
        door: { width: '750 mm', height: '6 ft 6 in' },
        liftEach: '55 lb',
      },
      at,
    );
    if (!read.ok) throw new Error('not read');
    expect(read.value.walls.clearance_m).toBe(0.002);
    expect(read.value.walls.depth_m).toBeCloseTo(0.5334, 12);
    expect(read.value.way.door!.height_m).toBeCloseTo(1.9812, 12);
    expect(read.value.way.liftEach_kg).toBeCloseTo(24.9476, 4);
  });

  it('a door of which one size is known is no door yet', () => {
    const read = readFit({ ...emptyFit(), door: { width: '750 mm', height: '' } }, at);
    expect(read.ok && read.value.way.door).toBeNull();
  });

  it('is refused with the field, what was read and what is allowed', () => {
    const read = readFit({ ...emptyFit(), clearance: '5 in', depth: 'deep' }, at, 'us');
    expect(read).toMatchObject({
      ok: false,
      problems: [
        { path: 'piece.fit.clearance', code: 'length.range', read: '5 in', allowed: '0 in to 3.937 in' },
        { path: 'piece.fit.depth', read: 'deep' },
      ],
    });
  });

  it('takes the three widths in order from the back wall', () => {
    const width = (where: string) => ({ width: '48 in', at: where });
    const alcove = (back: string, middle: string, front: string): FitDocument => ({
      ...emptyFit(),
      alcove: { back: width(back), middle: width(middle), front: width(front), reach: '' },
    });
    expect(problems(alcove('0 in', '10 in', '20 in'))).toEqual([]);
    expect(problems(alcove('', '', ''))).toEqual([]);
    expect(problems(alcove('12 in', '10 in', '20 in'))).toEqual(['piece.fit.alcove.middle.at fit.order']);
    expect(problems(alcove('0 in', '20 in', '20 in'))).toEqual(['piece.fit.alcove.front.at fit.order']);
    expect(problems(alcove('12 in', '', '10 in'))).toEqual(['piece.fit.alcove.front.at fit.order']);
  });

  it('is refused with the job it stands in', () => {
    const checked = checkJob(withPiece({ fit: { ...emptyFit(), depth: 'deep' } }), GENERIC_CARDS);
    expect(checked).toMatchObject({ ok: false, problems: [{ path: 'piece.fit.depth', read: 'deep' }] });
  });

  it('is not there in a job from before walls were kept', () => {
    const { fit, ...older } = job.piece;
    const read = checkShape({ ...job, piece: older });
    expect(read.ok && read.value.piece.fit).toBeNull();
    const full = checkShape(withPiece({ fit: emptyFit() }));
    expect(full.ok && full.value.piece.fit).toEqual(emptyFit());
  });
});
