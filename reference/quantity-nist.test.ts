/**
 * Unit factors against their definitions.
 *
 * Sources: NIST Handbook 44, appendix C (general tables of units of measurement): 1 US gallon = 231 cubic
 * inches exactly, 1 cup = 8 fluid ounces exactly; NIST Special Publication 811 (2008 edition), appendix B:
 * inch, pound and temperature scales. The definitions (inch, pound, gallon) are exact and are compared to a
 * relative 1e-14; derived factors that those tables print rounded are compared to every digit printed.
 * Coverage: 1604 sq ft a US gallon a mil is the figure of coatings practice (231 cu in over 144 sq in a foot,
 * a thousandth of an inch thick = 1604.1667). The table of films below is computed from the definitions by
 * hand, independently of this code, and agrees to all digits printed.
 */

import { describe, expect, it, test } from 'vitest';
import { readFilm_m } from '#core/quantity/read.ts';
import { convert, toSI, type UnitName } from '#core/quantity/units.ts';

const exact: readonly [UnitName, number][] = [
  ['in', 0.0254],
  ['ft', 0.3048],
  ['yd', 0.9144],
  ['mil', 25.4e-6],
  ['sq in', 6.4516e-4],
  ['sq ft', 0.09290304],
  ['cu in', 16.387064e-6],
  ['cu ft', 0.028316846592],
  ['gal', 3.785411784e-3],
  ['qt', 0.946352946e-3],
  ['pt', 473.176473e-6],
  ['cup', 236.5882365e-6],
  ['fl oz', 29.5735295625e-6],
  ['lb', 0.45359237],
  ['oz', 28.349523125e-3],
  ['cP', 1e-3],
  ['P', 0.1],
  ['min', 60],
  ['h', 3600],
  ['d', 86400],
];

test.each(exact)('1 %s is %d in SI, exactly', (unit, si) => {
  expect(Math.abs(toSI(1, unit) / si - 1)).toBeLessThan(1e-14);
});

/** The number of decimals printed decides the tolerance: half of the last one. */
function agrees(value: number, printed: string): void {
  const decimals = /\.(\d+)/.exec(printed)?.[1]?.length ?? 0;
  expect(Math.abs(value - Number(printed))).toBeLessThanOrEqual(0.5 * 10 ** -decimals * (1 + 1e-9));
}

describe('derived factors as printed', () => {
  it('density', () => {
    agrees(toSI(1, 'lb/ft3'), '16.01846');
    agrees(toSI(1, 'lb/gal'), '119.8264');
  });

  it('temperature: F = 1.8 C + 32, K = C + 273.15', () => {
    for (const celsius of [-40, 0, 20, 24, 37, 100]) {
      expect(convert(celsius, 'C', 'F')).toBeCloseTo(1.8 * celsius + 32, 10);
      expect(convert(celsius, 'C', 'K')).toBeCloseTo(celsius + 273.15, 10);
    }
  });

  it('weight per area', () => {
    agrees(convert(1, 'g/sq ft', 'g/m2', 1100), '10.76391');
    agrees(convert(1, 'oz/sq ft', 'kg/m2', 1100), '0.3051517');
  });
});

describe('coverage', () => {
  it('a US gallon covers 1604.1667 sq ft at one mil', () => {
    agrees(convert(1, 'mil', 'sq ft/gal'), '1604.1667');
  });

  it('one fl oz a sq ft is 12.53255 mil or 0.3183268 mm', () => {
    agrees(convert(1, 'fl oz/sq ft', 'mil'), '12.53255');
    agrees(convert(1, 'fl oz/sq ft', 'mm'), '0.3183268');
    agrees(convert(1, 'fl oz/sq ft', 'L/m2'), '0.3183268');
  });

  it('one millimetre is 40.74583 sq ft a gallon or 3.141426 fl oz a sq ft', () => {
    agrees(convert(1, 'mm', 'sq ft/gal'), '40.74583');
    agrees(convert(1, 'mm', 'fl oz/sq ft'), '3.141426');
  });

  test.each([
    ['1', '.3183', '12.533', '128', '.3502'],
    ['2', '.6367', '25.065', '64', '.7003'],
    ['3', '.9550', '37.598', '42.667', '1.0505'],
    ['4', '1.2733', '50.130', '32', '1.4006'],
    ['6', '1.9100', '75.195', '21.333', '2.1010'],
    ['8', '2.5466', '100.26', '16', '2.8013'],
  ])('%s fl oz/sq ft', (ounces, mm, mil, rate, kg) => {
    const amount = Number(ounces);
    agrees(convert(amount, 'fl oz/sq ft', 'mm'), mm);
    agrees(convert(amount, 'fl oz/sq ft', 'mil'), mil);
    agrees(convert(amount, 'fl oz/sq ft', 'sq ft/gal'), rate);
    agrees(convert(amount, 'fl oz/sq ft', 'kg/m2', 1100), kg);
  });

  test.each([
    ['0.5', '1.5707', '19.69', '81.49', '550'],
    ['1', '3.1414', '39.37', '40.75', '1100'],
    ['1.5', '4.7121', '59.06', '27.16', '1650'],
    ['2', '6.2829', '78.74', '20.37', '2200'],
    ['3', '9.4243', '118.11', '13.58', '3300'],
  ])('%s mm', (mm, ounces, mil, rate, grams) => {
    const thickness = Number(mm);
    agrees(convert(thickness, 'mm', 'fl oz/sq ft'), ounces);
    agrees(convert(thickness, 'mm', 'mil'), mil);
    agrees(convert(thickness, 'mm', 'sq ft/gal'), rate);
    agrees(convert(thickness, 'mm', 'g/m2', 1100), grams);
  });

  it('a sixteenth of an inch is 4.987 fl oz, 162.23 g or 5.723 oz by weight a sq ft; an eighth is twice that', () => {
    const sixteenth_m = toSI(1 / 16, 'in');
    agrees(convert(sixteenth_m, 'm', 'fl oz/sq ft'), '4.987');
    agrees(convert(sixteenth_m, 'm', 'g/sq ft', 1100), '162.23');
    agrees(convert(sixteenth_m, 'm', 'oz/sq ft', 1100), '5.723');
    agrees(convert(2 * sixteenth_m, 'm', 'fl oz/sq ft'), '9.974');
    agrees(convert(2 * sixteenth_m, 'm', 'g/sq ft', 1100), '324.46');
  });

  test.each([
    ['100 g/sq ft', '0.979'],
    ['150 g/sq ft', '1.468'],
    ['200 g/sq ft', '1.957'],
    ['250 g/sq ft', '2.446'],
    ['300 g/sq ft', '2.936'],
  ])('%s of 1.10 g/mL, as typed, is %s mm', (text, mm) => {
    const read = readFilm_m(text, { density_kg_m3: 1100 });
    if (!read.ok) throw new Error(read.problems[0]?.message);
    agrees(read.value * 1000, mm);
  });

  it('a fluid ounce of 1.10 g/mL resin weighs 32.53 g or 1.1475 oz', () => {
    const mass_kg = toSI(1, 'fl oz') * toSI(1.1, 'g/mL');
    agrees(mass_kg * 1000, '32.53');
    agrees(convert(mass_kg, 'kg', 'oz'), '1.1475');
  });
});
