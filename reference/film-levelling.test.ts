/**
 * Orchard 1962 (Appl. Sci. Res. A11, 451-464): the closed form of the levelling rate against a direct solution of the Stokes
 * equations for a wave on a film, set up and solved in this file (a 4 by 4 linear system), to 1e-9; and the numbers worked
 * from the formula elsewhere, to their printed digits.
 */
import { describe, expect, it } from 'vitest';
import { capillaryLength_m, DEFAULT_LIQUID, GRAVITY_m_s2 } from '#core/film/constants.ts';
import { thetaExponentialTotal, thetaOfSeries } from '#core/film/flow-budget.ts';
import {
  lastTouchTheta,
  lastTouchTime,
  longestLevellingWave,
  orchardRate,
  orchardRateThin,
  thetaToLevel,
} from '#core/film/levelling.ts';

/** Gaussian elimination with row exchange. */
function solve(matrix: number[][], right: number[]): number[] {
  const n = right.length;
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  for (let c = 0; c < n; c++) {
    let best = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(rows[r]![c]!) > Math.abs(rows[best]![c]!)) best = r;
    [rows[c], rows[best]] = [rows[best]!, rows[c]!];
    for (let r = c + 1; r < n; r++) {
      const by = rows[r]![c]! / rows[c]![c]!;
      for (let k = c; k <= n; k++) rows[r]![k]! -= by * rows[c]![k]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let r = n - 1; r >= 0; r--) {
    let sum = rows[r]![n]!;
    for (let k = r + 1; k < n; k++) sum -= rows[r]![k]! * x[k]!;
    x[r] = sum / rows[r]![r]!;
  }
  return x;
}

/**
 * Stream function psi = f(z) sin(kx) with f'''' - 2 k^2 f'' + k^4 f = 0, viscosity 1, lengths in 1/k:
 * f = A cosh + B sinh + C z cosh + D z sinh. u = f' sin, w = -f cos. Floor: f = f' = 0. Top z = x: no shear f'' + f = 0; normal
 * stress balances the load of a wave of unit height, -p + 2 w' = -(rho g + gamma k^2). Rate = speed of the top over its height.
 */
function stokesRate(wavelength_m: number, thickness_m: number): number {
  const k = (2 * Math.PI) / wavelength_m;
  const x = k * thickness_m;
  const [c, s] = [Math.cosh(x), Math.sinh(x)];
  const f = [c, s, x * c, x * s];
  const f1 = [s, c, c + x * s, s + x * c];
  const f2 = [c, s, 2 * s + x * c, 2 * c + x * s];
  const f3 = [s, c, 3 * c + x * s, 3 * s + x * c];
  const shear = f2.map((v, i) => v + f[i]!);
  // x-momentum: p = (f''' - f') * (-cos) * k^2 in these units; normal stress amplitude of cos: (f''' - 3 f') k^2
  const normal = f3.map((v, i) => v - 3 * f1[i]!);
  const load = DEFAULT_LIQUID.density_kg_m3 * GRAVITY_m_s2 + DEFAULT_LIQUID.surfaceTension_N_m * k * k;
  const coefficients = solve([[1, 0, 0, 0], [0, 1, 1, 0], shear, normal], [0, 0, 0, load / k]);
  const top = coefficients.reduce((sum, a, i) => sum + a * f[i]!, 0);
  return Math.abs(top);
}

describe('Orchard against a direct Stokes solution', () => {
  it.each([
    [0.3, 0.0015],
    [0.1, 0.003],
    [0.05, 0.0015],
    [0.02, 0.001],
    [0.01, 0.0015],
    [0.01, 0.003],
    [0.005, 0.003],
    [0.004, 0.005],
    [0.002, 0.00005],
  ])('wavelength %d m, film %d m', (wavelength_m, thickness_m) => {
    // the system loses about 1/x^4 in the last digits; 1e-9 holds down to x = 0.03
    const exact = stokesRate(wavelength_m, thickness_m);
    expect(Math.abs(orchardRate(wavelength_m, thickness_m) / exact - 1)).toBeLessThan(1e-9);
  });

  it('gives 0.8480443 1/s at k = 628 1/m, 1.5 mm, 5 Pa s', () => {
    expect(orchardRate((2 * Math.PI) / 628, 0.0015) / 5).toBeCloseTo(0.8480443, 7);
  });
});

describe('what the thin-film formula gets wrong', () => {
  it.each([
    [0.1667, 1.05],
    [0.2359, 1.1],
    [0.3338, 1.2],
  ])('k h = %d: %d times too fast', (x, ratio) => {
    const thickness_m = 0.0015;
    const wavelength_m = (2 * Math.PI * thickness_m) / x;
    expect(orchardRateThin(wavelength_m, thickness_m) / orchardRate(wavelength_m, thickness_m)).toBeCloseTo(
      ratio,
      3,
    );
  });
  it('is 2.575 times too fast for 10 mm in 1.5 mm and 37 times for 5 mm in 3 mm', () => {
    expect(orchardRateThin(0.01, 0.0015) / orchardRate(0.01, 0.0015)).toBeCloseTo(2.575, 3);
    expect(orchardRateThin(0.005, 0.003) / orchardRate(0.005, 0.003)).toBeCloseTo(37, 0);
  });
});

describe('flow budget to fall to 1 %', () => {
  it.each([
    [0.5, 10, 13.4, 0.05],
    [0.5, 20, 82.1, 0.05],
    [0.5, 50, 622, 0.5],
    [1, 10, 2.42, 0.005],
    [1, 20, 11.6, 0.05],
    [1, 50, 79.3, 0.05],
    [1, 100, 323, 0.5],
    [1.5, 10, 1.09, 0.005],
    [1.5, 20, 4.07, 0.005],
    [1.5, 50, 24.3, 0.05],
    [1.5, 100, 96.4, 0.05],
    [1.5, 300, 865, 0.5],
    [3, 10, 0.39, 0.005],
    [3, 20, 0.94, 0.005],
    [3, 50, 3.59, 0.005],
    [3, 100, 12.6, 0.05],
    [3, 300, 109, 0.5],
  ])('film %d mm, wave %d mm: %d', (film_mm, wave_mm, expected, half) => {
    expect(Math.abs(thetaToLevel(wave_mm / 1000, film_mm / 1000, 0.01) - expected)).toBeLessThanOrEqual(half);
  });
});

describe('worked examples', () => {
  it('trowel marks 10 mm apart in 1.5 mm at 5 Pa s: 0.8489 1/s, 1 % after 5.4 s', () => {
    expect(orchardRate(0.01, 0.0015) / 5).toBeCloseTo(0.8489, 4);
    expect(thetaToLevel(0.01, 0.0015, 0.01) * 5).toBeCloseTo(5.4, 1);
  });
  it('brush paint, 50 um, 2 mm, 0.03 N/m, 0.5 Pa s, hardly any weight: 0.24352 1/s, half-life 2.846 s', () => {
    const light = { density_kg_m3: 1e-9, surfaceTension_N_m: 0.03 };
    const rate_per_s = orchardRateThin(0.002, 0.00005, light) / 0.5;
    expect(rate_per_s).toBeCloseTo(0.24352, 5);
    expect(Math.LN2 / rate_per_s).toBeCloseTo(2.846, 3);
  });
  it('last touch under 5 exp(t/1200) Pa s in 1.5 mm: 1094 s for 100 mm, 6479 s for 10 mm', () => {
    const time_s = [0, 60000];
    const series = thetaOfSeries(
      time_s,
      time_s.map((t) => 5 * Math.exp(t / 1200)),
    );
    expect(lastTouchTime(series, 0.1, 0.0015, 0.01)).toBeCloseTo(1094, -0.5);
    expect(lastTouchTime(series, 0.01, 0.0015, 0.01)).toBeCloseTo(6479, -0.5);
    const exact = 1200 * Math.log((240 * orchardRate(0.1, 0.0015)) / Math.log(100));
    expect(lastTouchTime(series, 0.1, 0.0015, 0.01)).toBeCloseTo(exact, 6);
    expect(lastTouchTheta(thetaExponentialTotal(5, 1200), 0.1, 0.0015, 0.01)).toBeCloseTo(
      240 * -Math.expm1(-exact / 1200),
      6,
    );
  });
  it('longest levelling wave is where the budget to level equals the budget left', () => {
    const wave_m = longestLevellingWave(0.0015, 24, 0.01);
    expect(thetaToLevel(wave_m, 0.0015, 0.01)).toBeCloseTo(24, 9);
    expect(wave_m).toBeCloseTo(0.05, 3);
  });
});

describe('weight against surface tension', () => {
  it.each([
    [0.035, 11.32],
    [0.03, 10.48],
    [0.045, 12.83],
  ])('at %d N/m they pull alike on waves of %d mm', (surfaceTension_N_m, wave_mm) => {
    expect(2000 * Math.PI * capillaryLength_m({ density_kg_m3: 1100, surfaceTension_N_m })).toBeCloseTo(
      wave_mm,
      2,
    );
  });
  it.each([
    [5, 16],
    [10, 44],
    [20, 76],
    [50, 95],
  ])('on a wave of %d mm weight does %d %%', (wave_mm, percent) => {
    const weightOnly = { density_kg_m3: 1100, surfaceTension_N_m: 0 };
    const share = orchardRate(wave_mm / 1000, 0.0015, weightOnly) / orchardRate(wave_mm / 1000, 0.0015);
    expect(Math.abs(share * 100 - percent)).toBeLessThanOrEqual(0.5);
  });
  it('from 0.030 to 0.045 N/m a 10 mm mark levels 26 % faster', () => {
    const at = (surfaceTension_N_m: number) =>
      orchardRate(0.01, 0.0015, { density_kg_m3: 1100, surfaceTension_N_m });
    expect(at(0.045) / at(0.03)).toBeCloseTo(1.26, 2);
  });
});
