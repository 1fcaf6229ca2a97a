import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Box, covered, placeBeside, textWidth, wrapped } from './label-places.ts';

const frame: Box = { left: 0, top: 0, right: 400, bottom: 300 };

describe('labels', () => {
  it('stand to the right of their point when nothing is in the way', () => {
    const box = placeBeside({ x: 100, y: 100 }, 40, 12, frame, []);
    expect(box).toEqual({ left: 109, top: 94, right: 149, bottom: 106 });
  });

  it('go elsewhere rather than cover something', () => {
    const there: Box = { left: 105, top: 90, right: 200, bottom: 110 };
    const box = placeBeside({ x: 100, y: 100 }, 40, 12, frame, [there]);
    expect(covered(box, [there])).toBe(0);
  });

  it('stay inside the frame at its right edge', () => {
    const box = placeBeside({ x: 396, y: 150 }, 40, 12, frame, []);
    expect(box.right).toBeLessThanOrEqual(400);
  });

  it('of line ends that crowd do not cover each other', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ x: fc.integer({ min: 60, max: 340 }), y: fc.integer({ min: 60, max: 240 }) }), {
          minLength: 1,
          maxLength: 4,
        }),
        (points) => {
          const taken: Box[] = [];
          for (const point of points) {
            const box = placeBeside(point, 36, 12, frame, taken);
            expect(covered(box, taken)).toBe(0);
            taken.push(box);
          }
        },
      ),
    );
  });

  it('break into lines that fit, words whole', () => {
    const lines = wrapped('closes at 18 (16 to 22) min', 90, 12);
    expect(lines.join(' ')).toBe('closes at 18 (16 to 22) min');
    expect(lines.length).toBeGreaterThan(1);
    for (const line of lines) expect(textWidth(line, 12)).toBeLessThanOrEqual(90);
    expect(wrapped('unbreakable', 10, 12)).toEqual(['unbreakable']);
  });
});
