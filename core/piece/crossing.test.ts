import { describe, expect, it } from 'vitest';
import { leastAlong, meetings, pathsMeet, selfMeeting } from './crossing.ts';
import { outlinePath } from './outline.ts';
import { movePath } from './path.ts';
import type { Segment } from './piece.ts';

type XY = readonly [number, number];
const seg = ([a, b]: XY, [c, d]: XY, bulge = 0): Segment => ({
  kind: bulge === 0 ? 'line' : 'arc',
  from: { x_m: a, y_m: b },
  to: { x_m: c, y_m: d },
  bulge,
  edge: '',
});
const points = (a: Segment, b: Segment): XY[] => meetings(a, b).map((p) => [p.x_m, p.y_m]);

describe('two segments', () => {
  it('lines meet where they cross and nowhere beyond their ends', () => {
    expect(points(seg([0, 0], [2, 2]), seg([0, 2], [2, 0]))).toEqual([[1, 1]]);
    expect(points(seg([0, 0], [1, 1]), seg([0, 4], [4, 0]))).toEqual([]);
  });

  it('on one line they share the ends of the common part', () => {
    expect(points(seg([0, 0], [2, 0]), seg([1, 0], [3, 0]))).toEqual([
      [2, 0],
      [1, 0],
    ]);
    expect(points(seg([0, 0], [2, 0]), seg([0, 1], [2, 1]))).toEqual([]);
  });

  it('a 3-4-5 line meets an arc at (3, 4)', () => {
    const quarter = seg([5, 0], [0, 5], Math.SQRT2 - 1);
    expect(points(seg([3, 0], [3, 10]), quarter)).toEqual([[3, expect.closeTo(4, 12)]]);
    expect(points(seg([3, -10], [3, 0]), quarter)).toEqual([]);
  });

  it('two circles of radius 5, 6 apart, meet 4 from the line of centres', () => {
    const upper = seg([5, 0], [-5, 0], 1);
    const other = seg([11, 0], [1, 0], 1);
    expect(points(upper, other)).toEqual([[expect.closeTo(3, 12), expect.closeTo(4, 12)]]);
  });

  it('a tangent touches', () => {
    expect(meetings(seg([-5, 5], [5, 5]), seg([5, 0], [-5, 0], 1)).length).toBeGreaterThan(0);
    expect(meetings(seg([-5, 5.001], [5, 5.001]), seg([5, 0], [-5, 0], 1))).toEqual([]);
  });
});

describe('whole paths', () => {
  const disc = outlinePath({ shape: 'round', diameter_m: 1 });
  it('meet when they overlap or touch, not when one is within the other', () => {
    expect(pathsMeet(disc, movePath(disc, 0, { x_m: 0.5, y_m: 0 }))).toBeDefined();
    expect(pathsMeet(disc, movePath(disc, 0, { x_m: 1, y_m: 0 }))).toMatchObject({
      x_m: expect.closeTo(1, 6),
    });
    expect(pathsMeet(disc, movePath(disc, 0, { x_m: 1.001, y_m: 0 }))).toBeUndefined();
    const small = outlinePath({ shape: 'round', diameter_m: 0.2 });
    expect(pathsMeet(disc, movePath(small, 0, { x_m: 0.4, y_m: 0.4 }))).toBeUndefined();
  });

  it('of every named shape do not meet themselves', () => {
    for (const path of [
      disc,
      outlinePath({ shape: 'rectangle', length_m: 1, width_m: 0.4, cornerRadius_m: 0.2 }),
      outlinePath({ shape: 'ellipse', length_m: 2, width_m: 0.4 }),
      outlinePath({
        shape: 'ell',
        side: 'right',
        length_m: 2,
        width_m: 0.6,
        returnLength_m: 1.5,
        returnWidth_m: 0.6,
        cornerRadius_m: 0.1,
        insideRadius_m: 0.2,
      }),
    ])
      expect(selfMeeting(path)).toBeUndefined();
  });

  it('have a nearest point that is found between the samples', () => {
    const target = { x_m: 0.5 + Math.cos(0.7) * 0.9, y_m: 0.5 + Math.sin(0.7) * 0.9 };
    const least = leastAlong(disc, 0.3, (p) => Math.hypot(p.x_m - target.x_m, p.y_m - target.y_m));
    expect(least.value).toBeCloseTo(0.4, 12);
    expect(least.at.x_m).toBeCloseTo(0.5 + Math.cos(0.7) / 2, 7);
  });
});
