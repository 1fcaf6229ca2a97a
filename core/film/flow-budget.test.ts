import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  thetaAt,
  thetaExponential,
  thetaExponentialTotal,
  thetaGelLaw,
  thetaLeftAt,
  thetaOfSeries,
  thetaTotal,
  timeWhenThetaLeft,
  timeWhenThetaSpent,
} from './flow-budget.ts';

const histories = fc
  .array(
    fc.tuple(fc.double({ min: 0.5, max: 600, noNaN: true }), fc.double({ min: 0.1, max: 1e5, noNaN: true })),
    {
      minLength: 2,
      maxLength: 30,
    },
  )
  .map((steps) => {
    let now = -100;
    const time_s = steps.map(([step]) => (now += step));
    return thetaOfSeries(
      time_s,
      steps.map(([, viscosity]) => viscosity),
    );
  });

describe('budget of a sampled viscosity', () => {
  it('is exact for an exponential viscosity however far apart the samples are', () => {
    const time_s = [0, 7, 900, 2400];
    const series = thetaOfSeries(
      time_s,
      time_s.map((t) => 2 * Math.exp(t / 600)),
    );
    for (const t of [0, 3, 7, 100, 899, 1500, 2400])
      expect(thetaAt(series, t)).toBeCloseTo(thetaExponential(2, 600, t), 10);
  });

  it('is time over viscosity when the viscosity stays', () => {
    const series = thetaOfSeries([10, 20, 50], [4, 4, 4]);
    expect(series.theta_per_Pa).toEqual([0, 2.5, 10]);
    expect(timeWhenThetaLeft(series, 2.5)).toBe(40);
  });

  it('tends to the gel law as samples get closer, second order', () => {
    const error = (n: number): number => {
      const time_s = Array.from({ length: n + 1 }, (_, i) => (1500 * i) / n);
      const series = thetaOfSeries(
        time_s,
        time_s.map((t) => 2 * (1 - t / 1800) ** -2),
      );
      return Math.abs(thetaTotal(series) - thetaGelLaw(2, 1800, 2, 1500));
    };
    expect(error(40)).toBeLessThan(error(20) / 3.5);
    expect(error(80)).toBeLessThan(0.02);
  });

  it('stays at the total after the end', () => {
    const series = thetaOfSeries([0, 100], [1, 10]);
    expect(thetaAt(series, 1e6)).toBe(thetaTotal(series));
    expect(thetaLeftAt(series, 1e6)).toBe(0);
    expect(timeWhenThetaLeft(series, 0)).toBe(100);
    expect(timeWhenThetaLeft(series, thetaTotal(series))).toBe(0);
  });

  it('never falls with time, and its inverse finds the time again', () => {
    fc.assert(
      fc.property(histories, fc.double({ min: 0, max: 1, noNaN: true }), (series, part) => {
        const first = series.time_s[0]!;
        const last = series.time_s.at(-1)!;
        const t = first + part * (last - first);
        const theta = thetaAt(series, t);
        expect(theta).toBeGreaterThanOrEqual(0);
        expect(theta).toBeLessThanOrEqual(thetaTotal(series) * (1 + 1e-12));
        expect(thetaAt(series, t + 1)).toBeGreaterThanOrEqual(theta * (1 - 1e-12));
        const back = timeWhenThetaSpent(series, Math.min(theta, thetaTotal(series)));
        expect(Math.abs(thetaAt(series, back) - theta)).toBeLessThanOrEqual(1e-10 * thetaTotal(series));
      }),
    );
  });

  it('falls when the viscosity rises', () => {
    fc.assert(
      fc.property(histories, fc.double({ min: 1.01, max: 5, noNaN: true }), (series, factor) => {
        const thicker = thetaOfSeries(
          series.time_s,
          series.viscosity_Pa_s.map((v) => v * factor),
        );
        expect(thetaTotal(thicker) * factor).toBeCloseTo(thetaTotal(series), 6);
      }),
    );
  });

  it('refuses what it cannot integrate, naming it', () => {
    expect(() => thetaOfSeries([0], [1])).toThrow(RangeError);
    expect(() => thetaOfSeries([0, 1], [1])).toThrow(/time_s has 2 and viscosity_Pa_s 1/);
    expect(() => thetaOfSeries([0, 0], [1, 1])).toThrow(/time_s\[1\]/);
    expect(() => thetaOfSeries([0, Number.NaN], [1, 1])).toThrow(/time_s\[1\]/);
    expect(() => thetaOfSeries([0, 1], [1, Number.POSITIVE_INFINITY])).toThrow(/viscosity_Pa_s\[1\]/);
    expect(() => thetaOfSeries([0, 1], [0, 1])).toThrow(/viscosity_Pa_s\[0\]/);
    const series = thetaOfSeries([0, 1], [1, 1]);
    expect(() => thetaAt(series, -1)).toThrow(RangeError);
    expect(() => thetaAt(series, Number.NaN)).toThrow(RangeError);
    expect(() => timeWhenThetaLeft(series, 1.5)).toThrow(/thetaLeft_per_Pa = 1.5/);
  });
});

describe('closed forms', () => {
  it('what is left of an exponential is that of a later start', () => {
    expect(thetaExponentialTotal(5, 1200) - thetaExponential(5, 1200, 700)).toBeCloseTo(
      thetaExponentialTotal(5 * Math.exp(700 / 1200), 1200),
      10,
    );
  });
  it('the gel law with exponent 0 is a constant viscosity', () => {
    expect(thetaGelLaw(4, 100, 0, 60)).toBeCloseTo(15, 12);
  });
  it('refuse times outside', () => {
    expect(() => thetaGelLaw(2, 100, 2, 101)).toThrow(RangeError);
    expect(() => thetaExponential(2, 100, -1)).toThrow(RangeError);
    expect(() => thetaExponential(0, 100, 1)).toThrow(RangeError);
  });
});
