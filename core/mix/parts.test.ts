import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { partShares, ratioError, scaleError, volumeRatio, weighParts } from './parts.ts';

const mix = { volumeA: 2, volumeB: 1, densityA_kg_m3: 1130, densityB_kg_m3: 980 };
const anyMix = fc.record({
  volumeA: fc.double({ min: 1, max: 5, noNaN: true }),
  volumeB: fc.double({ min: 0.5, max: 2, noNaN: true }),
  densityA_kg_m3: fc.double({ min: 1050, max: 1200, noNaN: true }),
  densityB_kg_m3: fc.double({ min: 920, max: 1100, noNaN: true }),
});

describe('ratio by volume and by weight', () => {
  it('turns 2:1 by volume into 100 : 43.4 by weight (980/2260)', () => {
    const shares = partShares(mix);
    expect(shares.bTo100A).toBeCloseTo(43.3628, 4);
    expect(shares.shareA + shares.shareB).toBeCloseTo(1, 15);
    expect(shares.density_kg_m3).toBeCloseTo(1080, 9);
  });

  it('comes back to the ratio by volume', () => {
    fc.assert(
      fc.property(anyMix, fc.double({ min: 0.01, max: 20, noNaN: true }), (any, mass) => {
        const { shareA, shareB } = partShares(any);
        const back = volumeRatio(mass * shareA, mass * shareB, any);
        expect(back / (any.volumeA / any.volumeB)).toBeCloseTo(1, 12);
      }),
    );
  });

  test.each(['volumeA', 'volumeB', 'densityA_kg_m3', 'densityB_kg_m3'] as const)('refuses %s 0', (name) => {
    expect(() => partShares({ ...mix, [name]: 0 })).toThrow(name);
    expect(() => partShares({ ...mix, [name]: Number.NaN })).toThrow(RangeError);
  });
});

describe('weighing on a scale with steps', () => {
  const isSteps = (mass_kg: number, step_kg: number) =>
    Math.abs(mass_kg / step_kg - Math.round(mass_kg / step_kg)) < 1e-6;

  it('never makes less than asked, keeps whole steps, and holds the ratio to a step of each part', () => {
    fc.assert(
      fc.property(
        anyMix,
        fc.double({ min: 0.02, max: 8, noNaN: true }),
        fc.constantFrom(0.0001, 0.001, 0.002, 0.005),
        (any, mass, step) => {
          const { partA_kg, partB_kg, ratioError: error } = weighParts(mass, any, step);
          expect(partA_kg + partB_kg).toBeGreaterThanOrEqual(mass * (1 - 1e-8) - 1e-12);
          expect(partA_kg + partB_kg).toBeLessThanOrEqual(mass + 4 * step + 1e-9);
          expect(isSteps(partA_kg, step) && isSteps(partB_kg, step)).toBe(true);
          const { shareA, shareB } = partShares(any);
          expect(Math.abs(error)).toBeLessThan(step / (mass * shareA) + step / (mass * shareB));
          expect(error).toBeCloseTo(ratioError(partA_kg, partB_kg, any), 9);
        },
      ),
    );
  });

  it('is at least as true to the ratio as rounding both parts up', () => {
    fc.assert(
      fc.property(anyMix, fc.double({ min: 0.02, max: 3, noNaN: true }), (any, mass) => {
        const step = 0.001;
        const { shareA, shareB } = partShares(any);
        const up = (share: number) => Math.ceil((mass * share) / step - 1e-9) * step;
        const plain = Math.abs(ratioError(up(shareA), up(shareB), any));
        expect(Math.abs(weighParts(mass, any, step).ratioError)).toBeLessThanOrEqual(plain + 1e-9);
      }),
    );
  });

  it('finds the exact ratio where whole steps give it: 2:1 by weight, 300 g', () => {
    const even = { volumeA: 2, volumeB: 1, densityA_kg_m3: 1000, densityB_kg_m3: 1000 };
    expect(weighParts(0.3, even, 0.001)).toMatchObject({ partA_kg: 0.2, partB_kg: 0.1, ratioError: 0 });
  });

  it('adds half a step on each part as the scale error: 100 g and 50 g on 1 g', () => {
    expect(scaleError(0.1, 0.05, 0.001)).toBeCloseTo(50.5 / 99.5 / 0.5 - 1, 12);
  });

  it('refuses nothing to weigh and a scale without steps', () => {
    expect(() => weighParts(0, mix, 0.001)).toThrow('mass_kg');
    expect(() => weighParts(1, mix, 0)).toThrow('step_kg');
  });
});
