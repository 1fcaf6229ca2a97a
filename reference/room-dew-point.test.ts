/**
 * Dew point and saturation pressure: WMO Guide to Instruments (WMO-No. 8, Annex 4.B) worked here from its formula, printed to
 * 0.1 K; ASHRAE Handbook of Fundamentals 2017 saturation pressures (as kept in the tests of an open psychrometric library), to 0.1 % at 5 C,
 * 0.3 % at 25 C and 0.5 % at 50 C, which is the known offset of the Magnus form (it cancels in the dew point); dew points of the ASHRAE formulation to 0.02 K; published field examples (charts read to 1 K) to their digits.
 */
import { describe, expect, it } from 'vitest';
import { blushGate } from '#core/room/blush-gate.ts';
import { dewPoint_K, relativeHumidityForMargin, saturationVapourPressure_Pa } from '#core/room/dew-point.ts';

const dew_C = (air_C: number, percent: number): number => dewPoint_K(air_C + 273.15, percent / 100) - 273.15;

describe('WMO dew points, C', () => {
  it.each([
    [20, [6.0, 9.3, 12.0, 14.4, 16.4, 17.4, 18.3]],
    [24, [9.6, 12.9, 15.8, 18.2, 20.3, 21.3, 22.3]],
    [15, [1.5, 4.7, 7.3, 9.6, 11.6, 12.5, 13.4]],
    [30, [14.9, 18.4, 21.4, 23.9, 26.2, 27.2, 28.2]],
  ] as const)('air at %d C, 40 to 90 %%', (air_C, expected) => {
    for (const [i, percent] of [40, 50, 60, 70, 80, 85, 90].entries())
      expect(Math.abs(dew_C(air_C, percent) - expected[i]!)).toBeLessThanOrEqual(0.0501);
  });
});

describe('ASHRAE', () => {
  it.each([
    [5, 872.6, 0.001],
    [25, 3169.7, 0.0035],
    [50, 12351.3, 0.005],
  ])('saturation at %d C is %d Pa', (t_C, pressure_Pa, within) => {
    expect(Math.abs(saturationVapourPressure_Pa(t_C + 273.15) / pressure_Pa - 1)).toBeLessThan(within);
  });
  it.each([
    [20, 50, 9.27],
    [20, 60, 12.01],
    [20, 70, 14.37],
    [21, 50, 10.19],
    [23, 50, 12.03],
    [25, 50, 13.86],
    [25, 60, 16.7],
    [25, 80, 21.309],
    [30, 70, 23.93],
    [15, 50, 4.67],
  ])('dew point of %d C, %d %%: %d C', (air_C, percent, expected) => {
    expect(Math.abs(dew_C(air_C, percent) - expected)).toBeLessThan(0.02);
  });
});

describe('published examples', () => {
  it('30 C and 55 % is 20 C', () => {
    expect(dew_C(30, 55)).toBeCloseTo(19.98, 1);
  });
  it('16 C, 71 %, steel at 13 C: dew point 10.75 C, refused', () => {
    const gate = blushGate({ air_K: 289.15, surface_K: 286.15, relativeHumidity: 0.71 });
    // 10.75 was worked with the Magnus constants of Alduchov and Eskridge 1996; the chart says 11
    expect(Math.abs(gate.dewPoint_K - 273.15 - 10.75)).toBeLessThan(0.02);
    expect(Math.abs(gate.margin_K - 2.25)).toBeLessThan(0.02);
    expect(gate.verdict).toBe('stop');
    expect(gate.reasons[0]?.code).toBe('dew-margin');
  });
  it.each([
    [15, 82.3],
    [20, 82.9],
    [24, 83.3],
    [30, 84.0],
  ])('surface and air at %d C are 3 K above the dew point at %d %%', (t_C, percent) => {
    expect(relativeHumidityForMargin(t_C + 273.15, t_C + 273.15, 3) * 100).toBeCloseTo(percent, 1);
  });
});
