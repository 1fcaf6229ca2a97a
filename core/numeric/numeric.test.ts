import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { brent } from './brent.ts';
import { hermite, hermitePeak, hermiteSlope } from './hermite.ts';
import { gaussRule, integrate } from './quadrature.ts';
import { quantileOfSorted } from './quantile.ts';
import { latinHypercube, normalQuantile, randomStream } from './random.ts';

describe('brent', () => {
  it('finds known roots to the tolerance', () => {
    expect(brent((x) => x * x - 2, 0, 2, 1e-13)).toBeCloseTo(Math.SQRT2, 12);
    expect(brent((x) => Math.cos(x) - x, 0, 1, 1e-13)).toBeCloseTo(0.7390851332151607, 12);
    // Flat at the root, where a secant crawls.
    expect(Math.abs(brent((x) => (x - 1) ** 9, -3, 4.5, 1e-6) - 1)).toBeLessThan(1e-2);
  });

  it('lands within the tolerance of any root of a rising cubic', () => {
    fc.assert(
      fc.property(fc.double({ min: -5, max: 5, noNaN: true }), (root) => {
        const found = brent((x) => (x - root) ** 3 + (x - root), -6, 7, 1e-9);
        expect(Math.abs(found - root)).toBeLessThan(1.1e-9);
      }),
    );
  });

  it('refuses ends of one sign and numbers that are none', () => {
    expect(() => brent((x) => x * x + 1, -1, 1, 1e-9)).toThrow(/differ in sign/);
    expect(() => brent(() => Number.NaN, -1, 1, 1e-9)).toThrow(RangeError);
    expect(() => brent((x) => x, -1, 1, 0)).toThrow(/tolerance/);
  });
});

describe('hermite', () => {
  const f = (x: number) => 2 - 3 * x + 0.5 * x * x - 0.2 * x ** 3;
  const g = (x: number) => -3 + x - 0.6 * x * x;
  it('reproduces a cubic and its slope', () => {
    const h = 1.7;
    for (const x of [0, 0.3, 0.9, 1.7]) {
      expect(hermite(f(0), g(0), f(h), g(h), h, x)).toBeCloseTo(f(x), 12);
      expect(hermiteSlope(f(0), g(0), f(h), g(h), h, x)).toBeCloseTo(g(x), 12);
    }
  });

  it('finds the top of a cubic inside and at an end', () => {
    // y = x (1 - x) (1 + x): top at 1/sqrt 3.
    expect(hermitePeak(0, 1, 0, -2, 1)).toBeCloseTo(1 / Math.sqrt(3), 12);
    expect(hermitePeak(0, 1, 2, 3, 1)).toBe(1);
    expect(hermitePeak(2, -1, 0, -3, 1)).toBe(0);
    // A parabola, where the cubic term is 0.
    expect(hermitePeak(0, 4, 0, -4, 1)).toBeCloseTo(0.5, 12);
  });
});

describe('Gauss-Legendre', () => {
  it('has the tabulated nodes of three points', () => {
    const { node, weight } = gaussRule(3);
    expect([...node]).toEqual([-Math.sqrt(0.6), 0, Math.sqrt(0.6)].map((x) => expect.closeTo(x, 14)));
    expect([...weight]).toEqual([5 / 9, 8 / 9, 5 / 9].map((x) => expect.closeTo(x, 14)));
  });

  it('is exact to degree 2n - 1, and not beyond', () => {
    for (const n of [1, 2, 4, 7, 16]) {
      const rule = gaussRule(n);
      const even = 2 * n - 2;
      expect(integrate(rule, (x) => x ** even, 0, 1)).toBeCloseTo(1 / (even + 1), 13);
      expect(integrate(rule, (x) => x ** (even + 1), 0, 1)).toBeCloseTo(1 / (even + 2), 13);
    }
    expect(Math.abs(integrate(gaussRule(2), (x) => x ** 4, 0, 1) - 0.2)).toBeGreaterThan(1e-3);
  });

  it('refuses a rule it does not have', () => {
    expect(() => gaussRule(0)).toThrow(RangeError);
    expect(() => gaussRule(2.5)).toThrow(RangeError);
    expect(() => integrate(gaussRule(2), (x) => x, 0, 1, 0)).toThrow(RangeError);
  });
});

describe('random streams', () => {
  it('repeat with the seed and differ between seeds', () => {
    const draw = (seed: number) => {
      const stream = randomStream(seed);
      return Array.from({ length: 20 }, () => stream.uniform());
    };
    expect(draw(5)).toEqual(draw(5));
    expect(draw(5)).not.toEqual(draw(6));
    expect(() => randomStream(0.5)).toThrow(RangeError);
  });

  it('are uniform: chi-square of 100 cells below its 99.9 % point, neighbours uncorrelated', () => {
    const stream = randomStream(20260101);
    const n = 100_000;
    const cells = new Float64Array(100);
    let before = stream.uniform();
    let product = 0;
    for (let i = 0; i < n; i++) {
      const u = stream.uniform();
      cells[Math.floor(100 * u)]! += 1;
      product += (u - 0.5) * (before - 0.5);
      before = u;
    }
    const chi = cells.reduce((sum, count) => sum + (count - n / 100) ** 2 / (n / 100), 0);
    expect(chi).toBeLessThan(148.2);
    expect(chi).toBeGreaterThan(60);
    // Standard error of the correlation is 1/sqrt(n).
    expect(Math.abs(product / n / (1 / 12))).toBeLessThan(4 / Math.sqrt(n));
  });

  it('gives tabulated normal quantiles', () => {
    const table = [
      [0.5, 0],
      [0.75, 0.6744897501960817],
      [0.975, 1.959963984540054],
      [0.95, 1.6448536269514722],
      [0.99, 2.3263478740408408],
      [0.999, 3.090232306167813],
      [0.000001, -4.753424308822899],
    ] as const;
    for (const [p, z] of table) expect(normalQuantile(p)).toBeCloseTo(z, 7);
    expect(normalQuantile(0.3)).toBeCloseTo(-normalQuantile(0.7), 12);
    expect(() => normalQuantile(0)).toThrow(RangeError);
  });

  it('fills every stratum of every dimension once in a Latin hypercube', () => {
    const points = latinHypercube(37, 5, randomStream(1));
    for (let k = 0; k < 5; k++) {
      const strata = points.map((point) => Math.floor(37 * point[k]!)).sort((a, b) => a - b);
      expect(strata).toEqual(Array.from({ length: 37 }, (_, i) => i));
    }
    expect(() => latinHypercube(0, 5, randomStream(1))).toThrow(RangeError);
  });
});

describe('quantiles', () => {
  it('interpolate between order statistics', () => {
    expect(quantileOfSorted([1, 2, 4, 8], 0)).toBe(1);
    expect(quantileOfSorted([1, 2, 4, 8], 0.5)).toBe(3);
    expect(quantileOfSorted([1, 2, 4, 8], 0.9)).toBeCloseTo(6.8, 12);
    expect(quantileOfSorted([3], 0.3)).toBe(3);
    expect(() => quantileOfSorted([], 0.5)).toThrow(RangeError);
    expect(() => quantileOfSorted([1], 1.5)).toThrow(RangeError);
  });
});
