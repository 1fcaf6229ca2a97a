import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convert, type Dimension, fromSI, scaleFromSI, scaleToSI, toSI, type Unit, units } from './units.ts';

const every = Object.entries(units).flatMap(([dimension, table]) =>
  Object.entries(table as Record<string, Unit>).map(([name, unit]) => ({ dimension, name, unit })),
);
const anyUnit = fc.constantFrom(...every);
const density = 1100;

describe('conversion', () => {
  it('rounds a typed decimal once', () => {
    expect(toSI(648, 'mm')).toBe(0.648);
    expect(toSI(25.5, 'in')).toBe(0.6477);
    expect(fromSI(0.6477, 'in')).toBeCloseTo(25.5, 13);
    expect(toSI(24, 'C')).toBe(297.15);
    expect(toSI(1.1, 'g/mL')).toBe(1100);
  });

  it('knows the fixed points of the temperature scales', () => {
    expect(convert(212, 'F', 'C')).toBeCloseTo(100, 10);
    expect(convert(32, 'F', 'C')).toBeCloseTo(0, 10);
    expect(convert(-40, 'C', 'F')).toBeCloseTo(-40, 10);
    expect(convert(18, 'delta F', 'delta C')).toBeCloseTo(10, 12);
  });

  it('goes between a spreading rate and a thickness, either way', () => {
    expect(convert(400, 'sq ft/gal', 'um')).toBeCloseTo(101.864583, 5);
    expect(convert(10, 'm2/L', 'mm')).toBeCloseTo(0.1, 12);
    expect(convert(1, 'mm', 'm2/L')).toBeCloseTo(1, 12);
  });

  it('needs a density for weight per area', () => {
    expect(convert(1.1, 'kg/m2', 'mm', 1100)).toBeCloseTo(1, 12);
    expect(() => convert(1.1, 'kg/m2', 'mm')).toThrow(/density_kg_m3 is undefined; allowed: more than 0/);
    expect(() => toSI(1, 'g/sq ft', 0)).toThrow(RangeError);
  });

  it('refuses what is not a number, spreading rates of 0, and units that do not belong together', () => {
    expect(() => toSI(Number.NaN, 'mm')).toThrow(RangeError);
    expect(() => toSI(Number.POSITIVE_INFINITY, 'mm')).toThrow(RangeError);
    expect(() => toSI(0, 'sq ft/gal')).toThrow(/more than 0/);
    expect(() => fromSI(0, 'm2/L')).toThrow(/more than 0/);
    expect(() => toSI(1e308, 'wk')).toThrow(RangeError);
    expect(() => convert(1, 'mm' as 'kg', 'kg')).toThrow(/no common dimension/);
    expect(() => toSI(1, 'furlong' as 'mm')).toThrow(/furlong/);
  });

  it('never answers minus zero', () => {
    expect(Object.is(toSI(-0, 'mm'), 0)).toBe(true);
    expect(Object.is(convert(-0, 'mm', 'mm'), 0)).toBe(true);
  });

  it('comes back to the same value from any unit', () => {
    fc.assert(
      fc.property(anyUnit, fc.double({ min: 1e-6, max: 1e6, noNaN: true }), ({ unit }, value) => {
        const back = scaleFromSI(scaleToSI(value, unit, density), unit, density);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * (Math.abs(value) + (unit.offset ?? 0)));
      }),
    );
  });

  it('rises with the value, and falls for spreading rates', () => {
    fc.assert(
      fc.property(anyUnit, fc.double({ min: 1, max: 1e6, noNaN: true }), ({ unit }, value) => {
        const step = scaleToSI(value * 1.001, unit, density) - scaleToSI(value, unit, density);
        expect(Math.sign(step)).toBe(unit.reciprocal === true ? -1 : 1);
      }),
    );
  });

  it('gives a name the same meaning in every dimension that has it', () => {
    for (const { name, unit } of every) {
      for (const other of every) {
        if (other.name === name) expect([other.unit.times, other.unit.per]).toEqual([unit.times, unit.per]);
      }
    }
  });

  it('has one unit of 1 in each dimension, the SI unit', () => {
    for (const dimension of Object.keys(units) as Dimension[]) {
      const [first] = every.filter((entry) => entry.dimension === dimension);
      if (dimension === 'area') expect(first?.name).toBe('m2');
      expect(every.some((e) => e.dimension === dimension && e.unit.times === e.unit.per)).toBe(true);
    }
  });
});
