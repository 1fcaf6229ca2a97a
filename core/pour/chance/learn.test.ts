import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomStream } from '#core/numeric/random.ts';
import { DEFAULT_WEIGHS_runs, learnSpread } from './learn.ts';

const fallback = { factor: 1, ln: 0.25, runs: 0 };

describe('what runs teach', () => {
  it('is the default when there are none', () => {
    expect(learnSpread([], fallback)).toEqual(fallback);
  });

  it('finds the factor and spread of a shop from many runs', () => {
    const random = randomStream(8);
    const steps = Array.from({ length: 50 }, () => ({
      planned_s: 200,
      actual_s: 200 * 1.4 * Math.exp(0.15 * random.normal()),
    }));
    const learned = learnSpread(steps, fallback);
    // the standard error of a median of 50 is 1.2533 x 0.15 / sqrt(50) = 0.027; three of them, and the default's pull
    expect(Math.abs(Math.log(learned.factor / 1.4))).toBeLessThan(
      3 * 0.027 + (Math.log(1.4) * DEFAULT_WEIGHS_runs) / 53,
    );
    expect(learned.ln).toBeGreaterThan(0.1);
    expect(learned.ln).toBeLessThan(0.22);
    expect(learned.runs).toBe(50);
  });

  it('is not moved far by a few nonsense figures', () => {
    const good = Array.from({ length: 12 }, (_, i) => ({ planned_s: 100, actual_s: 95 + i }));
    const bad = [...good, { planned_s: 100, actual_s: 7200 }, { planned_s: 100, actual_s: 9000 }];
    expect(Math.abs(learnSpread(bad, fallback).factor / learnSpread(good, fallback).factor - 1)).toBeLessThan(
      0.03,
    );
  });

  it('lies between the default and the runs, nearer to the runs the more there are', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.4, max: 3, noNaN: true }),
        fc.integer({ min: 1, max: 49 }),
        (factor, count) => {
          const of = (runs: number) =>
            Math.log(
              learnSpread(
                Array.from({ length: runs }, () => ({ planned_s: 60, actual_s: 60 * factor })),
                fallback,
              ).factor,
            );
          const target = Math.log(factor);
          expect(Math.abs(of(count))).toBeLessThanOrEqual(Math.abs(target) + 1e-12);
          expect(Math.abs(of(count + 1) - target)).toBeLessThanOrEqual(Math.abs(of(count) - target) + 1e-12);
        },
      ),
    );
  });

  it('refuses a duration that is not one', () => {
    expect(() => learnSpread([{ planned_s: 0, actual_s: 1 }], fallback)).toThrow(
      /planned_s = 0: allowed any finite/,
    );
  });
});
