import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  puddleRadius_m,
  puddleStartTheta_per_Pa,
  puddleStopRadius_m,
  puddleThickness_m,
  ridgeHalfWidth_m,
} from './puddle.ts';

const volume = fc.double({ min: 1e-6, max: 2e-3, noNaN: true });
const budget = fc.double({ min: 0.1, max: 3000, noNaN: true });

describe('puddle', () => {
  it('holds the volume poured', () => {
    const radius_m = puddleRadius_m(5e-5, 100);
    const n = 40000;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const r = (radius_m * (i + 0.5)) / n;
      sum += puddleThickness_m(r, 5e-5, 100) * 2 * Math.PI * r * (radius_m / n);
    }
    expect(Math.abs(sum / 5e-5 - 1)).toBeLessThan(1e-5);
    expect(puddleThickness_m(radius_m * 1.001, 5e-5, 100)).toBe(0);
  });
  it('grows with volume and with flow; its radius is its start budget turned round', () => {
    fc.assert(
      fc.property(volume, budget, (v, theta) => {
        const radius_m = puddleRadius_m(v, theta);
        expect(puddleRadius_m(v * 1.1, theta)).toBeGreaterThan(radius_m);
        expect(puddleRadius_m(v, theta * 1.1)).toBeGreaterThan(radius_m);
        expect(Math.abs(puddleStartTheta_per_Pa(radius_m, v) / theta - 1)).toBeLessThan(1e-9);
      }),
    );
  });
  it('changes its radius by 8 % when the viscosity doubles', () => {
    expect(puddleRadius_m(1e-4, 60) / puddleRadius_m(1e-4, 30)).toBeCloseTo(2 ** (1 / 8), 12);
  });
  it('refuses nonsense', () => {
    expect(() => puddleRadius_m(0, 10)).toThrow(/volume_m3/);
    expect(() => puddleThickness_m(-1, 1e-4, 10)).toThrow(/distance_m/);
    expect(() => ridgeHalfWidth_m(1e-4, Number.NaN)).toThrow(/theta_per_Pa/);
    expect(() => puddleStopRadius_m(1e-4, 0)).toThrow(/contactAngle_deg/);
  });
});
