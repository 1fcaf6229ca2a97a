import { describe, expect, it } from 'vitest';
import type { CureHistory } from '#core/resin/model.ts';
import { curveOf, pathData, px, readingAt } from './curve.ts';

function history(time_s: number[], viscosity: number[], temperature: number[]): CureHistory {
  const same = Float64Array.from(time_s);
  return {
    time_s: same,
    conversion: same,
    temperature_K: Float64Array.from(temperature),
    conversionRate_per_s: same,
    temperatureRate_K_s: same,
    hottest_K: same,
    viscosity_Pa_s: Float64Array.from(viscosity),
    tg_K: same,
    theta_per_Pa: same,
  };
}

describe('curves', () => {
  const h = history([0, 100, 200], [1, 100, Number.POSITIVE_INFINITY], [296, 300, 298]);

  it('read viscosity on the logarithm and temperature straight', () => {
    expect(readingAt(h, 'viscosity_Pa_s', 50)).toBeCloseTo(10, 9);
    expect(readingAt(h, 'temperature_K', 150)).toBe(299);
  });

  it('have no reading before, after, or where the figure is not finite', () => {
    expect(readingAt(h, 'temperature_K', -1)).toBeNull();
    expect(readingAt(h, 'temperature_K', 201)).toBeNull();
    expect(readingAt(h, 'viscosity_Pa_s', 150)).toBeNull();
    expect(readingAt(history([], [], []), 'temperature_K', 0)).toBeNull();
  });

  it('are moved onto the clock of the plan and cut at the end asked', () => {
    expect(curveOf(h, 'temperature_K', 60, 110)).toEqual([
      { time_s: 60, value: 296 },
      { time_s: 110, value: 298 },
    ]);
    expect(curveOf(h, 'viscosity_Pa_s', 0, 200)).toEqual([
      { time_s: 0, value: 1 },
      { time_s: 100, value: 100 },
    ]);
  });

  it('are drawn without points the eye cannot tell apart', () => {
    const points = [0, 0.2, 0.4, 5, 5.1].map((x) => ({ x, y: 0 }));
    expect(pathData(points)).toBe('M0 0L5 0L5.1 0');
    expect(pathData([])).toBe('');
    expect(px(-0.01)).toBe('0');
  });
});
