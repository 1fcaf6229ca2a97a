/**
 * Huppert 1982 (J. Fluid Mech. 121, 43-58), Fermigier et al. 1992 (J. Fluid Mech. 236, 349), Stokes and Hadamard-Rybczynski rise, Gibbs
 * pinning (Oliver, Huh and Mason 1977) and levelling on a slope: worked numbers at Theta given, to their printed digits; and
 * finite-volume solutions of the spreading and of the tilted film made in this file.
 */
import { describe, expect, it } from 'vitest';
import { smallestEscapingBubble_m, thetaToRise_per_Pa } from '#core/film/bubbles.ts';
import { capillaryLength_m } from '#core/film/constants.ts';
import { dripGrowth_Pa, dripPitch_m, dripThickness_m, hangingDrop } from '#core/film/drips.ts';
import { thetaExponentialTotal } from '#core/film/flow-budget.ts';
import {
  puddleRadius_m,
  puddleStartTheta_per_Pa,
  puddleStopRadius_m,
  puddleThickness_m,
  RIDGE_CONSTANT,
  ROUND_PUDDLE_CONSTANT,
  ridgeHalfWidth_m,
} from '#core/film/puddle.ts';
import { pinnedOnRoundArris, pinnedThickness_m, wettingLimit_m } from '#core/film/self-damming.ts';
import { strokeMeanShare, strokeSurfaceShare } from '#core/film/stroke-reach.ts';
import { tiltEndChange_m, tiltEndChangeOfLength_m, tiltFlux_m2_Pa } from '#core/film/tilt.ts';

const WEIGHT = 1100 * 9.80665;
const tension = (surfaceTension_N_m: number) => ({ density_kg_m3: 1100, surfaceTension_N_m });

/** Explicit h_Theta = (rho g/3) r^-m (r^m h^3 (h_x - slope))_x, no flow at the ends; m = 1 for a round puddle. Changes h. */
function flow(h: Float64Array, cell: number, theta: number, m: 0 | 1, slope = 0): void {
  let spent = 0;
  const flux = new Float64Array(h.length + 1);
  while (spent < theta) {
    let top = 0;
    for (const v of h) top = Math.max(top, v);
    const by = Math.min((0.4 * cell * cell) / (WEIGHT * top ** 3), theta - spent);
    for (let i = 1; i < h.length; i++) {
      const [a, b] = [h[i - 1]!, h[i]!];
      const side = m === 1 ? i * cell : 1;
      flux[i] = -((WEIGHT / 3) * ((b ** 4 - a ** 4) / (4 * cell) - slope * ((a + b) / 2) ** 3) * side);
    }
    for (let i = 0; i < h.length; i++) {
      const width = m === 1 ? (i + 0.5) * cell * cell : cell;
      h[i]! += (by * (flux[i]! - flux[i + 1]!)) / width;
    }
    spent += by;
  }
}

describe('round puddles', () => {
  it('has the constants of Huppert', () => {
    expect(ROUND_PUDDLE_CONSTANT).toBeCloseTo(0.89391, 5);
    expect(RIDGE_CONSTANT).toBeCloseTo(1.41124, 5);
    expect(RIDGE_CONSTANT * (1 / 3) ** 0.2).toBeCloseTo(1.13286, 5);
  });
  it.each([
    [10, 60, 55.34, 1.3858],
    [29.5735295625, 60, 83.11, 1.8173],
    [100, 60, 131.23, 2.4644],
    [250, 60, 185.04, 3.0988],
    [10, 240, 65.81, 0.9799],
    [29.5735295625, 240, 98.83, 1.2851],
    [100, 240, 156.06, 1.7426],
  ])('%d mL at Theta %d: radius %d mm, middle %d mm', (volume_mL, theta, radius_mm, middle_mm) => {
    expect(puddleRadius_m(volume_mL * 1e-6, theta) * 1000).toBeCloseTo(radius_mm, 2);
    expect(puddleThickness_m(0, volume_mL * 1e-6, theta) * 1000).toBeCloseTo(middle_mm, 4);
  });
  it.each([
    [10, 30.21],
    [60, 43.23],
    [240, 57.04],
  ])('a ridge of 50 mm2 a side at Theta %d is %d mm wide to each side', (theta, half_mm) => {
    expect(ridgeHalfWidth_m(50e-6, theta) * 1000).toBeCloseTo(half_mm, 2);
  });
  it('a 30 mm column of 100 mL is worth 4.5e-4 of budget', () => {
    expect(puddleStartTheta_per_Pa(0.03, 1e-4)).toBeCloseTo(4.5e-4, 5);
  });
  it('spreads as a finite-volume solution does, middle within 1 %', () => {
    const cell = 0.001;
    const h = new Float64Array(120);
    const theta0 = puddleStartTheta_per_Pa(0.05, 3e-5);
    for (let i = 0; i < h.length; i++) h[i] = puddleThickness_m((i + 0.5) * cell, 3e-5, theta0);
    const volume = h.reduce((sum, v, i) => sum + v * 2 * Math.PI * (i + 0.5) * cell * cell, 0);
    flow(h, cell, 60 - theta0, 1);
    expect(Math.abs(h[0]! / puddleThickness_m(0, volume, 60) - 1)).toBeLessThan(0.01);
    expect(h.findIndex((v) => v < 1e-6) * cell).toBeCloseTo(puddleRadius_m(volume, 60), 2);
  });
});

describe('wetting and pinning, mm', () => {
  it.each([
    [10, 0.314],
    [20, 0.626],
    [30, 0.932],
  ])('a puddle at %d degrees stops at %d', (angle, film_mm) => {
    expect(wettingLimit_m(angle) * 1000).toBeCloseTo(film_mm, 3);
    expect(puddleStopRadius_m(1e-4, angle) ** 2 * Math.PI * wettingLimit_m(angle)).toBeCloseTo(1e-4, 12);
  });
  it.each([
    [10, 2.76, 2.555],
    [20, 2.951, 2.732],
    [30, 3.12, 2.888],
  ])('a sharp arris at %d degrees holds %d, at 0.030 N/m %d', (angle, usual_mm, low_mm) => {
    expect(pinnedThickness_m(angle) * 1000).toBeCloseTo(usual_mm, 3);
    expect(pinnedThickness_m(angle, 90, tension(0.03)) * 1000).toBeCloseTo(low_mm, 3);
  });
  it.each([
    [20, [2.451, 1.951, 1.353, 1.124, 0.881]],
    [10, [2.26, 1.76, 1.087, 0.837, 0.579]],
    [30, [2.62, 2.126, 1.607, 1.4, 1.175]],
  ] as const)('a round arris at %d degrees holds %j', (angle, films_mm) => {
    for (const [i, radius_mm] of [0.5, 1, 2, 3, 6].entries())
      expect(pinnedOnRoundArris(angle, radius_mm / 1000).thickness_m * 1000).toBeCloseTo(films_mm[i]!, 3);
  });
  it.each([1.4, 3, 6, 20])('at zero degrees and R = %d mm it is lc^2/(2R)', (radius_mm) => {
    const exact = capillaryLength_m() ** 2 / (2e-3 * radius_mm);
    expect(Math.abs(pinnedOnRoundArris(0, radius_mm / 1000).thickness_m / exact - 1)).toBeLessThan(1e-9);
  });
});

describe('drips', () => {
  it.each([
    [0.035, 16.006],
    [0.03, 14.818],
    [0.045, 18.149],
  ])('at %d N/m the pitch is %d mm', (surfaceTension, pitch_mm) => {
    expect(dripPitch_m(tension(surfaceTension)) * 1000).toBeCloseTo(pitch_mm, 3);
  });
  it.each([
    [0.1, 2.771e-4, 1e-7],
    [0.2, 0.002217, 1e-6],
    [0.3, 0.007481, 1e-6],
    [0.5, 0.034633, 1e-6],
    [1, 0.27706, 1e-5],
  ])('a hanging film of %d mm grows at %d', (film_mm, growth, lastDigit) => {
    expect(Math.abs(dripGrowth_Pa(film_mm / 1000) - growth)).toBeLessThanOrEqual(0.51 * lastDigit);
  });
  it.each([
    [10, 1.13],
    [60, 0.622],
    [240, 0.392],
    [600, 0.289],
    [1200, 0.229],
  ])('by Theta %d films above %d mm drip', (theta, film_mm) => {
    expect(dripThickness_m(theta) * 1000).toBeCloseTo(film_mm, 3);
  });
  it('hangs 110.8 mm3, 0.122 g, and stores 6.9 mL per metre', () => {
    const drop = hangingDrop();
    expect(drop.volume_m3 * 1e9).toBeCloseTo(110.8, 1);
    expect(drop.mass_kg * 1000).toBeCloseTo(0.122, 3);
    expect(drop.storedPerMetre_m2 * 1e6).toBeCloseTo(6.9, 1);
  });
});

describe('bubbles', () => {
  it.each([
    [5, 577.7, 707.5, 1000.6],
    [20, 288.8, 353.8, 500.3],
    [60, 166.8, 204.2, 288.8],
    [240, 83.4, 102.1, 144.4],
    [1200, 37.3, 45.7, 64.6],
  ])('at Theta %d the smallest to leave 1, 1.5 and 3 mm is %d, %d, %d um', (theta, one, half, three) => {
    expect(smallestEscapingBubble_m(0.001, theta) * 1e6).toBeCloseTo(one, 1);
    expect(smallestEscapingBubble_m(0.0015, theta) * 1e6).toBeCloseTo(half, 1);
    expect(smallestEscapingBubble_m(0.003, theta) * 1e6).toBeCloseTo(three, 1);
  });
  it.each([
    [0.1, 500.6],
    [0.2, 125.1],
    [0.5, 20.0],
    [1, 5.0],
  ])('a %d mm bubble needs %d s through 3 mm at 1 Pa s', (diameter_mm, time_s) => {
    expect(thetaToRise_per_Pa(0.003, diameter_mm / 1000)).toBeCloseTo(time_s, 1);
  });
});

describe('a bench out of level', () => {
  it.each([
    [1, 0.001, 0.0331],
    [1.5, 0.001, 0.0609],
    [3, 0.001, 0.1722],
    [1, 0.008727, 0.289],
    [1.5, 0.008727, 0.531],
    [3, 0.008727, 1.503],
  ])('%d mm at slope %d: the ends change by %d mm', (film_mm, slope, change_mm) => {
    expect(tiltEndChange_m(film_mm / 1000, slope, 240) * 1000).toBeCloseTo(change_mm, slope < 0.002 ? 4 : 3);
  });
  it('loses 2.9 mL/m over a low edge by Theta 240', () => {
    expect(tiltFlux_m2_Pa(0.0015, 0.001) * 240 * 1e6).toBeCloseTo(2.9, 1);
  });
  it('agrees with a finite-volume solution: 1.5 m, 1.5 mm, 1 mm/m, +0.0603 and -0.0590 mm', () => {
    const cell = 0.005;
    const h = new Float64Array(300).fill(0.0015);
    flow(h, cell, 240, 0, 0.001);
    const linear = tiltEndChangeOfLength_m(0.0015, 0.001, 240, 1.5) * 1000;
    // the half cell between the end and the first cell centre is put back by two-point extrapolation
    const low = (1.5 * h[299]! - 0.5 * h[298]! - 0.0015) * 1000;
    const high = (1.5 * h[0]! - 0.5 * h[1]! - 0.0015) * 1000;
    expect(low).toBeCloseTo(0.0603, 2);
    expect(high).toBeCloseTo(-0.059, 2);
    expect(Math.abs((low - high) / 2 / linear - 1)).toBeLessThan(0.02);
  });
});

describe('stroke reach in a film', () => {
  it.each([
    [0, 1, 1],
    [0.25, 0.7562, 0.5811],
    [0.5, 0.5447, 0.3788],
    [1, 0.261, 0.1693],
    [2, 0.055, 0.035],
    [3, 0.0114, 0.0073],
  ])('%d film thicknesses away: surface %d, mean %d', (away, surface, mean) => {
    expect(strokeSurfaceShare(away * 0.0015, 0.0015)).toBeCloseTo(surface, 4);
    expect(strokeMeanShare(away * 0.0015, 0.0015)).toBeCloseTo(mean, 4);
  });
});

describe('typical flow budgets tau/mu0', () => {
  it.each([
    [0.5, 10, 1200],
    [0.5, 20, 2400],
    [5, 20, 240],
    [10, 10, 60],
    [50, 20, 24],
  ])('%d Pa s, tau %d min: %d', (viscosity, tau_min, theta) => {
    expect(thetaExponentialTotal(viscosity, tau_min * 60)).toBeCloseTo(theta, 9);
  });
});
