import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import * as f from './format.ts';
import * as read from './read.ts';
import { fromSI, type System } from './units.ts';

describe('lengths', () => {
  test.each([
    [0.6477, '25 1/2 in', '648 mm'],
    [0.00635, '1/4 in', '6 mm'],
    [0.0254, '1 in', '25 mm'],
    [0, '0 in', '0 mm'],
    [-1e-9, '0 in', '0 mm'],
    [-0.6477, '-25 1/2 in', '-648 mm'],
    [0.0254 * (1 - 1 / 64), '1 in', '25 mm'],
    [0.0254 * (1 + 1 / 32), '1 1/16 in', '26 mm'],
    [-0.0254 * (1 + 1 / 32), '-1 1/16 in', '-26 mm'],
  ])('%d m is %s or %s', (length_m, us, metric) => {
    expect(f.formatLength(length_m, 'us')).toBe(us);
    expect(f.formatLength(length_m, 'metric')).toBe(metric);
  });

  it('takes 32nds, decimals, feet', () => {
    expect(f.formatLength(0.0254 * (1 + 1 / 32), 'us', { fraction: 32 })).toBe('1 1/32 in');
    expect(f.formatLength(0.6477, 'us', { decimals: 2 })).toBe('25.50 in');
    expect(f.formatLength(0.6477, 'metric', { decimals: 1 })).toBe('647.7 mm');
    expect(f.formatLength(0.6477, 'us', { feet: true })).toBe('2 ft 1 1/2 in');
    expect(f.formatLength(-0.6477, 'us', { feet: true })).toBe('-2 ft 1 1/2 in');
    expect(f.formatLength(0.6096, 'us', { feet: true })).toBe('2 ft');
    expect(f.formatLength(0.6095, 'us', { feet: true })).toBe('2 ft');
    expect(f.formatLength(0.2, 'us', { feet: true })).toBe('7 7/8 in');
    expect(f.formatLength(0.6477, 'us', { feet: true, decimals: 1 })).toBe('2 ft 1.5 in');
  });
});

test.each([
  ['area', f.formatArea(1.161288, 'us'), '12.5 sq ft'],
  ['area', f.formatArea(1.161288, 'metric'), '1.16 m²'],
  ['small area', f.formatArea(0.00645, 'metric'), '0.006 m²'],
  ['volume', f.formatVolume(0.0011829411825, 'us'), '40.0 fl oz'],
  ['a gallon', f.formatVolume(0.003785411784, 'us'), '1.00 gal'],
  ['volume', f.formatVolume(0.00045, 'metric'), '450 mL'],
  ['just under a litre', f.formatVolume(0.0009996, 'metric'), '1.00 L'],
  ['mass in US units', f.formatMass(0.85, 'us'), '850 g'],
  ['small mass', f.formatMass(0.0125), '12.5 g'],
  ['mass rounding over a limit', f.formatMass(0.009996), '10.0 g'],
  ['large mass', f.formatMass(10.25), '10.25 kg'],
  ['weight', f.formatWeight(39, 'us'), '86 lb'],
  ['weight', f.formatWeight(4.25, 'metric'), '4.3 kg'],
  ['temperature', f.formatTemperature(297.0388889, 'us'), '75 °F'],
  ['temperature', f.formatTemperature(273.1, 'metric'), '0 °C'],
  ['difference', f.formatTemperatureDifference(-2.7777778, 'us'), '-5.0 °F'],
  ['film', f.formatFilm(0.0012733073, 'us'), '4.0 fl oz/sq ft'],
  ['film', f.formatFilm(0.00127, 'metric'), '1.27 mm'],
  ['film thickness', f.formatFilm(0.00127, 'us', { as: 'thickness' }), '50 mil'],
  ['thin film', f.formatFilm(0.00002, 'metric', { as: 'thickness' }), '20 µm'],
  ['film amount', f.formatFilm(0.00127, 'metric', { as: 'amount' }), '1.27 L/m²'],
  ['viscosity', f.formatViscosity(1.2345, 'us'), '1230 cP'],
  ['viscosity', f.formatViscosity(12.5, 'metric'), '12.5 Pa·s'],
  ['viscosity rounding over a limit', f.formatViscosity(9.9999, 'metric'), '10 Pa·s'],
  ['density', f.formatDensity(1100, 'us'), '9.18 lb/gal'],
  ['density', f.formatDensity(1100, 'metric'), '1.10 g/mL'],
  ['percent', f.formatPercent(0.345), '35%'],
  ['negative percent', f.formatPercent(-0.001), '0%'],
  ['percent with a decimal', f.formatPercent(0.345, { decimals: 1 }), '34.5%'],
  ['ratio', f.formatRatio({ a: 100, b: 45.5, basis: 'weight' }), '100:45.5 by weight'],
])('%s: %s', (_name, text, expected) => {
  expect(text).toBe(expected);
});

describe('durations', () => {
  test.each([
    [0, '0 s'],
    [-0.2, '0 s'],
    [90, '90 s'],
    [119.7, '2 min'],
    [150, '2 min 30 s'],
    [599, '10 min'],
    [1080, '18 min'],
    [3599, '1 h'],
    [19200, '5 h 20 min'],
    [-19200, '-5 h 20 min'],
    [172799, '2 d'],
    [259200, '3 d'],
    [273600, '3 d 4 h'],
    [604800, '7 d'],
  ])('%d s is %s', (time_s, expected) => {
    expect(f.formatDuration(time_s)).toBe(expected);
  });

  it('reads back within half a step', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (time_s) => {
        const back = read.readDuration_s(f.formatDuration(time_s));
        const half =
          time_s < 120
            ? 0.5
            : time_s < 600
              ? 5
              : time_s < 43200
                ? 30
                : time_s < 172800
                  ? 150
                  : time_s < 604800
                    ? 1800
                    : 21600;
        expect(back.ok && Math.abs(back.value - time_s) <= half + 1e-6).toBe(true);
      }),
    );
  });
});

describe('every formatter', () => {
  const system = fc.constantFrom<System>('us', 'metric');
  const positive = fc.double({ min: 1e-7, max: 1e3, noNaN: true });
  /** Half of the last digit shown, in SI. */
  const halfStep = (text: string, unitSize: number) => {
    const decimals = /\.(\d+)/.exec(text)?.[1]?.length ?? 0;
    return 0.5 * 10 ** -decimals * unitSize * (1 + 1e-9);
  };

  it('is read back within half of its last digit', () => {
    const cases = [
      [f.formatArea, read.readArea_m2, { 'sq ft': 0.09290304, 'm²': 1 }],
      [
        f.formatVolume,
        read.readVolume_m3,
        { 'fl oz': 29.5735295625e-6, gal: 3.785411784e-3, mL: 1e-6, L: 1e-3 },
      ],
      [f.formatMass, read.readMass_kg, { kg: 1, g: 1e-3 }],
      [f.formatWeight, read.readMass_kg, { kg: 1, lb: 0.45359237 }],
      [f.formatDensity, read.readDensity_kg_m3, { 'lb/gal': 119.826427, 'g/mL': 1000 }],
      [f.formatFilm, read.readFilm_m, { 'fl oz/sq ft': 0.3183268e-3, mm: 1e-3 }],
      [f.formatTemperature, read.readTemperature_K, { '°F': 5 / 9, '°C': 1 }],
      [f.formatTemperatureDifference, read.readTemperatureDifference_K, { '°F': 5 / 9, '°C': 1 }],
    ] as const;
    for (const [format, reader, sizes] of cases) {
      fc.assert(
        fc.property(positive, system, (size_SI, chosen) => {
          // A temperature is rounded to whole degrees, which must not carry it below absolute zero.
          const value = format === f.formatTemperature ? size_SI + 1 : size_SI;
          const text = format(value, chosen);
          const unit = text.replace(/^[-\d.]+ /, '');
          const size = (sizes as Record<string, number>)[unit];
          const back = reader(text);
          expect(size).toBeDefined();
          expect(
            back.ok &&
              Math.abs(back.value - value) <= halfStep(text, (size ?? 0) * (1 + 1e-7)) + 1e-9 * value,
          ).toBe(true);
        }),
      );
    }
  });

  it('gives lengths that read back within half a sixteenth or half a millimetre', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 20, noNaN: true }),
        system,
        fc.boolean(),
        (value, chosen, feet) => {
          const back = read.readLength_m(f.formatLength(value, chosen, { feet }));
          const half = chosen === 'us' ? 0.0254 / 32 : 0.0005;
          expect(back.ok && Math.abs(back.value - value) <= half * (1 + 1e-9) + 1e-12).toBe(true);
        },
      ),
    );
  });

  it('gives viscosities that read back within half of the third digit', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e6, noNaN: true }), system, (value, chosen) => {
        const back = read.readViscosity_Pa_s(f.formatViscosity(value, chosen));
        expect(back.ok && Math.abs(back.value / value - 1) <= 0.005 + 1e-9).toBe(true);
      }),
    );
  });

  it('refuses NaN, Infinity and figures without digits', () => {
    const all: readonly ((value: number) => string)[] = [
      (v) => f.formatLength(v, 'us'),
      (v) => f.formatLength(v, 'metric'),
      (v) => f.formatArea(v, 'us'),
      (v) => f.formatVolume(v, 'us'),
      (v) => f.formatMass(v),
      (v) => f.formatWeight(v, 'us'),
      (v) => f.formatTemperature(v, 'us'),
      (v) => f.formatTemperatureDifference(v, 'us'),
      (v) => f.formatFilm(v, 'us'),
      (v) => f.formatFilm(v, 'metric', { as: 'amount' }),
      (v) => f.formatDuration(v),
      (v) => f.formatViscosity(v, 'us'),
      (v) => f.formatDensity(v, 'us'),
      (v) => f.formatPercent(v),
      (v) => f.formatRatio({ a: v, b: 1, basis: 'volume' }),
    ];
    for (const format of all) {
      for (const value of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e300]) {
        expect(() => format(value)).toThrow(RangeError);
      }
    }
    expect(() => f.formatTemperature(-1, 'us')).toThrow(/0 or more/);
    expect(() => f.formatRatio({ a: 0, b: 1, basis: 'volume' })).toThrow(/more than 0/);
  });
});

describe('ranges', () => {
  const range = (low: number, mid: number, high: number, kind: f.Kind, system: System = 'us') =>
    f.formatRange(low, mid, high, kind, system);

  test.each([
    ['minutes', range(1098, 1260, 1422, 'duration'), '18 to 24 min'],
    ['from 0', range(0, 200, 300, 'duration'), 'up to 5 min'],
    ['no width', range(1200, 1201, 1202, 'duration'), 'about 20 min'],
    ['hours', range(7860, 9000, 11220, 'duration'), '2.2 to 3.1 h'],
    ['a small end keeps its digit', range(7200, 30000, 90000, 'duration'), '2 to 25 h'],
    ['days', range(216000, 259200, 345600, 'duration'), '2.5 to 4.0 d'],
    ['temperatures', range(295, 297, 299, 'temperature'), '71 to 79 °F'],
    ['a sure temperature', range(297, 297.1, 297.2, 'temperature', 'metric'), 'about 24 °C'],
    ['below zero', range(268.15, 271, 275.15, 'temperature', 'metric'), '-5 to 2 °C'],
    ['film', range(0.001, 0.0012, 0.0015, 'film'), '3.1 to 4.7 fl oz/sq ft'],
    ['percent', range(0.3, 0.35, 0.4, 'percent'), '30 to 40%'],
    ['nothing', range(0, 0, 0, 'mass'), '0 g'],
  ])('%s: %s', (_name, text, expected) => {
    expect(text).toBe(expected);
  });

  it('never says three significant digits, and keeps low before high', () => {
    const scale = fc.constantFrom<f.Kind>(
      'duration',
      'film',
      'volume',
      'weight',
      'viscosity',
      'percent',
      'area',
    );
    const three = fc.tuple(...[0, 1, 2].map(() => fc.double({ min: 1e-4, max: 1e5, noNaN: true })));
    fc.assert(
      fc.property(three, scale, fc.constantFrom<System>('us', 'metric'), (values, kind, system) => {
        const [low = 0, mid = 0, high = 0] = [...values].sort((a, b) => a - b);
        const figures = f.formatRange(low, mid, high, kind, system).match(/\d+(\.\d+)?(?=[ %])/g) ?? [];
        expect(figures.length).toBeGreaterThan(0);
        for (const figure of figures) {
          const digits = figure.replace('.', '').replace(/^0+/, '').replace(/0+$/, '');
          expect(digits.length).toBeLessThanOrEqual(2);
        }
        const [first = 0, second = Number.POSITIVE_INFINITY] = figures.map(Number);
        expect(first).toBeLessThan(second);
      }),
    );
  });

  it('stays within a quarter of each end', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 130, max: 3000, noNaN: true }),
        fc.double({ min: 1.2, max: 2, noNaN: true }),
        (low, factor) => {
          const text = f.formatRange(low, low * 1.1, low * factor, 'duration', 'us');
          const seconds = text.endsWith(' min') ? 60 : 1;
          const [first = 0, second = 0] = (text.match(/[\d.]+/g) ?? []).map((n) => Number(n) * seconds);
          expect(Math.abs(first - low) / low).toBeLessThanOrEqual(0.25);
          expect(Math.abs(second - low * factor) / (low * factor)).toBeLessThanOrEqual(0.25);
        },
      ),
    );
  });

  it('refuses ends in the wrong order, NaN and Infinity', () => {
    expect(() => range(2, 1, 3, 'mass')).toThrow(/low <= mid <= high/);
    expect(() => range(1, 2, Number.POSITIVE_INFINITY, 'mass')).toThrow(RangeError);
    expect(() => range(Number.NaN, 2, 3, 'mass')).toThrow(RangeError);
    expect(fromSI(1, 'g')).toBe(1000);
  });
});
