import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalsFor, fixed, roundTo, roundToStep, settle, trimmed } from './rounding.ts';

describe('rounding', () => {
  it('goes half away from zero by the digits a person sees', () => {
    expect(
      [1.005, 2.675, 1.45, 0.5, 1.5, 2.5].map((v) => roundTo(v, v > 1 && v < 2.6 && v !== 1.005 ? 0 : 2)),
    ).toEqual([1.01, 2.68, 1, 0.5, 2, 3]);
    expect(roundTo(-2.5, 0)).toBe(-3);
    expect(roundTo(-1.005, 2)).toBe(-1.01);
    expect(roundTo(1250, -2)).toBe(1300);
    expect(roundToStep(-7.5, 5)).toBe(-10);
    expect(roundToStep(0.3, 0.1)).toBe(0.3);
  });

  it('has no minus zero and no exponent', () => {
    expect(fixed(-0.0001, 2)).toBe('0.00');
    expect(fixed(-0, 0)).toBe('0');
    expect(Object.is(roundTo(-0.2, 0), 0)).toBe(true);
    expect(Object.is(roundToStep(-0.2, 1), 0)).toBe(true);
    expect(fixed(1e-9, 12)).toBe('0.000000001000');
    expect(fixed(1e15, 0)).toBe('1000000000000000');
  });

  it('drops the dust of a conversion', () => {
    expect(settle(25.499999999999996)).toBe(25.5);
    expect(settle(0.1 + 0.2)).toBe(0.3);
  });

  it('trims zeros at the end, not in front of the point', () => {
    expect([25.5, 100, 0, 10.25].map((v) => trimmed(v, 3))).toEqual(['25.5', '100', '0', '10.25']);
  });

  it('counts decimals for significant digits', () => {
    expect([1234, 1.234, 0.012, 0].map((v) => decimalsFor(v, 3))).toEqual([-1, 2, 4, 0]);
  });

  it('refuses what has no digits', () => {
    expect(() => fixed(Number.NaN, 2)).toThrow(RangeError);
    expect(() => fixed(1e16, 2)).toThrow(/-1e15 to 1e15/);
    expect(() => fixed(1, 13)).toThrow(/decimals/);
    expect(() => roundTo(1, 0.5)).toThrow(/decimals/);
    expect(() => roundToStep(1, 0)).toThrow(/step/);
  });

  it('stays within half a step and treats both signs alike', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.integer({ min: 0, max: 5 }),
        (value, decimals) => {
          const rounded = roundTo(value, decimals);
          expect(Math.abs(rounded - value)).toBeLessThanOrEqual(
            0.5 * 10 ** -decimals + 1e-11 * Math.abs(value),
          );
          expect(roundTo(-value, decimals)).toBe(-rounded + 0);
          expect(Number(fixed(value, decimals))).toBe(rounded);
        },
      ),
    );
  });
});
