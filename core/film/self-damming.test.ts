import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { capillaryLength_m } from './constants.ts';
import { pinnedOnRoundArris, pinnedThickness_m, wettingLimit_m } from './self-damming.ts';

describe('dry arris', () => {
  it('of no radius is the sharp one, and a rounder one holds less but never less than a flat', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 90, noNaN: true }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        fc.double({ min: 1.001, max: 3, noNaN: true }),
        (angle, radius_m, by) => {
          const held = pinnedOnRoundArris(angle, radius_m);
          expect(pinnedOnRoundArris(angle, 0).thickness_m).toBeCloseTo(pinnedThickness_m(angle), 12);
          expect(held.thickness_m).toBeLessThanOrEqual(pinnedThickness_m(angle) + 1e-15);
          expect(held.thickness_m).toBeGreaterThanOrEqual(wettingLimit_m(angle) - 1e-15);
          expect(pinnedOnRoundArris(angle, radius_m * by).thickness_m).toBeLessThanOrEqual(
            held.thickness_m + 1e-15,
          );
          // no turn anywhere on the arris holds more
          for (let psi = 0; psi <= 90; psi += 7.5) {
            const there = wettingLimit_m(angle + psi) - radius_m * (1 - Math.cos((psi * Math.PI) / 180));
            expect(there).toBeLessThanOrEqual(held.thickness_m + 1e-15);
          }
        },
      ),
    );
  });
  it('holds at most two capillary lengths', () => {
    expect(wettingLimit_m(180)).toBeCloseTo(2 * capillaryLength_m(), 15);
    expect(wettingLimit_m(0)).toBe(0);
  });
  it('refuses angles outside', () => {
    expect(() => pinnedThickness_m(-1)).toThrow(/contactAngle_deg/);
    expect(() => pinnedThickness_m(20, 100)).toThrow(/turn_deg/);
    expect(() => pinnedOnRoundArris(20, -0.001)).toThrow(/arrisRadius_m/);
    expect(() => wettingLimit_m(20, { density_kg_m3: 0, surfaceTension_N_m: 0.03 })).toThrow(/density_kg_m3/);
  });
});
