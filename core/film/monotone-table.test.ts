import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { interpolate, monotoneTable } from './monotone-table.ts';

describe('monotone table', () => {
  it('goes through its points, straight where they are, and holds its ends', () => {
    const table = monotoneTable([0, 1, 3], [1, 3, 7]);
    for (const x of [0, 0.4, 1, 2.2, 3]) expect(interpolate(table, x)).toBeCloseTo(1 + 2 * x, 12);
    expect(interpolate(table, -5)).toBe(1);
    expect(interpolate(table, 5)).toBe(7);
  });
  it('follows a smooth curve to third order', () => {
    const error = (n: number): number => {
      const x = Array.from({ length: n + 1 }, (_, i) => i / n);
      const table = monotoneTable(x, x.map(Math.exp));
      return Math.max(
        ...x.map((v) => Math.abs(interpolate(table, v + 0.37 / n) - Math.exp(Math.min(1, v + 0.37 / n)))),
      );
    };
    expect(error(40)).toBeLessThan(error(20) / 3.5);
    expect(error(40)).toBeLessThan(1e-4);
  });
  it('never leaves the range of a rising table and never falls', () => {
    const steps = fc.array(
      fc.tuple(fc.double({ min: 0.01, max: 10, noNaN: true }), fc.double({ min: 0, max: 10, noNaN: true })),
      { minLength: 2, maxLength: 12 },
    );
    fc.assert(
      fc.property(
        steps,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (s, a, b) => {
          let [x, y] = [0, 0];
          const xs: number[] = [];
          const ys: number[] = [];
          for (const [dx, dy] of s) {
            x += dx;
            y += dy;
            xs.push(x);
            ys.push(y);
          }
          const table = monotoneTable(xs, ys);
          const at = (part: number): number => interpolate(table, xs[0]! + part * (x - xs[0]!));
          expect(at(Math.min(a, b))).toBeLessThanOrEqual(at(Math.max(a, b)) + 1e-12 * (1 + y));
          expect(at(a)).toBeGreaterThanOrEqual(ys[0]!);
          expect(at(a)).toBeLessThanOrEqual(y);
        },
      ),
    );
  });
  it('refuses what is no table', () => {
    expect(() => monotoneTable([0], [1])).toThrow(RangeError);
    expect(() => monotoneTable([0, 0], [1, 2])).toThrow(/point 1/);
    expect(() => monotoneTable([0, 1], [1, Number.NaN])).toThrow(/point 1/);
    expect(() => interpolate(monotoneTable([0, 1], [0, 1]), Number.NaN)).toThrow(RangeError);
  });
});
