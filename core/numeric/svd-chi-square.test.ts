import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chiSquareExceeds, chiSquareQuantile } from './chi-square.ts';
import { singularValues } from './svd.ts';

describe('singular values', () => {
  it('of a worked matrix', () => {
    // A'A = [[25, 20], [20, 25]]: eigenvalues 45 and 5.
    const { values } = singularValues(
      [
        [3, 0],
        [4, 5],
      ],
      2,
    );
    expect(values[0]).toBeCloseTo(Math.sqrt(45), 13);
    expect(values[1]).toBeCloseTo(Math.sqrt(5), 13);
  });

  it('rebuild the matrix from orthonormal vectors, whatever its shape', () => {
    const entry = fc.double({ min: -100, max: 100, noNaN: true });
    const matrix = fc
      .tuple(fc.integer({ min: 0, max: 7 }), fc.integer({ min: 1, max: 6 }))
      .chain(([m, n]) =>
        fc
          .array(fc.array(entry, { minLength: n, maxLength: n }), { minLength: m, maxLength: m })
          .map((rows) => ({ rows, n })),
      );
    fc.assert(
      fc.property(matrix, ({ rows, n }) => {
        const { values, right, left } = singularValues(rows, n);
        for (let i = 0; i < n; i++) {
          if (i > 0) expect(values[i]!).toBeLessThanOrEqual(values[i - 1]!);
          for (let j = 0; j < n; j++) {
            const product = right[i]!.reduce((sum, v, k) => sum + v * right[j]![k]!, 0);
            expect(product).toBeCloseTo(i === j ? 1 : 0, 12);
          }
        }
        rows.forEach((row, i) => {
          row.forEach((entry, j) => {
            const back = values.reduce((sum, s, k) => sum + left[k]![i]! * s * right[k]![j]!, 0);
            expect(Math.abs(back - entry)).toBeLessThan(1e-10);
          });
        });
      }),
    );
  });

  it('shows by a right vector what the rows cannot see', () => {
    const { values, right } = singularValues([[1, 1, 0]], 3);
    expect(values[1]).toBeLessThan(1e-15);
    expect(values[2]).toBeLessThan(1e-15);
    for (const k of [1, 2]) expect(right[k]![0]! + right[k]![1]!).toBeCloseTo(0, 14);
  });

  it('refuses no columns, ragged rows and what is not a number', () => {
    expect(() => singularValues([], 0)).toThrow(RangeError);
    expect(() => singularValues([[1, 2], [1]], 2)).toThrow(RangeError);
    expect(() => singularValues([[Number.NaN]], 1)).toThrow(RangeError);
  });
});

describe('chi-square', () => {
  it.each([
    [1, 3.841],
    [2, 5.991],
    [3, 7.815],
    [10, 18.307],
    [30, 43.773],
  ])('95 %% point with %i degrees, as tabulated', (dof, value) => {
    expect(Math.abs(chiSquareQuantile(0.95, dof) - value)).toBeLessThanOrEqual(0.0005);
  });

  it('with two degrees is the exponential, with four its sum', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 200, noNaN: true }), (x) => {
        expect(chiSquareExceeds(x, 2) / Math.exp(-x / 2)).toBeCloseTo(1, 11);
        expect(chiSquareExceeds(x, 4) / (Math.exp(-x / 2) * (1 + x / 2))).toBeCloseTo(1, 11);
      }),
    );
  });

  it('quantile and chance undo each other', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.integer({ min: 1, max: 60 }),
        (p, dof) => {
          expect(chiSquareExceeds(chiSquareQuantile(p, dof), dof)).toBeCloseTo(1 - p, 10);
        },
      ),
    );
  });

  it('refuses degrees that are not whole and values below 0', () => {
    expect(() => chiSquareExceeds(1, 0)).toThrow(RangeError);
    expect(() => chiSquareExceeds(-1, 1)).toThrow(RangeError);
    expect(() => chiSquareQuantile(1, 1)).toThrow(RangeError);
  });
});
