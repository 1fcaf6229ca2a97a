/**
 * Free convection and radiation.
 *  - Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, worked examples as used in the tests of "polykin"
 *    (tests/hmt/test_correlations.py, read): vertical Ra 1.813e9, Pr 0.69 -> Nu 147; horizontal Ra 1.38e8, k 0.0265, L 0.375 ->
 *    h 5.47 (up), 2.07 (down).
 *  - Totals with emissivity 0.92 in air of 24 C: computed beforehand with tabulated air properties; our Sutherland properties agree to 0.1
 *    W/m2/K (their rounding is 0.05).
 *  - Air properties: Incropera table A.4 (from memory), 1.5 %. Its densities (1.1614 kg/m3 at 300 K) are those of 1 bar, ours are of
 *    1 atm, so its kinematic viscosities are divided by 1.01325.
 * Precision: as stated at each.
 */
import { describe, expect, it } from 'vitest';
import { woodConductivity } from '#core/resin/boards.ts';
import {
  airAt,
  nusseltDown,
  nusseltUp,
  nusseltVertical,
  radiationCoefficient,
  surfaceCoefficient,
} from '#core/resin/convection.ts';

describe('Nusselt numbers', () => {
  it('of a vertical plate: 147 (3 digits)', () => {
    expect(Math.round(nusseltVertical(1.813e9, 0.69))).toBe(147);
  });

  it('of a plate facing up and down: h 5.47 and 2.07, to 0.01 (the book rounds the Nusselt number on the way)', () => {
    expect(Math.abs((nusseltUp(1.38e8) * 0.0265) / 0.375 - 5.47)).toBeLessThan(0.01);
    expect(Math.abs((nusseltDown(1.38e8) * 0.0265) / 0.375 - 2.07)).toBeLessThan(0.01);
  });
});

describe('radiation, emissivity 0.92', () => {
  it.each([
    [297, 5.47],
    [310, 6.22],
    [330, 7.5],
    [350, 8.95],
  ])('at %i K', (mean, h) => {
    expect(Math.abs(radiationCoefficient(mean, mean) - h)).toBeLessThan(0.0051);
  });
});

describe('air', () => {
  it.each([
    [250, 22.3e-3, 11.44e-6, 0.72],
    [300, 26.3e-3, 15.89e-6, 707e-3],
    [350, 30.0e-3, 20.92e-6, 0.7],
    [400, 33.8e-3, 26.41e-6, 0.69],
    [450, 37.3e-3, 32.39e-6, 0.686],
  ])('at %i K', (T, k, nu, prandtl) => {
    const air = airAt(T);
    expect(Math.abs(air.conductivity_W_mK / k - 1)).toBeLessThan(0.015);
    expect(Math.abs((air.kinematicViscosity_m2_s * 1.01325) / nu - 1)).toBeLessThan(0.015);
    expect(Math.abs(air.prandtl / prandtl - 1)).toBeLessThan(0.02);
  });
});

describe('convection and radiation together in air of 24 C, to 0.1 W/m2/K', () => {
  const rows = [
    ['up', 0.1, [7.9, 9.3, 10.1, 11.2, 12.7]],
    ['up', 0.25, [7.5, 8.5, 9.5, 10.8, 12.5]],
    ['side', 0.1, [7.9, 9.1, 10.0, 11.1, 12.7]],
  ] as const;
  it.each(rows)('facing %s, %f m', (facing, length, row) => {
    [1, 5, 10, 20, 40].forEach((excess, i) => {
      const h = surfaceCoefficient(facing, 297.15 + excess, 297.15, length);
      expect(Math.abs(h - row[i]!), `${facing} ${length} ${excess}`).toBeLessThan(0.1);
    });
  });
});

describe('wood across the grain (Wood Handbook eq. 4-15)', () => {
  it('is 0.136 at G 0.5 and 10 %, 0.182 at G 0.72 (3 digits)', () => {
    expect(Math.abs(woodConductivity(0.5, 10) - 0.136)).toBeLessThan(0.00051);
    expect(Math.abs(woodConductivity(0.72, 8) - 0.182)).toBeLessThan(0.0011);
  });
});
