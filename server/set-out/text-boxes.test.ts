import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxCorners, firstClear, overlap, type TextBox } from './text-boxes.ts';

const number = fc.double({ min: -50, max: 50, noNaN: true });
const anyBox: fc.Arbitrary<TextBox> = fc.record({
  x: number,
  y: number,
  wide: fc.double({ min: 1, max: 40, noNaN: true }),
  high: fc.double({ min: 1, max: 10, noNaN: true }),
  turn_deg: fc.double({ min: -90, max: 90, noNaN: true }),
});

describe('places for figures', () => {
  it('overlap when one holds the middle of the other, and not when circles round them are apart', () => {
    fc.assert(
      fc.property(anyBox, anyBox, (a, b) => {
        const [p, q] = [boxCorners(a), boxCorners(b)];
        expect(overlap(p, boxCorners({ ...b, x: a.x, y: a.y }))).toBe(true);
        expect(overlap(p, q)).toBe(overlap(q, p));
        const apart = Math.hypot(a.x - b.x, a.y - b.y);
        if (apart > (Math.hypot(a.wide, a.high) + Math.hypot(b.wide, b.high)) / 2 + 1e-6)
          expect(overlap(p, q)).toBe(false);
      }),
    );
  });

  it('are off a line that runs through them, and may touch one beside them', () => {
    const box: TextBox = { x: 0, y: 0, wide: 20, high: 8, turn_deg: 0 };
    const across = [
      { x: -30, y: 1 },
      { x: 30, y: 1 },
    ];
    const beside = [
      { x: -30, y: 4 },
      { x: 30, y: 4 },
    ];
    expect(overlap(boxCorners(box), across)).toBe(true);
    expect(overlap(boxCorners(box), beside)).toBe(false);
    const lower = { ...box, y: 12 };
    expect(firstClear([box, lower], [across])).toBe(lower);
    expect(firstClear([box], [across])).toBe(box);
  });
});
