import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blushGate } from './blush-gate.ts';
import {
  dewPoint_K,
  relativeHumidityForMargin,
  relativeHumidityFromDewPoint,
  saturationVapourPressure_Pa,
} from './dew-point.ts';

const air = fc.double({ min: 270, max: 320, noNaN: true });
const humidity = fc.double({ min: 0.02, max: 1, noNaN: true });

describe('dew point', () => {
  it('never exceeds the air, rises with humidity, and turns back into the humidity', () => {
    fc.assert(
      fc.property(air, humidity, (air_K, rh) => {
        const dew_K = dewPoint_K(air_K, rh);
        expect(dew_K).toBeLessThanOrEqual(air_K);
        expect(dewPoint_K(air_K, rh * 0.9)).toBeLessThan(dew_K);
        expect(relativeHumidityFromDewPoint(air_K, dew_K)).toBeCloseTo(rh, 10);
      }),
    );
  });
  it('is the air itself when saturated', () => {
    expect(dewPoint_K(293.15, 1)).toBe(293.15);
    expect(saturationVapourPressure_Pa(273.15)).toBeCloseTo(611.2, 9);
  });
  it('leaves the margin asked for', () => {
    const rh = relativeHumidityForMargin(297.15, 293.15, 3);
    expect(293.15 - dewPoint_K(297.15, rh)).toBeCloseTo(3, 9);
    expect(relativeHumidityForMargin(290, 310, 3)).toBe(1);
  });
  it('refuses what is outside, naming it', () => {
    expect(() => dewPoint_K(20, 0.5)).toThrow(/air_K = 20/);
    expect(() => dewPoint_K(293, 50)).toThrow(/relativeHumidity = 50/);
    expect(() => dewPoint_K(293, 0)).toThrow(/relativeHumidity/);
    expect(() => relativeHumidityFromDewPoint(290, 291)).toThrow(/dewPoint_K = 291/);
    expect(() => saturationVapourPressure_Pa(Number.NaN)).toThrow(RangeError);
    expect(() => relativeHumidityForMargin(290, 290, -1)).toThrow(/margin_K/);
  });
});

describe('blush gate', () => {
  const at = (relativeHumidity: number, surface_K = 297.15) =>
    blushGate({ air_K: 297.15, surface_K, relativeHumidity });
  it.each([
    [0.3, 'go', ['humidity-dry']],
    [0.4, 'go', []],
    [0.55, 'go', []],
    [0.65, 'go', []],
    [0.68, 'go', ['humidity-above-ideal']],
    [0.7, 'go', ['humidity-above-ideal']],
    [0.75, 'caution', ['humidity-high']],
    [0.84, 'stop', ['dew-margin', 'humidity-high']],
    [0.9, 'stop', ['dew-margin', 'humidity-stop']],
  ] as const)('air and board at 24 C, humidity %d: %s', (rh, verdict, codes) => {
    const gate = at(rh);
    expect(gate.verdict).toBe(verdict);
    expect(gate.reasons.map((r) => r.code)).toEqual(codes);
  });
  it('stops on a cold board in air that is otherwise fine', () => {
    const gate = at(0.55, 289.15);
    expect(gate.verdict).toBe('stop');
    expect(gate.reasons).toMatchObject([{ code: 'dew-margin', level: 'stop', limit: 3 }]);
    expect(gate.reasons[0]!.value).toBeCloseTo(gate.margin_K, 12);
  });
  it('stops on humidity alone when the board is warm', () => {
    expect(at(0.9, 310).reasons.map((r) => r.code)).toEqual(['humidity-stop']);
  });
  it('refuses a surface in Celsius', () => {
    expect(() => at(0.5, 24)).toThrow(/surface_K = 24/);
  });
});
