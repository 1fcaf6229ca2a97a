/**
 * Integrated forms of published rate laws against each other and against quadrature of the rate itself.
 *  - n-th order; Kamal and Sourour (Thermochim. Acta 14 (1976) 41) with m = n = 1; Horie, Hiura, Sawada, Mita, Kambe (J. Polym.
 *    Sci. A-1 8 (1970) 1357), integrated by partial fractions. Rate laws from memory.
 *  - values: computed beforehand by an independent integrator at relative tolerance 1e-10.
 * Precision: all printed digits (half a unit of the last).
 */
import { describe, expect, it } from 'vitest';
import { QUICK_20 } from '#core/resin/cards.ts';
import {
  conversionIntegral,
  fastestConversion,
  horieTime,
  isothermalTime,
  kamalConversion,
  nthOrderConversion,
} from '#core/resin/closed-forms.ts';
import { equivalentAge } from '#core/resin/kinetics.ts';

const k1 = 2e-5;
const k2 = 4e-4;

describe('n-th order, k = 1e-3 /s, 1800 s', () => {
  it.each([
    [0.5, 0.99],
    [1, 0.8347011],
    [1.5, 0.7229917],
    [2, 0.6428571],
    [3, 0.5337476],
  ])('order %f', (order, conversion) => {
    expect(Math.abs(nthOrderConversion(1e-3, order, 1800) - conversion)).toBeLessThan(0.5e-7);
  });

  it('of order below 1 ends at 1', () => {
    expect(nthOrderConversion(1e-3, 0.5, 1e5)).toBe(1);
  });
});

describe('Kamal with m = n = 1', () => {
  it.each([
    [600, 0.01346369],
    [3600, 0.14410756],
    [7200, 0.48241978],
    [14400, 0.95262435],
  ])('%i s', (time, conversion) => {
    expect(Math.abs(kamalConversion(k1, k2, time) - conversion)).toBeLessThan(0.51e-8);
  });
});

describe('Horie', () => {
  it.each([
    [1, 0.2, 4750.7516],
    [1, 0.577, 10933.2792],
    [1, 0.8, 19597.8487],
    [0.9, 0.2, 5334.2749],
    [0.9, 0.577, 12819.7486],
    [0.9, 0.8, 26602.5344],
    [1.1, 0.2, 4282.7049],
    [1.1, 0.577, 9558.4829],
    [1.1, 0.8, 15940.5342],
  ])('B %f, conversion %f', (balance, conversion, time) => {
    expect(Math.abs(horieTime(k1, k2, conversion, balance) - time)).toBeLessThan(0.51e-4);
  });

  it('is continuous through balance', () => {
    expect(horieTime(k1, k2, 0.577, 1.00001)).toBeCloseTo(horieTime(k1, k2, 0.577, 1), 0);
  });

  it('refuses a conversion the mix cannot reach', () => {
    expect(() => horieTime(k1, k2, 0.9, 0.9)).toThrow(RangeError);
  });
});

describe('the conversion integral I(a)', () => {
  it.each([
    [0.5, 2.3, 0.2008, 0.215624],
    [0.5, 2.3, 0.2767, 0.312029],
    [0.5, 2.3, 0.6, 1.015934],
    [0.1, 2, 0.2008, 0.13238],
    [0.1, 2, 0.6, 0.372909],
  ])('rho %f, order %f, to %f', (rho, order, conversion, value) => {
    expect(Math.abs(conversionIntegral(rho, order, conversion) - value)).toBeLessThan(0.51e-6);
  });

  it('is k1 times the Horie time at order 2', () => {
    for (const a of [0.05, 0.577, 0.99, 0.9999]) {
      const ratio = conversionIntegral(k1 / k2, 2, a) / (k1 * horieTime(k1, k2, a, 1));
      expect(Math.abs(ratio - 1)).toBeLessThan(1e-12);
    }
  });

  it('gives the time between two conversions at a temperature', () => {
    // Isothermal at 24 C: I(.6)/k1 = 1.015934/1.856e-4 s.
    expect(Math.abs(isothermalTime(QUICK_20.model, 0, 0.6, 297.15) - 1.015934 / 1.856e-4)).toBeLessThan(0.01);
  });
});

describe('peak rate', () => {
  it('is at (1 - n rho)/(1 + n) for m = 1', () => {
    expect(fastestConversion(0.05, 2)).toBeCloseTo(0.3, 12);
    expect(fastestConversion(0.5, 2.3)).toBe(0);
  });
});

describe('equivalent age', () => {
  it('has the published ratios for 50, 55 and 60 kJ/mol (3 digits)', () => {
    const table = [
      [55_000, [0.632, 1.554, 2.064]],
      // 18 C is given as 0.607; exp(-7216.3 x 6.9354e-5) is 0.6062, so that digit is an error of the table.
      [60_000, [0.606, 1.617, 2.205]],
      [50_000, [0.659, 1.493, 1.933]],
    ] as const;
    for (const [activation, ratios] of table) {
      [291.15, 303.15, 307.15].forEach((T, i) => {
        const age = equivalentAge(activation, [0, 1000], [T, T]) / 1000;
        expect(Math.abs(age - ratios[i]!)).toBeLessThan(0.00051);
      });
    }
  });

  it('of a ramp equals fine quadrature', () => {
    let sum = 0;
    for (let i = 0; i < 20_000; i++) {
      const T = 288.15 + (20 * (i + 0.5)) / 20_000;
      sum += Math.exp((-55_000 / 8.314462618) * (1 / T - 1 / 297.15)) / 20_000;
    }
    const age = equivalentAge(55_000, [0, 3600], [288.15, 308.15]) / 3600;
    expect(Math.abs(age / sum - 1)).toBeLessThan(1e-6);
  });
});
