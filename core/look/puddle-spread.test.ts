import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { areaVolume_m3, puddleSpread, volumeArea_m2 } from './puddle-spread.ts';

const volume = fc.double({ min: 2e-6, max: 4e-4, noNaN: true });
const film = fc.double({ min: 5e-4, max: 3e-3, noNaN: true });
const theta = fc.double({ min: 20, max: 2000, noNaN: true });

describe('a puddle of the look', () => {
  test('an ounce in 4 fl oz/sq ft is 36 square inches', () => {
    const ounce_m3 = 29.5735295625e-6;
    const film_m = (4 * ounce_m3) / 0.09290304;
    expect(volumeArea_m2(ounce_m3, film_m) / 0.0254 ** 2).toBeCloseTo(36, 9);
  });

  test('area to volume and back is the same', () => {
    fc.assert(
      fc.property(volume, film, (v, h) => {
        expect(areaVolume_m3(volumeArea_m2(v, h), h) / v).toBeCloseTo(1, 12);
      }),
    );
  });

  test('flows further the longer it has, on a dry board and on a wet coat', () => {
    fc.assert(
      fc.property(
        volume,
        film,
        theta,
        fc.constantFrom(0, 1e-3),
        (volume_m3, film_m, theta_per_Pa, under_m) => {
          const spread = (more: number) =>
            puddleSpread({ volume_m3, film_m, theta_per_Pa: theta_per_Pa * more, under_m });
          expect(spread(4).reached_m).toBeGreaterThanOrEqual(spread(1).reached_m * (1 - 1e-9));
          expect(spread(1).level_m ** 2 * Math.PI).toBeCloseTo(spread(1).area_m2, 9);
        },
      ),
      { numRuns: 25 },
    );
  });

  test('30 mL on a dry board with a budget of 240 levels by itself, half a litre does not', () => {
    const spread = (volume_m3: number) =>
      puddleSpread({ volume_m3, film_m: 1.3e-3, theta_per_Pa: 240, under_m: 0 });
    expect(spread(30e-6).reached_m).toBeCloseTo(0.0994, 3);
    expect(spread(30e-6).share).toBeGreaterThan(1);
    expect(spread(500e-6).share).toBeLessThan(0.85);
  });

  test('needs a volume, a film and time', () => {
    const all = { volume_m3: 1e-5, film_m: 1e-3, theta_per_Pa: 100, under_m: 0 };
    for (const wrong of [{ volume_m3: 0 }, { film_m: 0 }, { theta_per_Pa: 0 }, { under_m: 1 }])
      expect(() => puddleSpread({ ...all, ...wrong })).toThrow(RangeError);
  });
});
