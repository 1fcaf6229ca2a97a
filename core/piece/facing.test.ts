import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facings } from './facing.ts';

const square = [
  { x_m: 0, y_m: 0 },
  { x_m: 1, y_m: 0 },
  { x_m: 1, y_m: 0.6 },
  { x_m: 0, y_m: 0.6 },
];
const words = (corners: readonly { x_m: number; y_m: number; radius_m?: number }[]) =>
  corners.map((_, i) => facings({ shape: 'polygon', corners }).get(`edge ${i + 1}`) ?? null);

describe('the way an edge looks', () => {
  it('is told of a box of corners, rounded or not, either way round', () => {
    expect(words(square)).toEqual(['front', 'right', 'back', 'left']);
    expect(words(square.map((corner) => ({ ...corner, radius_m: 0.1 })))).toEqual([
      'front',
      'right',
      'back',
      'left',
    ]);
    expect(words([...square].reverse())).toEqual(['back', 'right', 'front', 'left']);
  });

  it('is the same while a piece is turned by less than 15 degrees, and not told of an edge halfway between two sides', () => {
    fc.assert(
      fc.property(fc.double({ min: -0.25, max: 0.25, noNaN: true }), (turn) => {
        const turned = square.map(({ x_m, y_m }) => ({
          x_m: x_m * Math.cos(turn) - y_m * Math.sin(turn),
          y_m: x_m * Math.sin(turn) + y_m * Math.cos(turn),
        }));
        expect(words(turned)).toEqual(['front', 'right', 'back', 'left']);
      }),
    );
    expect(
      words([
        { x_m: 0, y_m: 0 },
        { x_m: 1, y_m: 0 },
        { x_m: 0, y_m: 1 },
      ]),
    ).toEqual(['front', null, 'left']);
  });

  it('is in the name already of a rectangle, an L and a rim', () => {
    expect(facings({ shape: 'rectangle', length_m: 1, width_m: 1 }).size).toBe(0);
    expect(facings({ shape: 'round', diameter_m: 1 }).size).toBe(0);
  });
});
