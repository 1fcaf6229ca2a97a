import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { smallestEscapingBubble_m, thetaToRise_per_Pa } from './bubbles.ts';
import {
  DRIP_E_FOLDS,
  dripGrowth_Pa,
  dripThickness_m,
  dripTime_s,
  fastestDrips,
  hangingDrop,
} from './drips.ts';
import { thetaAt, thetaOfSeries } from './flow-budget.ts';
import { rangeFromViscosity } from './ranges.ts';
import { strokeMeanShare, strokeSurfaceShare } from './stroke-reach.ts';
import { tiltEndChange_m, tiltEndChangeOfLength_m, tiltFlux_m2_Pa } from './tilt.ts';

const film = fc.double({ min: 1e-5, max: 0.005, noNaN: true });
const budget = fc.double({ min: 0.1, max: 3000, noNaN: true });

describe('drips', () => {
  it('show at the thickness whose growth makes four e-folds', () => {
    fc.assert(
      fc.property(budget, (theta) => {
        expect(dripGrowth_Pa(dripThickness_m(theta)) * theta).toBeCloseTo(DRIP_E_FOLDS, 9);
      }),
    );
  });
  it('show when the budget for four e-folds is spent, or never', () => {
    const series = thetaOfSeries([0, 600, 1800], [2, 6, 80]);
    const time_s = dripTime_s(series, 0.0005, 60)!;
    expect((thetaAt(series, time_s) - thetaAt(series, 60)) * fastestDrips(0.0005).growth_Pa).toBeCloseTo(
      4,
      9,
    );
    expect(dripTime_s(series, 0.0002, 60)).toBeUndefined();
    expect(dripTime_s(series, 0.0006, 60)!).toBeLessThan(time_s);
  });
  it('grow with the liquid: a heavier drop from a higher surface tension', () => {
    const strong = hangingDrop({ density_kg_m3: 1100, surfaceTension_N_m: 0.045 });
    expect(strong.mass_kg).toBeGreaterThan(hangingDrop().mass_kg);
    expect(() => hangingDrop({ density_kg_m3: 1100, surfaceTension_N_m: 0 })).toThrow(/surfaceTension_N_m/);
  });
});

describe('bubbles', () => {
  it('the smallest that escapes needs just the budget there is; a mobile skin is one half faster', () => {
    fc.assert(
      fc.property(film, budget, (depth_m, theta) => {
        const diameter_m = smallestEscapingBubble_m(depth_m, theta);
        expect(Math.abs(thetaToRise_per_Pa(depth_m, diameter_m) / theta - 1)).toBeLessThan(1e-9);
        expect(
          thetaToRise_per_Pa(depth_m, diameter_m) / thetaToRise_per_Pa(depth_m, diameter_m, 'mobile'),
        ).toBeCloseTo(1.5, 12);
        expect(smallestEscapingBubble_m(depth_m, theta * 2)).toBeLessThan(diameter_m);
      }),
    );
    expect(() => thetaToRise_per_Pa(0.001, 0)).toThrow(/diameter_m/);
  });
});

describe('tilt', () => {
  it('ends at the wedge S L/2 and starts as on an endless top', () => {
    expect(tiltEndChangeOfLength_m(0.003, 0.001, 1e6, 0.5)).toBeCloseTo(0.00025, 12);
    expect(tiltEndChangeOfLength_m(0.001, 0.001, 10, 2)).toBe(tiltEndChange_m(0.001, 0.001, 10));
  });
  it('runs on smoothly where the series takes over, never above wedge or endless top', () => {
    fc.assert(
      fc.property(film, budget, fc.double({ min: 0.1, max: 3, noNaN: true }), (h, theta, length_m) => {
        const change = tiltEndChangeOfLength_m(h, 0.002, theta, length_m);
        expect(change).toBeLessThanOrEqual(tiltEndChange_m(h, 0.002, theta) * (1 + 1e-9));
        expect(change).toBeLessThanOrEqual(0.001 * length_m * 1.13);
        expect(tiltEndChangeOfLength_m(h, 0.002, theta * 1.01, length_m)).toBeGreaterThanOrEqual(
          change * (1 - 1e-9),
        );
      }),
    );
    const theta = (spread: number): number => (3 * spread) / (1100 * 9.80665 * 0.002 ** 3);
    const [long, series] = [0.00999999, 0.01000001].map((s) =>
      tiltEndChangeOfLength_m(0.002, 0.001, theta(s), 1),
    );
    expect(Math.abs(series! / long! - 1)).toBeLessThan(2e-6);
  });
  it('refuses slopes outside', () => {
    expect(() => tiltEndChange_m(0.001, 0.06, 10)).toThrow(/slope/);
    expect(() => tiltFlux_m2_Pa(0.001, -0.01)).toThrow(/slope/);
    expect(() => tiltEndChangeOfLength_m(0.001, 0.01, 10, 0)).toThrow(/length_m/);
  });
});

describe('range from the viscosity', () => {
  it('is -18 and +22 % for the square root of the budget', () => {
    const range = rangeFromViscosity(100, 0.5);
    expect(range.low).toBeCloseTo(81.65, 2);
    expect(range.high).toBeCloseTo(122.47, 2);
    expect(range.value).toBe(100);
  });
  it('is the same for a quantity that falls with the budget, keeps its order below zero, and is nothing for power 0', () => {
    expect(rangeFromViscosity(100, -0.5)).toEqual(rangeFromViscosity(100, 0.5));
    const negative = rangeFromViscosity(-100, 0.5);
    expect(negative.low).toBeCloseTo(-122.47, 2);
    expect(negative.high).toBeCloseTo(-81.65, 2);
    expect(rangeFromViscosity(7, 0)).toEqual({ low: 7, value: 7, high: 7 });
  });
  it('refuses nonsense', () => {
    expect(() => rangeFromViscosity(Number.NaN, 0.5)).toThrow(/value/);
    expect(() => rangeFromViscosity(1, 0.5, 0.9)).toThrow(/viscosityFactor/);
    expect(() => rangeFromViscosity(1e308, 10)).toThrow(RangeError);
  });
});

describe('stroke reach', () => {
  it('falls from 1 with distance, the mean below the surface', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.02, noNaN: true }), film, (d, h) => {
        expect(strokeMeanShare(d, h)).toBeLessThanOrEqual(strokeSurfaceShare(d, h) + 1e-12);
        expect(strokeMeanShare(d * 1.1, h)).toBeLessThanOrEqual(strokeMeanShare(d, h) + 1e-6);
        expect(strokeMeanShare(d, h)).toBeGreaterThanOrEqual(0);
      }),
    );
    expect(strokeSurfaceShare(0.5611e-3, 1e-3)).toBeCloseTo(0.5, 4);
    expect(() => strokeSurfaceShare(0, 0)).toThrow(/thickness_m/);
  });
  it('the mean near the blade joins its series', () => {
    const q = (value: number): number => (-2 * 0.001 * Math.log(value)) / Math.PI;
    const [near, far] = [0.99900001, 0.99899999].map((v) => strokeMeanShare(q(v), 0.001));
    expect(Math.abs(near! - far!)).toBeLessThan(1e-5);
  });
});
