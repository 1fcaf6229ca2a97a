import { describe, expect, it } from 'vitest';
import { ellCorners } from './corners.ts';
import type { EllOutline } from './piece.ts';
import { alongSide_m, sideLength_m } from './side-length.ts';

const ell: EllOutline = {
  shape: 'ell',
  side: 'right',
  length_m: 2.1,
  width_m: 0.6,
  returnLength_m: 1.7,
  returnWidth_m: 0.5,
  cornerRadius_m: 0.05,
};

describe('the length of a side', () => {
  it('is what a tape reads from corner to corner, rounded or not', () => {
    const top = { shape: 'rectangle', length_m: 1.2, width_m: 0.6, cornerRadius_m: 0.1 } as const;
    expect(['front', 'right', 'back', 'left'].map((name) => sideLength_m(top, name))).toEqual([
      1.2, 0.6, 1.2, 0.6,
    ]);
  });

  it('of an L follows its legs, whichever side the return stands on', () => {
    for (const side of ['left', 'right'] as const) {
      const of = (name: string) => sideLength_m({ ...ell, side }, name);
      expect(of('back')).toBeCloseTo(2.1, 12);
      expect(of('front')).toBeCloseTo(1.6, 12);
      expect(of('return end')).toBeCloseTo(0.5, 12);
      expect(of('return front')).toBeCloseTo(1.1, 12);
      expect(of(side)).toBeCloseTo(1.7, 12);
      expect(of(side === 'left' ? 'right' : 'left')).toBeCloseTo(0.6, 12);
    }
  });

  it('of a polygon is the distance between its corners, the last side coming back to the first', () => {
    const corners = [
      { x_m: 0, y_m: 0 },
      { x_m: 0.3, y_m: 0 },
      { x_m: 0, y_m: 0.4 },
    ];
    const of = (name: string) => sideLength_m({ shape: 'polygon', corners }, name);
    expect([of('edge 1'), of('edge 2'), of('edge 3'), of('edge 4')]).toEqual([0.3, 0.5, 0.4, null]);
  });

  it('is not known of a rim', () => {
    expect(sideLength_m({ shape: 'round', diameter_m: 1 }, 'rim')).toBeNull();
  });
});

describe('the length along a side', () => {
  it('is the same of an L and of the corners it has', () => {
    for (const side of ['left', 'right'] as const)
      for (const radius of [0, 0.05]) {
        const outline = { ...ell, side, cornerRadius_m: radius };
        const polygon = { shape: 'polygon', corners: ellCorners(outline) } as const;
        for (const along of ['back', 'left', 'right'] as const)
          expect(alongSide_m(polygon, along)).toBeCloseTo(alongSide_m(outline, along), 12);
      }
  });

  it('does not change when a corner is put in the middle of it', () => {
    const corners = [
      { x_m: 0, y_m: 0 },
      { x_m: 1, y_m: 0 },
      { x_m: 1, y_m: 0.6 },
      { x_m: 0.4, y_m: 0.6 },
      { x_m: 0, y_m: 0.6 },
    ];
    expect(alongSide_m({ shape: 'polygon', corners }, 'back')).toBeCloseTo(1, 12);
  });

  it('of a rim is the size over everything', () => {
    expect(alongSide_m({ shape: 'ellipse', length_m: 1.2, width_m: 0.6 }, 'back')).toBeCloseTo(1.2, 9);
  });
});
