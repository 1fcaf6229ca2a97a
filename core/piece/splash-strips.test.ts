import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ellCorners, rectangleCorners } from './corners.ts';
import type { EllOutline, Outline } from './piece.ts';
import { type StandingSplash, splashStrips } from './splash-strips.ts';

const splash = (side: StandingSplash['side'], thickness_m = 0.02): StandingSplash => ({
  side,
  length_m: 1,
  height_m: 0.1,
  thickness_m,
});
const boxes = (outline: Outline, ...sides: StandingSplash['side'][]) =>
  splashStrips(
    outline,
    sides.map((side) => splash(side)),
  ).map(({ corners }) => {
    const [x, y] = [corners.map((p) => p.x_m), corners.map((p) => p.y_m)];
    return [Math.min(...x), Math.max(...x), Math.min(...y), Math.max(...y)].map((v) => Number(v.toFixed(9)));
  });

describe('splashes seen from above', () => {
  const top: Outline = { shape: 'rectangle', length_m: 1.2, width_m: 0.6, cornerRadius_m: 0.02 };

  it('stand along their side from corner to corner, a side splash up to the face of the backsplash', () => {
    expect(boxes(top, 'back', 'left', 'right')).toEqual([
      [0, 1.2, 0.58, 0.6],
      [0, 0.02, 0, 0.58],
      [1.18, 1.2, 0, 0.58],
    ]);
    expect(boxes(top, 'left')).toEqual([[0, 0.02, 0, 0.6]]);
  });

  it('stand along the long wall of an L, named or turned into corners', () => {
    const ell: EllOutline = {
      shape: 'ell',
      side: 'left',
      length_m: 2,
      width_m: 0.6,
      returnLength_m: 1.7,
      returnWidth_m: 0.65,
    };
    const wanted = [
      [0, 2, 0.58, 0.6],
      [0, 0.02, -1.1, 0.58],
    ];
    expect(boxes(ell, 'back', 'left')).toEqual(wanted);
    expect(boxes({ shape: 'polygon', corners: ellCorners(ell) }, 'back', 'left')).toEqual(wanted);
  });

  it('are the same whichever way round the corners were typed', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 3, noNaN: true }), (long) => {
        const corners = rectangleCorners(long, 0.6, 0);
        const one = boxes({ shape: 'polygon', corners }, 'back', 'right');
        expect(boxes({ shape: 'polygon', corners: corners.toReversed() }, 'back', 'right')).toEqual(one);
        expect(one).toEqual(boxes({ shape: 'rectangle', length_m: long, width_m: 0.6 }, 'back', 'right'));
      }),
    );
  });

  it('are none on a round top', () => {
    expect(boxes({ shape: 'round', diameter_m: 1 }, 'back')).toEqual([]);
  });
});
