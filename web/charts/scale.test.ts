import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linearScale, logScale, within } from './scale.ts';

describe('scales', () => {
  it('puts the ends of the domain on the ends of the range, either way round', () => {
    const up = linearScale(10, 30, 200, 0);
    expect([up.at(10), up.at(20), up.at(30)]).toEqual([200, 100, 0]);
  });

  it('spaces decades evenly on a logarithmic scale', () => {
    const y = logScale(0.1, 100, 0, 300);
    expect(y.at(1)).toBeCloseTo(100, 9);
    expect(y.at(10)).toBeCloseTo(200, 9);
    expect(y.value(150)).toBeCloseTo(Math.sqrt(10), 9);
  });

  it('never leaves the range, whatever the value', () => {
    const x = linearScale(0, 60, 40, 340);
    const y = logScale(0.1, 10, 200, 20);
    fc.assert(
      fc.property(fc.double(), (value) => {
        expect(x.at(value)).toBeGreaterThanOrEqual(40);
        expect(x.at(value)).toBeLessThanOrEqual(340);
        expect(y.at(value)).toBeGreaterThanOrEqual(20 - 1e-9);
        expect(y.at(value)).toBeLessThanOrEqual(200 + 1e-9);
      }),
    );
  });

  it('reads back what it placed', () => {
    const x = linearScale(-5, 12, 0, 170);
    fc.assert(
      fc.property(fc.double({ min: -5, max: 12, noNaN: true }), (value) => {
        expect(x.value(x.at(value))).toBeCloseTo(value, 9);
      }),
    );
  });

  it('refuses an empty or endless domain and a logarithm of nothing', () => {
    expect(() => linearScale(3, 3, 0, 1)).toThrow(RangeError);
    expect(() => linearScale(0, Number.POSITIVE_INFINITY, 0, 1)).toThrow(RangeError);
    expect(() => logScale(0, 10, 0, 1)).toThrow(/low is 0/);
  });

  it('holds a value that is no number at the low end', () => {
    expect(within(Number.NaN, 2, 5)).toBe(2);
  });
});
