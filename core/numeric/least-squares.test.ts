/**
 * NIST Statistical Reference Datasets, nonlinear least squares: Misra1a and Rat42, data and certified values from memory. Each
 * checks itself: wrong data would not give the certified residual sum of squares to nine digits.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cholesky, choleskyInverse, choleskySolve } from './cholesky.ts';
import { leastSquares } from './least-squares.ts';

const misra = {
  y: [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
  x: [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760],
};
const rat = {
  y: [8.93, 10.8, 18.59, 22.33, 39.35, 56.11, 61.73, 64.62, 67.08],
  x: [9, 14, 21, 28, 42, 57, 63, 70, 79],
};

const fill = (out: Float64Array, of: (i: number) => number): void => {
  for (let i = 0; i < out.length; i++) out[i] = of(i);
};

describe('Levenberg and Marquardt', () => {
  it.each([
    [500, 0.0001],
    [250, 0.0005],
  ])('Misra1a from (%f, %f): y = b1 (1 - exp(-b2 x))', (b1, b2) => {
    const fit = leastSquares(
      (b, out) => fill(out, (i) => b[0]! * -Math.expm1(-b[1]! * misra.x[i]!) - misra.y[i]!),
      [b1, b2],
      14,
      { scale: [100, 1e-4], central: true, step: 1e-5 },
    );
    expect(fit.converged).toBe(true);
    expect(Math.abs(fit.x[0]! / 238.94212918 - 1)).toBeLessThan(1e-8);
    expect(Math.abs(fit.x[1]! / 5.5015643181e-4 - 1)).toBeLessThan(1e-8);
    expect(Math.abs((2 * fit.cost) / 0.12455138894 - 1)).toBeLessThan(1e-9);
    // Certified standard deviations of the two.
    const variance = (2 * fit.cost) / 12;
    expect(Math.abs(Math.sqrt(variance * fit.covariance![0]![0]!) / 2.7070075241 - 1)).toBeLessThan(1e-5);
    expect(Math.abs(Math.sqrt(variance * fit.covariance![1]![1]!) / 7.2668688436e-6 - 1)).toBeLessThan(1e-5);
  });

  it.each([
    [100, 1, 0.1],
    [75, 2.5, 0.07],
  ])('Rat42 from (%f, %f, %f): y = b1/(1 + exp(b2 - b3 x))', (...start) => {
    const fit = leastSquares(
      (b, out) => fill(out, (i) => b[0]! / (1 + Math.exp(b[1]! - b[2]! * rat.x[i]!)) - rat.y[i]!),
      start,
      9,
      { scale: [10, 1, 0.01], central: true, step: 1e-5 },
    );
    expect(Math.abs(fit.x[0]! / 72.462237576 - 1)).toBeLessThan(1e-8);
    expect(Math.abs(fit.x[1]! / 2.6180768402 - 1)).toBeLessThan(1e-8);
    expect(Math.abs(fit.x[2]! / 0.067359200066 - 1)).toBeLessThan(1e-8);
    expect(Math.abs((2 * fit.cost) / 8.0565229338 - 1)).toBeLessThan(1e-9);
  });

  it('walks the bent valley of Rosenbrock to (1, 1)', () => {
    const fit = leastSquares(
      (x, out) => {
        out[0] = 10 * (x[1]! - x[0]! ** 2);
        out[1] = 1 - x[0]!;
      },
      [-1.2, 1],
      2,
    );
    expect(fit.x[0]).toBeCloseTo(1, 7);
    expect(fit.x[1]).toBeCloseTo(1, 7);
    expect(fit.cost).toBeLessThan(1e-16);
  });

  it('solves a linear problem as its normal equations do', () => {
    const number = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(fc.array(number, { minLength: 6, maxLength: 6 }), number, number, (y, u, v) => {
        const t = [0, 1, 2, 3, 4, 5];
        const fit = leastSquares((b, out) => fill(out, (i) => b[0]! + b[1]! * t[i]! - y[i]!), [u, v], 6);
        const meanY = y.reduce((sum, value) => sum + value, 0) / 6;
        const slope = y.reduce((sum, value, i) => sum + (t[i]! - 2.5) * (value - meanY), 0) / 17.5;
        expect(Math.abs(fit.x[1]! - slope)).toBeLessThan(1e-6);
        expect(Math.abs(fit.x[0]! - (meanY - 2.5 * slope))).toBeLessThan(1e-6);
        expect(Math.abs(fit.covariance![1]![1]! * 17.5 - 1)).toBeLessThan(1e-6);
      }),
    );
  });

  it('takes NaN as "not here", and says when a direction is free', () => {
    const fit = leastSquares(
      (x, out) => {
        out[0] = Math.log(x[0]!) - Math.log(2);
      },
      [0.05],
      1,
    );
    expect(fit.x[0]).toBeCloseTo(2, 6);
    const free = leastSquares((x, out) => (out[0] = x[0]! - 1), [0, 0], 1);
    expect(free.x[0]).toBeCloseTo(1, 6);
    expect(free.covariance).toBeNull();
  });

  it('refuses a start that is not finite, no residuals, a bad scale', () => {
    const square = (x: Float64Array, out: Float64Array) => {
      out[0] = Math.sqrt(x[0]!);
    };
    expect(() => leastSquares(square, [-1], 1)).toThrow(/start/);
    expect(() => leastSquares(square, [1], 0)).toThrow(/count/);
    expect(() => leastSquares(square, [1], 1, { scale: [0] })).toThrow(/scale/);
  });
});

describe('Cholesky', () => {
  const a = [
    [4, 12, -16],
    [12, 37, -43],
    [-16, -43, 98],
  ];
  it('factors, solves and inverts a known matrix', () => {
    const lower = cholesky(a)!;
    expect(lower).toEqual([
      [2, 0, 0],
      [6, 1, 0],
      [-8, 5, 3],
    ]);
    expect(choleskySolve(lower, [0, 6, 39])).toEqual([1, 1, 1]);
    const inverse = choleskyInverse(lower);
    a.forEach((row, i) => {
      row.forEach((_, j) => {
        const product = row.reduce((sum, value, k) => sum + value * inverse[k]![j]!, 0);
        expect(product).toBeCloseTo(i === j ? 1 : 0, 9);
      });
    });
  });
  it('says no to a matrix that is not positive definite, and to one that is not square', () => {
    expect(
      cholesky([
        [1, 2],
        [2, 1],
      ]),
    ).toBeNull();
    expect(cholesky([[Number.NaN]])).toBeNull();
    expect(() => cholesky([[1, 2]])).toThrow(/row 0/);
  });
});
