/**
 * Outlines from distances with known answers.
 *  - Brahmagupta's quadrilateral 25, 39, 60, 52 with diagonals 56 and 63 (Brahmasphutasiddhanta, 628; Lilavati): area 1764,
 *    cyclic, diagonals at right angles; from memory, and checked here by Ptolemy's theorem and Brahmagupta's formula. To 1e-9.
 *  - Right triangles of whole numbers (Euclid X, lemma 1 to prop. 29). To 1e-12.
 *  - Bretschneider 1842 and Coolidge 1939 for the area of any quadrilateral; Cayley and Menger for six lengths in a plane.
 *  - Braced rectangle with one diagonal too long: first-order closed form from the one state of self-stress of the frame,
 *    derived independently; agrees to second order of the error.
 *  - An irregular alcove worked beforehand by an independent program: coordinates to 0.1 micrometre, s0 to its printed digits.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adjustOutline } from '#core/piece/survey/adjust-outline.ts';
import { shoelace_m2 } from '#core/piece/survey/polygon.ts';
import type { Reading, Survey } from '#core/piece/survey/survey.ts';

/** Distances in mm by pairs of letters, all with a standard deviation of 1 mm. */
function survey(lengths: Readonly<Record<string, number>>, corners = 4): Survey {
  const readings = Object.entries(lengths).map(
    ([pair, mm]): Reading => ({
      kind: 'distance',
      from: pair.charCodeAt(0) - 65,
      to: pair.charCodeAt(1) - 65,
      value_m: mm / 1000,
      sigma_m: 0.001,
      path: pair,
    }),
  );
  const tape = { tapeClass: 'II', fromHook: true, readTo_m: 0.001 } as const;
  return {
    turns: Array.from({ length: corners }, () => 'out' as const),
    clockwise: false,
    tape,
    readings,
    bows: [],
  };
}

const flat = (corners: readonly { x_m: number; y_m: number }[]) =>
  corners.flatMap(({ x_m, y_m }) => [x_m, y_m]);
const span = (corners: readonly { x_m: number; y_m: number }[], i: number, j: number) =>
  Math.hypot(corners[i]!.x_m - corners[j]!.x_m, corners[i]!.y_m - corners[j]!.y_m);

/** AB, BC, CD, DA, AC, BD. */
function cayleyMenger(a: number, b: number, c: number, d: number, p: number, q: number): number {
  const [a2, b2, c2, d2, p2, q2] = [a, b, c, d, p, q].map((side) => side * side) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return determinant([
    [0, 1, 1, 1, 1],
    [1, 0, a2, p2, d2],
    [1, a2, 0, b2, q2],
    [1, p2, b2, 0, c2],
    [1, d2, q2, c2, 0],
  ]);
}

function determinant(rows: number[][]): number {
  if (rows.length === 1) return rows[0]![0]!;
  return rows[0]!.reduce(
    (sum, entry, j) =>
      sum +
      (j % 2 === 0 ? 1 : -1) * entry * determinant(rows.slice(1).map((row) => row.filter((_, k) => k !== j))),
    0,
  );
}

describe("Brahmagupta's quadrilateral", () => {
  const brahmagupta = { AB: 25, BC: 39, CD: 60, DA: 52, AC: 56, BD: 63 };
  const { corners, dof, s0, wrongTurns } = adjustOutline(survey(brahmagupta));

  it('has the area of his formula and of the shoelace, 1764', () => {
    expect(Math.sqrt(63 * 49 * 28 * 36)).toBe(1764);
    expect(shoelace_m2(flat(corners)) * 1e6).toBeCloseTo(1764, 9);
    expect(25 * 60 + 39 * 52).toBe(56 * 63);
  });

  it('closes without a residual, its diagonals at right angles, its corners on one circle of radius 32.5', () => {
    expect(dof).toBe(1);
    expect(s0).toBeLessThan(1e-9);
    expect(wrongTurns).toEqual([]);
    const [a, b, c, d] = corners as [
      (typeof corners)[0],
      (typeof corners)[0],
      (typeof corners)[0],
      (typeof corners)[0],
    ];
    expect((c.x_m - a.x_m) * (d.x_m - b.x_m) + (c.y_m - a.y_m) * (d.y_m - b.y_m)).toBeCloseTo(0, 14);
    for (const [i, j, k] of [
      [0, 1, 2],
      [1, 2, 3],
    ] as const) {
      const area = shoelace_m2(flat([corners[i]!, corners[j]!, corners[k]!]));
      const sides = span(corners, i, j) * span(corners, j, k) * span(corners, i, k);
      expect((sides / (4 * area)) * 1000).toBeCloseTo(32.5, 9);
    }
    expect(Math.abs(cayleyMenger(25, 39, 60, 52, 56, 63))).toBeLessThan(1e-3);
  });

  it('with its diagonals exchanged misses the second one by 4.58, and is told', () => {
    const half = adjustOutline(survey({ AB: 25, BC: 39, CD: 60, DA: 52, AC: 63 }));
    expect(span(half.corners, 1, 3) * 1000).toBeCloseTo(51.42, 2);
    expect(shoelace_m2(flat(half.corners)) * 1e6).toBeCloseTo(1619.7, 1);
    // In inches, the size of a top: the misclosure is 116 mm.
    const inches = Object.entries({ ...brahmagupta, AC: 63, BD: 56 }).map(([pair, size]) => [
      pair,
      size * 25.4,
    ]);
    const swapped = adjustOutline(survey(Object.fromEntries(inches)));
    expect(swapped.test!.passes).toBe(false);
    expect(swapped.verdict.kind).toBe('cannot tell');
    expect(Math.abs(cayleyMenger(25, 39, 60, 52, 63, 56))).toBeGreaterThan(1e6);
  });
});

describe('right triangles of whole numbers', () => {
  it.each([
    [300, 400, 500],
    [1200, 500, 1300],
    [8, 15, 17],
    [7, 24, 25],
    [20, 21, 29],
  ])('%i by %i has the diagonal %i', (long, wide, diagonal) => {
    const { corners } = adjustOutline(survey({ AB: long, BC: wide, CD: long, DA: wide, AC: diagonal }));
    expect(span(corners, 1, 3) * 1000).toBeCloseTo(diagonal, 9);
    expect(corners[1]!.x_m * 1000).toBeCloseTo(long, 9);
    expect(corners[2]!.x_m * 1000).toBeCloseTo(long, 9);
    expect(corners[2]!.y_m * 1000).toBeCloseTo(wide, 9);
  });
});

describe('the area of a quadrilateral from its sides and diagonals', () => {
  it('by Bretschneider and Coolidge is the shoelace area of the adjusted corners', () => {
    const at = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        at(600, 2000),
        at(-150, 150),
        at(400, 800),
        at(-150, 150),
        at(400, 800),
        (x, cx, cy, dx, dy) => {
          const points = [
            [0, 0],
            [x, 0],
            [x + cx, cy],
            [dx, dy],
          ] as const;
          const length = (i: number, j: number) =>
            Math.hypot(points[i]![0] - points[j]![0], points[i]![1] - points[j]![1]);
          const [a, b, c, d, p, q] = [
            length(0, 1),
            length(1, 2),
            length(2, 3),
            length(3, 0),
            length(0, 2),
            length(1, 3),
          ];
          const { corners } = adjustOutline(survey({ AB: a, BC: b, CD: c, DA: d, AC: p, BD: q }));
          const area = shoelace_m2(flat(corners)) * 1e6;
          expect(
            area / (Math.sqrt(4 * p * p * q * q - (b * b + d * d - a * a - c * c) ** 2) / 4),
          ).toBeCloseTo(1, 9);
          const cosines = [(a * a + d * d - q * q) / (2 * a * d), (b * b + c * c - q * q) / (2 * b * c)];
          const half = cosines.reduce((sum, cos) => sum + Math.acos(cos), 0) / 2;
          const s = (a + b + c + d) / 2;
          const bretschneider = Math.sqrt(
            (s - a) * (s - b) * (s - c) * (s - d) - a * b * c * d * Math.cos(half) ** 2,
          );
          expect(area / bretschneider).toBeCloseTo(1, 9);
          expect(Math.abs(cayleyMenger(a, b, c, d, p, q)) / (a * b * c * d * p * q * p * q)).toBeLessThan(
            1e-9,
          );
        },
      ),
      { numRuns: 50 },
    );
  });
});

describe('a braced rectangle with the diagonal AC too long', () => {
  const frame = (long: number, wide: number, error: number) => {
    const diagonal = Math.hypot(long, wide);
    const { checks, s0 } = adjustOutline(
      survey({ AB: long, BC: wide, CD: long, DA: wide, AC: diagonal + error, BD: diagonal }),
    );
    return { diagonal, s0: s0!, v: checks.map(({ residual_m }) => residual_m * 1000) };
  };

  it.each([
    [1000, 1000, [0.7076, 0.7076, 0.7076, 0.7076, -1.0021, -0.9993], 2.0014],
    [1200, 500, [0.9238, 0.3849, 0.9238, 0.3849, -1.0023, -0.9992], 2.0015],
  ])('%i by %i, 4 mm: the residuals worked beforehand', (long, wide, expected, s0) => {
    const got = frame(long, wide, 4);
    got.v.forEach((v, i) => {
      expect(Math.abs(v - expected[i]!)).toBeLessThanOrEqual(0.00006);
    });
    expect(Math.abs(got.s0 - s0)).toBeLessThanOrEqual(0.00006);
  });

  it('small errors go to the closed form: sides e L / 4 d, diagonals - e / 4, s0 e / 2', () => {
    const { v, s0, diagonal } = frame(1200, 500, 0.01);
    [1200, 500, 1200, 500].forEach((side, i) => {
      expect(v[i]! / ((0.01 * side) / (4 * diagonal))).toBeCloseTo(1, 4);
    });
    for (const i of [4, 5]) expect(v[i]! / (-0.01 / 4)).toBeCloseTo(1, 4);
    expect(s0 / 0.005).toBeCloseTo(1, 4);
  });
});

describe('an irregular alcove', () => {
  const { corners, checks, dof, s0, verdict } = adjustOutline(
    survey({ AB: 1220, BC: 560, CD: 1224, DA: 555, AC: 1349, BD: 1333 }),
  );

  it('lies where it was worked to lie', () => {
    const expected = [0, 0, 1219.0265, 0, 1228.6942, 559.475, 5.6746, 554.5256];
    flat(corners).forEach((value, i) => {
      expect(Math.abs(value * 1000 - expected[i]!)).toBeLessThanOrEqual(0.0001);
    });
  });

  it('has the residuals and the spread worked beforehand, and no single reading to blame', () => {
    const expected = [-0.9735, -0.4415, -0.9704, -0.4454, 1.0747, 1.062];
    checks.forEach(({ residual_m }, i) => {
      expect(Math.abs(residual_m * 1000 - expected[i]!)).toBeLessThanOrEqual(0.0001);
    });
    expect(dof).toBe(1);
    expect(Math.abs(s0! - 2.1367)).toBeLessThanOrEqual(0.00006);
    expect(verdict).toEqual({ kind: 'cannot tell', readings: expect.any(Array) });
    expect(verdict.kind === 'cannot tell' && verdict.readings.length).toBe(6);
  });
});
