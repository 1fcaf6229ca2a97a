import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jointAt, pieceForWalls, sizeToMake_m, taperOf, type WallFit } from './wall-fit.ts';
import { wayIn } from './way-in.ts';

const place = (width_m: number | null = null, at_m: number | null = null) => ({ width_m, at_m });
const plain: WallFit = {
  ends: 'both',
  joint: 'as the wall asks',
  clearance_m: 0.003,
  widestCaulk_m: 0.006,
  scribeSpare_m: 0.006,
  backGap_m: null,
  depth_m: 0.53,
  length_m: null,
  overhang_m: 0.025,
  endOverhang_m: 0.013,
  alcove: { back: place(1.221), middle: place(1.219), front: place(1.22), reach_m: 0.6 },
};
const made = (fit: WallFit) => {
  const piece = pieceForWalls(fit);
  if (!piece.ok) throw new Error('no piece');
  return piece.value;
};

describe('the piece for the walls', () => {
  it('is the smallest width less a joint at each end, and reaches past the cabinet', () => {
    const piece = made(plain);
    expect(piece.length_m).toBeCloseTo(1.213, 12);
    expect(piece.depth_m).toBeCloseTo(0.53 - 0.003 + 0.025, 12);
    expect(piece.width).toMatchObject({ narrowest: 'middle' });
    expect(piece.end).toMatchObject({ joint: { way: 'caulk' }, tooWide: false });
  });

  it('is scribed where the alcove is more uneven than caulk fills: the widest place and the spare', () => {
    const piece = made({ ...plain, alcove: { ...plain.alcove, front: place(1.23) } });
    expect(piece.end?.joint).toMatchObject({ way: 'scribe' });
    expect(piece.length_m).toBeCloseTo(1.23 + 0.006, 12);
    // The back wall is flat: it is caulked all the same.
    expect(piece.back.joint.way).toBe('caulk');
  });

  it('leaves the deepest gap and the spare at a back wall that is hollow', () => {
    const piece = made({ ...plain, backGap_m: 0.009 });
    expect(piece.back.joint).toMatchObject({ way: 'scribe' });
    expect(piece.depth_m).toBeCloseTo(0.53 + 0.009 + 0.006 + 0.025, 12);
  });

  it('does as asked, and says so where caulk will not fill it', () => {
    expect(jointAt({ ...plain, joint: 'scribe' }, 0).joint.way).toBe('scribe');
    expect(jointAt({ ...plain, joint: 'caulk' }, 0.02)).toMatchObject({
      joint: { way: 'caulk' },
      tooWide: true,
    });
    expect(jointAt({ ...plain, joint: 'caulk' }, 0.003).tooWide).toBe(false);
  });

  it('stands free at an open end', () => {
    const open = { ...plain, length_m: 1.5 };
    expect(made({ ...open, ends: 'neither' }).length_m).toBeCloseTo(1.526, 12);
    expect(made({ ...open, ends: 'neither' }).end).toBeNull();
    const left = made({ ...open, ends: 'left' });
    expect(left.length_m).toBeCloseTo(1.51, 12);
    expect(left.corners![0]!.x_m).toBeCloseTo(0.003, 12);
    expect(made({ ...open, ends: 'right' }).corners![0]!.x_m).toBeCloseTo(-0.013, 12);
  });

  it('tells only what is measured', () => {
    const unmeasured = { back: place(), middle: place(), front: place(), reach_m: null };
    expect(made({ ...plain, alcove: unmeasured })).toMatchObject({
      length_m: null,
      end: null,
      corners: null,
    });
    expect(made({ ...plain, alcove: unmeasured }).depth_m).toBeCloseTo(0.552, 12);
    expect(made({ ...plain, depth_m: null })).toMatchObject({ depth_m: null, corners: null });
    expect(made({ ...plain, depth_m: null, alcove: unmeasured })).toMatchObject({
      length_m: null,
      depth_m: null,
    });
  });

  it('is nothing where the joints take it all', () => {
    const tight = { ...plain, clearance_m: 0.02, alcove: { ...plain.alcove, middle: place(0.03) } };
    expect(pieceForWalls({ ...tight, joint: 'caulk' })).toMatchObject({
      ok: false,
      problems: [{ code: 'fit.nothing-left' }],
    });
  });

  it('when caulked goes in at the narrowest place whatever the walls do', () => {
    const width = fc.double({ min: 0.4, max: 4, noNaN: true });
    fc.assert(
      fc.property(
        width,
        width,
        width,
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        (a, b, c, clearance_m) => {
          const alcove = { back: place(a), middle: place(b), front: place(c), reach_m: null };
          const piece = made({ ...plain, joint: 'caulk', clearance_m, alcove });
          expect(piece.length_m! + 2 * clearance_m).toBeCloseTo(Math.min(a, b, c), 9);
        },
      ),
    );
  });

  it('is cut on the marks of the tape, never too long to go in', () => {
    expect(sizeToMake_m(47.9 * 0.0254, false, 'us')).toBeCloseTo(47.875 * 0.0254, 12);
    expect(sizeToMake_m(47.9 * 0.0254, true, 'us')).toBeCloseTo(47.9375 * 0.0254, 12);
    expect(sizeToMake_m(47.875 * 0.0254, false, 'us')).toBeCloseTo(47.875 * 0.0254, 12);
    expect(sizeToMake_m(1.21365, false, 'metric')).toBeCloseTo(1.213, 12);
  });

  it('knows how the side walls run', () => {
    expect(taperOf(plain)).toBeNull();
    const alcove = { ...plain.alcove, back: place(1.221, 0), front: place(1.215, 0.5) };
    const taper = taperOf({ ...plain, alcove })!;
    expect(taper.opens_m).toBeCloseTo(-0.006, 12);
    expect([taper.over_m, taper.limit_m]).toEqual([0.5, 0.003]);
  });
});

describe('the way in', () => {
  it('answers what was measured and is silent about the rest', () => {
    const load = { longest_m: 1.4, short_m: 0.55, thickness_m: 0.04, mass_kg: 38 };
    const nothing = { door: null, passage: null, stair: null, lift: null, liftEach_kg: 25 };
    expect(wayIn(load, nothing)).toEqual({ door: null, passage: null, stair: null, lift: null, people: 2 });
    const all = wayIn(load, {
      ...nothing,
      door: { width_m: 0.75, height_m: 2 },
      passage: { before_m: 0.4, after_m: 0.4, height_m: 0.6 },
      stair: { before_m: 0.9, after_m: 0.9, height_m: 2 },
      lift: { width_m: 1.1, depth_m: 1.4, height_m: 2.1 },
    });
    expect([all.door, all.passage, all.stair, all.lift].map((answer) => answer?.goes)).toEqual([
      true,
      false,
      true,
      true,
    ]);
  });
});
