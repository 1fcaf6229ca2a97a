/**
 * Diagonals of a set-out sheet against L. Euler, "Variae demonstrationes geometriae", Novi Commentarii academiae scientiarum
 * Petropolitanae 1 (1750), 49-66 (E135), as quoted in textbooks and given here from memory: in any quadrilateral the squares of
 * the four sides add up to the squares of the two diagonals and four times the square of the line joining the diagonals'
 * middles. Agreement: to rounding, 1e-12 m2.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { edgeNames } from '#core/piece/outline.ts';
import type { Outline } from '#core/piece/piece.ts';
import { pageSize } from '#core/piece/set-out/paper.ts';
import { setOut } from '#core/piece/set-out/set-out.ts';

const off = fc.double({ min: -0.1, max: 0.1, noNaN: true });

describe('the sheet of any four-cornered top', () => {
  it('has sides and diagonals that keep the theorem of Euler', () => {
    fc.assert(
      fc.property(fc.array(off, { minLength: 8, maxLength: 8 }), (d) => {
        const at = (x: number, y: number, i: number) => ({ x_m: x + d[i]!, y_m: y + d[i + 1]! });
        const outline: Outline = {
          shape: 'polygon',
          corners: [at(0, 0, 0), at(1.2, 0, 2), at(1.2, 0.6, 4), at(0, 0.6, 6)],
        };
        const edge = {
          kind: 'finished' as const,
          faceHeight_m: 0.038,
          profile: { kind: 'square eased' as const, radius_m: 0.003 },
          undersideReturn_m: 0,
        };
        const sheet = setOut({
          outline,
          edges: Object.fromEntries(edgeNames(outline).map((name) => [name, edge])),
          cutOuts: [],
          bodyThickness_m: 0.038,
        });
        if (!sheet.ok) throw new Error(JSON.stringify(sheet.problems));
        const { edges, diagonals, corners } = sheet.value;
        const sides = edges.reduce((sum, e) => sum + e.length_m ** 2, 0);
        const across = diagonals.reduce((sum, e) => sum + e.length_m ** 2, 0);
        const [a, b, c, e] = corners.map((corner) => corner.at);
        const apart_m = Math.hypot(
          (a!.across_m + c!.across_m - b!.across_m - e!.across_m) / 2,
          (a!.up_m + c!.up_m - b!.up_m - e!.up_m) / 2,
        );
        expect(Math.abs(sides - across - 4 * apart_m ** 2)).toBeLessThan(1e-12);
      }),
    );
  });
});

/** ISO 216:2007, from memory: the A series halves 1 m2 at a ratio of the square root of 2, rounded to whole millimetres. */
describe('A4', () => {
  it('is a sixteenth of a square metre at the ratio of ISO 216, to half a millimetre a side', () => {
    const { width_m, height_m } = pageSize('A4', 'portrait');
    const short_m = Math.sqrt(1 / 16 / Math.SQRT2);
    expect(Math.abs(width_m - short_m)).toBeLessThan(0.0005);
    expect(Math.abs(height_m - short_m * Math.SQRT2)).toBeLessThan(0.0005);
  });
});
