import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Result } from './problem.ts';
import * as read from './read.ts';
import * as s from './spell.ts';
import { type System, toSI, type UnitName } from './units.ts';

describe('spelling for documents', () => {
  it('writes what a person would type', () => {
    expect(s.spellLength(0.6477, 'us')).toBe('25 1/2 in');
    expect(s.spellLength(0.0015875, 'us')).toBe('1/16 in');
    expect(s.spellLength(0.1, 'us')).toBe('3.937 in');
    expect(s.spellLength(-0.6477, 'us')).toBe('-25 1/2 in');
    expect(s.spellLength(0, 'us')).toBe('0 in');
    expect(s.spellLength(0.6477, 'metric')).toBe('647.7 mm');
    expect(s.spellTemperature(297.0388888888889, 'us')).toBe('75 F');
    expect(s.spellTemperature(297.15, 'metric')).toBe('24 C');
    expect(s.spellDuration(5400)).toBe('1.5 h');
    expect(s.spellDuration(5415)).toBe('5415 s');
    expect(s.spellFilm(toSI(4, 'fl oz/sq ft'), 'us')).toBe('4 fl oz/sq ft');
    expect(s.spellPercent(0.35)).toBe('35%');
    expect(s.spellRatio({ a: 100, b: 45, basis: 'weight' })).toBe('100:45 by weight');
  });

  it('writes 64ths so that the very same value is read back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 64 * 240 }), (parts) => {
        const length_m = toSI(parts / 64, 'in');
        expect(read.readLength_m(s.spellLength(length_m, 'us'))).toMatchObject({ ok: true, value: length_m });
      }),
    );
  });

  it('is read back within half of its step', () => {
    const cases: readonly [
      (value: number, system: System) => string,
      (text: string) => Result<number>,
      Readonly<Record<System, readonly [UnitName, number]>>,
    ][] = [
      [s.spellLength, read.readLength_m, { us: ['in', 1e-4], metric: ['mm', 1e-3] }],
      [s.spellArea, read.readArea_m2, { us: ['sq ft', 1e-5], metric: ['m2', 1e-6] }],
      [s.spellVolume, read.readVolume_m3, { us: ['fl oz', 1e-4], metric: ['mL', 1e-3] }],
      [s.spellMass, read.readMass_kg, { us: ['g', 1e-3], metric: ['g', 1e-3] }],
      [s.spellWeight, read.readMass_kg, { us: ['lb', 1e-4], metric: ['kg', 1e-4] }],
      [s.spellFilm, read.readFilm_m, { us: ['fl oz/sq ft', 1e-4], metric: ['mm', 1e-4] }],
      [s.spellDensity, read.readDensity_kg_m3, { us: ['lb/gal', 1e-4], metric: ['g/mL', 1e-5] }],
      [s.spellViscosity, read.readViscosity_Pa_s, { us: ['cP', 1e-3], metric: ['mPa s', 1e-3] }],
      [
        s.spellTemperatureDifference,
        read.readTemperatureDifference_K,
        { us: ['delta F', 1e-3], metric: ['delta C', 1e-3] },
      ],
      [s.spellTemperature, read.readTemperature_K, { us: ['delta F', 1e-3], metric: ['delta C', 1e-3] }],
      [(value) => s.spellDuration(value), read.readDuration_s, { us: ['s', 1e-3], metric: ['s', 1e-3] }],
      [(value) => s.spellPercent(value), read.readPercent, { us: ['%', 1e-4], metric: ['%', 1e-4] }],
    ];
    for (const [spell, reader, steps] of cases) {
      fc.assert(
        fc.property(
          fc.double({ min: 0, max: 100, noNaN: true }),
          fc.constantFrom<System>('us', 'metric'),
          (value, system) => {
            const [unit, step] = steps[system];
            const back = reader(spell(value, system));
            const half = toSI(0.5 * step, unit);
            expect(back.ok && Math.abs(back.value - value) <= half * (1 + 1e-6) + 1e-11 * (value + 1)).toBe(
              true,
            );
          },
        ),
      );
    }
  });

  it('reads ratios back whole', () => {
    const part = fc.integer({ min: 1, max: 1_000_000 }).map((n) => n / 1000);
    fc.assert(
      fc.property(part, part, fc.constantFrom('volume' as const, 'weight' as const), (a, b, basis) => {
        expect(read.readRatio(s.spellRatio({ a, b, basis }))).toMatchObject({
          ok: true,
          value: { a, b, basis },
        });
      }),
    );
    expect(() => s.spellRatio({ a: 1e-9, b: 1, basis: 'volume' })).toThrow(RangeError);
  });

  it('refuses NaN and Infinity', () => {
    expect(() => s.spellLength(Number.NaN, 'us')).toThrow(RangeError);
    expect(() => s.spellVolume(Number.POSITIVE_INFINITY, 'us')).toThrow(RangeError);
    expect(() => s.spellDuration(Number.NaN)).toThrow(RangeError);
  });
});
