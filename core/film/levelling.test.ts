import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { capillaryLength_m, GRAVITY_m_s2 } from './constants.ts';
import { thetaOfSeries, thetaTotal } from './flow-budget.ts';
import {
  lastTouchTheta,
  lastTouchTime,
  longestLevellingWave,
  orchardRate,
  orchardRateThin,
  thetaToLevel,
} from './levelling.ts';

const waves = fc.double({ min: 1e-4, max: 3, noNaN: true });
const films = fc.double({ min: 1e-5, max: 0.0072, noNaN: true });

describe('rate of levelling', () => {
  it('is that of a thin film when the wave is long, at any size', () => {
    for (const x of [1e-8, 1e-5, 1e-4]) {
      const wavelength_m = (2 * Math.PI * 0.001) / x;
      expect(
        Math.abs(orchardRate(wavelength_m, 0.001) / orchardRateThin(wavelength_m, 0.001) - 1),
      ).toBeLessThan(2 * x * x + 1e-14);
    }
  });
  it('is that of deep liquid when the wave is short, without overflow', () => {
    for (const wavelength_m of [1e-3, 1e-5, 1e-6]) {
      const k = (2 * Math.PI) / wavelength_m;
      const deep = (1100 * GRAVITY_m_s2 + 0.035 * k * k) / (2 * k);
      expect(Math.abs(orchardRate(wavelength_m, 0.01) / deep - 1)).toBeLessThan(1e-12);
    }
  });
  it('runs smoothly through the change of formula at k h = 1', () => {
    const at = (x: number): number => orchardRate((2 * Math.PI * 0.002) / x, 0.002);
    const [below, above] = [at(1 - 1e-9), at(1 + 1e-9)];
    expect(Math.abs(above / below - 1)).toBeLessThan(1e-8);
  });
  it('never exceeds the thin-film rate, grows with the film and falls with the wave', () => {
    fc.assert(
      fc.property(waves, films, fc.double({ min: 1.001, max: 3, noNaN: true }), (wave_m, film_m, by) => {
        const rate = orchardRate(wave_m, film_m);
        expect(rate).toBeLessThanOrEqual(orchardRateThin(wave_m, film_m) * (1 + 1e-12));
        expect(orchardRate(wave_m, film_m * by)).toBeGreaterThanOrEqual(rate * (1 - 1e-12));
        expect(orchardRate(wave_m * by, film_m)).toBeLessThanOrEqual(rate * (1 + 1e-12));
      }),
    );
  });
  it('refuses nonsense', () => {
    expect(() => orchardRate(0, 0.001)).toThrow(/wavelength_m/);
    expect(() => orchardRate(0.01, Number.NaN)).toThrow(/thickness_m/);
    expect(() => orchardRate(1e300, 1e-300)).toThrow(RangeError);
    expect(() => thetaToLevel(0.01, 0.001, 0)).toThrow(/fraction/);
    expect(() => thetaToLevel(0.01, 0.001, 1.1)).toThrow(/fraction/);
  });
});

describe('longest wave that levels', () => {
  it('needs just the budget left, and longer with more of it', () => {
    fc.assert(
      fc.property(
        films,
        fc.double({ min: 0.01, max: 2000, noNaN: true }),
        fc.double({ min: 0.001, max: 0.9, noNaN: true }),
        (film_m, theta, fraction) => {
          const wave_m = longestLevellingWave(film_m, theta, fraction);
          expect(Math.abs(thetaToLevel(wave_m, film_m, fraction) / theta - 1)).toBeLessThan(1e-9);
          expect(longestLevellingWave(film_m, theta * 1.5, fraction)).toBeGreaterThan(wave_m);
        },
      ),
    );
  });
  it('refuses pools too deep for one limit', () => {
    expect(() => longestLevellingWave(4.1 * capillaryLength_m(), 10, 0.1)).toThrow(/thickness_m/);
    expect(() => longestLevellingWave(0.001, 0, 0.1)).toThrow(/thetaLeft_per_Pa/);
    expect(() => longestLevellingWave(0.001, 10, 1)).toThrow(/fraction/);
  });
});

describe('last touch', () => {
  const series = thetaOfSeries([0, 600, 1800], [2, 6, 80]);
  it('leaves just enough budget', () => {
    const time_s = lastTouchTime(series, 0.05, 0.0015, 0.01)!;
    const spent = lastTouchTheta(thetaTotal(series), 0.05, 0.0015, 0.01)!;
    expect(spent + thetaToLevel(0.05, 0.0015, 0.01)).toBeCloseTo(thetaTotal(series), 10);
    expect(time_s).toBeGreaterThan(600);
    expect(time_s).toBeLessThan(1800);
  });
  it('comes sooner in a thinner film and is undefined when marks cannot level', () => {
    expect(lastTouchTime(series, 0.05, 0.0012, 0.01)!).toBeLessThan(
      lastTouchTime(series, 0.05, 0.0015, 0.01)!,
    );
    expect(lastTouchTime(series, 0.5, 0.0015, 0.01)).toBeUndefined();
    expect(lastTouchTheta(10, 0.5, 0.0015, 0.01)).toBeUndefined();
  });
  it('is the end itself for a mark that need not shrink', () => {
    expect(lastTouchTime(series, 0.5, 0.0015, 1)).toBe(1800);
  });
});
