import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Result } from './problem.ts';
import * as reader from './read.ts';

const { readLength_m, readTemperature_K, readVolume_m3, readMass_kg } = reader;

/** The value, or the code of the problem. */
function outcome<T>(result: Result<T>): T | string {
  return result.ok ? result.value : (result.problems[0]?.code ?? 'no problem given');
}

const allReaders: readonly ((text: string) => Result<unknown>)[] = [
  reader.readLength_m,
  reader.readArea_m2,
  reader.readVolume_m3,
  reader.readMass_kg,
  reader.readTemperature_K,
  reader.readTemperatureDifference_K,
  reader.readDensity_kg_m3,
  reader.readViscosity_Pa_s,
  reader.readFilm_m,
  (text) => reader.readFilm_m(text, { density_kg_m3: 1100, unit: 'mm' }),
  reader.readDuration_s,
  (text) => reader.readDuration_s(text, { unit: 'h' }),
  reader.readPercent,
  reader.readRelativeHumidity,
  reader.readRatio,
  reader.readCount,
  reader.readFactor,
];

describe('lengths', () => {
  test.each([
    '25 1/2"',
    '25-1/2 in',
    '25½ in',
    '25 ½”',
    '25.5in',
    '25,5 in.',
    '2 ft 1 1/2',
    '2 ft 1 1/2 in',
    `2' 1-1/2"`,
    `2'-1 1/2"`,
    '2’ 1½″',
    '2 ft, 1.5 in',
    '2 feet and 1 1/2 inches',
    "2' 1 1/2''",
    '647.7mm',
    '647,7 MM',
    '64,77 cm',
    '0.6477 m',
    ' + 25 1/2 in ',
    '25 1⁄2 in',
  ])('%s is 0.6477 m', (text) => {
    expect(outcome(readLength_m(text))).toBeCloseTo(0.6477, 14);
  });

  test.each([
    ['1/4 in', 0.00635],
    ['1/16"', 0.0015875],
    ['63 mil', 0.0016002],
    ['100 µm', 0.0001],
    ['1,200.5 mm', 1.2005],
    ['1.200,5 mm', 1.2005],
    ['1200,5 mm', 1.2005],
    ['0,648 m', 0.648],
    ['.5 in', 0.0127],
    ['2 ft .5 in', 0.6223],
    ['1 yd 2 ft 3 in', 1.6002],
  ])('%s is %d m', (text, expected) => {
    expect(outcome(readLength_m(text))).toBeCloseTo(expected, 14);
  });

  test.each([
    ['1,200 mm', 'length.ambiguous'],
    ['25', 'length.no-unit'],
    ['', 'length.empty'],
    ['   ', 'length.empty'],
    ['wide', 'length.unreadable'],
    ['NaN', 'length.unreadable'],
    ['Infinity mm', 'length.unreadable'],
    ['1e3 mm', 'length.unknown-unit'],
    ['5 furlongs', 'length.unknown-unit'],
    ['12 kg', 'length.unknown-unit'],
    ['1 200 mm', 'length.unreadable'],
    ['12..5 in', 'length.unreadable'],
    ['25 1/2/3 in', 'length.unknown-unit'],
    ['25 3/2 in', 'length.unreadable'],
    ['1/0 in', 'length.unreadable'],
    ['3 in 2 ft', 'length.unreadable'],
    ['2 ft 3 ft', 'length.unreadable'],
    ['2.5 ft 3 in', 'length.unreadable'],
    ['2 ft ,5 in', 'length.unreadable'],
    ['-5 mm', 'length.range'],
    ['9'.repeat(101), 'length.too-long'],
  ])('%j is refused as %s', (text, code) => {
    expect(outcome(readLength_m(text))).toBe(code);
  });

  it('takes the unit of the question for a bare number only', () => {
    expect(outcome(readLength_m('25 1/2', { unit: 'in' }))).toBe(0.6477);
    expect(outcome(readLength_m('648 mm', { unit: 'in' }))).toBe(0.648);
  });

  it('says the field, the part not understood, what was read, and the range in the unit typed', () => {
    const ask = { path: 'edges.0.face', what: 'face height', min: 0.0254, max: 6.096 };
    expect(readLength_m('300 in', ask)).toEqual({
      ok: false,
      problems: [
        {
          path: 'edges.0.face',
          code: 'length.range',
          message: 'Face height: the figure is too large.',
          read: '300 in',
          allowed: '1 in to 240 in',
        },
      ],
    });
    const metric = readLength_m('10 mm', ask);
    expect(metric.ok ? '' : metric.problems[0]?.allowed).toBe('25.4 mm to 6096 mm');
    const us = readLength_m('10 mm', { ...ask, system: 'us' });
    expect(us.ok ? '' : us.problems[0]?.allowed).toBe('1 in to 240 in');
    const unread = readLength_m('25 cubits', ask);
    expect(unread.ok ? '' : unread.problems[0]?.message).toBe(
      'Face height: "cubits" was not understood as a unit.',
    );
  });

  it('takes bounds as inclusive whatever unit was typed, and answers no value beyond them', () => {
    const max = 1 / 3;
    const result = readLength_m('13.1233595801 in', { min: 0, max });
    expect(outcome(result)).toBe(max);
    expect(outcome(readLength_m('1 in', { min: 0.0254 }))).toBe(0.0254);
  });

  it('lets the question allow negative figures', () => {
    expect(outcome(readLength_m('-25 1/2 in', { min: -1 }))).toBe(-0.6477);
    expect(Object.is(outcome(readLength_m('-0 mm')), 0)).toBe(true);
  });
});

describe('other quantities', () => {
  test.each([
    ['75F', 297.0388888888889],
    ['75 °F', 297.0388888888889],
    ['75 degrees F', 297.0388888888889],
    ['75℉', 297.0388888888889],
    ['24C', 297.15],
    ['24 ºC', 297.15],
    ['-5 °C', 268.15],
    ['−5 C', 268.15],
    ['297 K', 297],
    ['75', 'temperature.no-unit'],
    ['75°', 'temperature.no-unit'],
    ['-500 F', 'temperature.range'],
    ['75 F 3 C', 'temperature.unreadable'],
  ])('temperature %s is %s', (text, expected) => {
    const read = outcome(readTemperature_K(text));
    if (typeof expected === 'number') expect(read).toBeCloseTo(expected, 10);
    else expect(read).toBe(expected);
  });

  it('tells an ounce of volume from an ounce of weight', () => {
    const bare = readVolume_m3('40 oz', { what: 'amount' });
    expect(bare.ok ? '' : bare.problems[0]?.message).toBe(
      'Amount: "oz" can be a volume or a weight: say fl oz (volume) or oz by weight.',
    );
    expect(outcome(readVolume_m3('40 fl. oz.'))).toBeCloseTo(0.0011829411825, 15);
    expect(outcome(readVolume_m3('3 oz by weight'))).toBe('volume.unknown-unit');
    expect(outcome(readMass_kg('12 oz'))).toBeCloseTo(0.3401942775, 12);
    expect(outcome(readMass_kg('12 oz (weight)'))).toBeCloseTo(0.3401942775, 12);
    expect(outcome(readMass_kg('12 fl oz'))).toBe('mass.unknown-unit');
  });

  it('adds larger and smaller units', () => {
    expect(outcome(readVolume_m3('1 US gal 2 qt'))).toBeCloseTo(0.005678117676, 14);
    expect(outcome(readMass_kg('2 lb 3'))).toBeCloseTo(0.992233309375, 12);
  });

  it('reads areas with powers written in any way', () => {
    for (const text of [
      '1800 sq in',
      '1800 in2',
      '1800 in²',
      '1800 in^2',
      '12.5 sq. ft.',
      '12.5 ft²',
      '12 1/2 SF',
    ]) {
      expect(outcome(reader.readArea_m2(text))).toBeCloseTo(1.161288, 12);
    }
    expect(outcome(reader.readArea_m2('2 m2'))).toBe(2);
  });

  it('reads densities as any mass over any volume', () => {
    for (const text of ['1.1 g/mL', '1.1 g/cm3', '1.1 g/cc', '1.1 kg/L', '1100 kg/m³', '1.1 g per mL']) {
      expect(outcome(reader.readDensity_kg_m3(text))).toBeCloseTo(1100, 9);
    }
    expect(outcome(reader.readDensity_kg_m3('9.2 lb/gal'))).toBeCloseTo(1102.4031, 3);
    expect(outcome(reader.readDensity_kg_m3('1.1'))).toBe('density.no-unit');
  });

  it('reads viscosities, and does not take MPa for mPa', () => {
    for (const text of ['1200 cP', '1200 cps', '1200 mPa s', '1200 mPa·s', '1.2 Pa.s', '12 P']) {
      expect(outcome(reader.readViscosity_Pa_s(text))).toBeCloseTo(1.2, 12);
    }
    expect(outcome(reader.readViscosity_Pa_s('5 MPa s'))).toBe('viscosity.unknown-unit');
  });

  it('reads differences of temperature of either sign', () => {
    expect(outcome(reader.readTemperatureDifference_K('9 °F'))).toBeCloseTo(5, 12);
    expect(outcome(reader.readTemperatureDifference_K('-3 C'))).toBe(-3);
  });
});

describe('every reader', () => {
  const pieces = fc.constantFrom(
    ...[
      '1',
      '25',
      '1/2',
      '½',
      ' ',
      '-',
      '.',
      ',',
      ':',
      '"',
      "'",
      '/',
      'ft',
      'in',
      'oz',
      'fl oz',
      'sq ft',
      'm2',
      '%',
      'h',
      '°',
      'F',
      'by weight',
      'to',
    ],
    ...['e9', '\u0000', '9'.repeat(60), '0'],
  );
  const text = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 120 }),
    fc.array(pieces, { maxLength: 12 }).map((parts) => parts.join('')),
  );

  it('answers any text with a finite value or a full problem, and never throws', () => {
    fc.assert(
      fc.property(text, fc.constantFrom(...allReaders), (typed, read) => {
        const result = read(typed);
        if (result.ok) {
          const numbers =
            typeof result.value === 'number' ? [result.value] : Object.values(result.value as object);
          for (const n of numbers) expect(typeof n === 'string' || Number.isFinite(n)).toBe(true);
        } else {
          const [problem] = result.problems;
          expect(problem?.code).toMatch(/^[a-z-]+\.[a-z-]+$/);
          expect(problem?.message).toMatch(/^[A-Z].*\.$/s);
          expect(problem?.allowed).not.toBe('');
          expect((problem?.read ?? '').length).toBeLessThanOrEqual(100);
        }
      }),
      { numRuns: 3000 },
    );
  });

  it('refuses long texts and what is no text at all', () => {
    for (const read of allReaders) {
      expect(outcome(read('1'.repeat(101)))).toMatch(/\.too-long$/);
      expect(outcome(read(''))).toMatch(/\.empty$/);
      for (const wrong of [undefined, null, 5, {}, Number.NaN]) {
        expect(outcome(read(wrong as unknown as string))).toMatch(/\.unreadable$/);
      }
    }
  });
});
