/**
 * Gel points and proportions.
 *  - Gel point: Stockmayer, J. Polym. Sci. 9 (1952) 69; Macosko and Miller, Macromolecules 9 (1976) 199: aE aH (fe-1)(ge-1) = 1.
 *    Form read in the open step-growth code of "polykin" (stepgrowth/solutions.py); values computed from it beforehand.
 *  - Proportions: AHEW 27.5 on EEW 187 = 14.7 phr for a technical TETA hardener (Polimeros, abstract read); DETA 20.6 g/eq on EEW 200
 *    = 10.3 phr and blends read in trade pages; the row at EEW 190 from molar masses.
 *  - Heat against mix ratio: EEW 195, 103 kJ/eq.
 * Precision: printed digits.
 */
import { describe, expect, it } from 'vitest';
import { blendEquivalent, gelPoint, meanFunctionality, partsPerHundred } from '#core/resin/gel-point.ts';
import { adiabaticRise, heatFromRatio, massRatioOf } from '#core/resin/heat-of-reaction.ts';

describe('gel point', () => {
  it.each([
    [2, 4, 0.8, 0.516, 3],
    [2, 4, 0.9, 0.548, 3],
    [2, 4, 1, 0.5774, 4],
    [2, 4, 1.1, 0.606, 3],
    [2, 4, 1.25, 0.646, 3],
    [2, 5, 1, 0.5, 4],
    [2, 6, 1, 0.4472, 4],
    [2, 5.54, 1, 0.469, 3],
    [1.9, 4, 1, 0.6086, 4],
    [1.8, 4, 1, 0.6455, 4],
    [1.8, 5, 1, 0.559, 3],
    [1.8, 6, 1, 0.5, 3],
  ])('epoxide %f, amine %f, balance %f', (fe, fa, balance, conversion, digits) => {
    expect(Math.abs(gelPoint(fe, fa, balance)! - conversion)).toBeLessThan(0.51 * 10 ** -digits);
  });

  it('agrees with Flory for self-condensation f = 3: 1/(f - 1) of the product', () => {
    expect(gelPoint(3, 3, 1)).toBeCloseTo(0.5, 12);
  });

  it('does not exist where the short side runs out first', () => {
    expect(gelPoint(2, 4, 0.3)).toBeNull();
    expect(gelPoint(2, 4, 3.1)).toBeNull();
  });

  it('takes a diluent by its share of equivalents', () => {
    const diluted = meanFunctionality([
      { functionality: 2, equivalents: 0.9 },
      { functionality: 1, equivalents: 0.1 },
    ]);
    expect(diluted).toBeCloseTo(1.9, 12);
    expect(() => meanFunctionality([{ functionality: 2, equivalents: 0.9 }])).toThrow(/sum of equivalents/);
  });
});

describe('parts per hundred', () => {
  it.each([
    [27.5, 187, 14.706, 3],
    [20.6, 200, 10.3, 1],
    [15.03, 190, 7.91, 2],
    [20.63, 190, 10.86, 2],
    [24.37, 190, 12.83, 2],
    [27.04, 190, 14.23, 2],
    [34.05, 190, 17.92, 2],
    [35.56, 190, 18.72, 2],
    [42.58, 190, 22.41, 2],
    [52.59, 190, 27.68, 2],
    [57.5, 190, 30.3, 1],
  ])('AHEW %f on EEW %f', (amine, epoxy, phr, digits) => {
    expect(Math.abs(partsPerHundred(amine, epoxy) - phr)).toBeLessThan(0.51 * 10 ** -digits);
  });

  it('blends by equivalents: 80 % of 189, 10 % of 183, 10 % filler', () => {
    const blend = blendEquivalent([
      { mass: 80, equivalent_g_eq: 189 },
      { mass: 10, equivalent_g_eq: 183 },
      { mass: 10, equivalent_g_eq: null },
    ]);
    expect(Math.round(blend)).toBe(209);
    expect(Math.abs(partsPerHundred(43, blend) - 20.6)).toBeLessThan(0.051);
    expect(() => blendEquivalent([{ mass: 1, equivalent_g_eq: null }])).toThrow(RangeError);
  });
});

describe('heat of reaction', () => {
  it.each([
    [25, 423],
    [33, 397],
    [43, 369],
    [50, 352],
    [60, 330],
    [75, 302],
    [83, 289],
    [90, 278],
    [100, 264],
  ])('100:%i by mass', (parts, heat) => {
    expect(Math.abs(heatFromRatio(parts / 100) / 1000 - heat)).toBeLessThan(0.51);
  });

  it('of pure systems at 105 kJ/eq, EEW 190', () => {
    const table = [
      [15.03, 512],
      [20.63, 498],
      [24.37, 490],
      [42.58, 451],
      [57.5, 424],
    ] as const;
    for (const [amine, heat] of table) {
      expect(Math.abs(heatFromRatio(amine / 190, 190, 105_000) / 1000 - heat)).toBeLessThan(0.51);
    }
  });

  it('measured 486 J/g and 106.6 kJ/eq for DGEBA/TETA agree to 2.5 %', () => {
    const ratio = heatFromRatio(27.5 / 187, 187, 106_600) / 486_000;
    expect(Math.abs(ratio - 1)).toBeLessThan(0.025);
  });

  it('heats without loss by H/cp', () => {
    for (const [heat, rise] of [
      [300, 158],
      [340, 179],
      [500, 263],
    ] as const) {
      expect(Math.round(adiabaticRise(heat * 1000, 1900))).toBe(rise);
    }
  });

  it('takes the volume ratio to mass with the densities of the parts', () => {
    const ratio = massRatioOf({ volumeA: 2, volumeB: 1, densityA_kg_m3: 1130, densityB_kg_m3: 1000 });
    expect(ratio).toBeCloseTo(0.4425, 4);
  });
});
