import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faceFilm, jeffreysThickness_m, sagLength_m, thetaLeftForFaceMean } from './face.ts';

const height = fc.double({ min: 0.005, max: 0.5, noNaN: true });
const applied = fc.double({ min: 1e-5, max: 0.005, noNaN: true });
const budget = fc.double({ min: 0, max: 2000, noNaN: true });

describe('film on a face', () => {
  it('holds all of the coat when no flow is left', () => {
    const film = faceFilm({ height_m: 0.04, appliedThickness_m: 0.001, thetaLeft_per_Pa: 0 });
    expect(film).toEqual({
      retained_m2: 4e-5,
      drained_m2: 0,
      mean_m: 0.001,
      middle_m: 0.001,
      bottom_m: 0.001,
      thinnedTo_m: 0,
    });
  });

  it('never holds more than was put on, less with more flow, more with more put on', () => {
    fc.assert(
      fc.property(height, applied, budget, (height_m, appliedThickness_m, thetaLeft_per_Pa) => {
        const film = faceFilm({ height_m, appliedThickness_m, thetaLeft_per_Pa });
        const poured = height_m * appliedThickness_m;
        expect(film.retained_m2).toBeGreaterThan(0);
        expect(film.retained_m2).toBeLessThanOrEqual(poured * (1 + 1e-12));
        expect(film.retained_m2 + film.drained_m2).toBeCloseTo(poured, 12);
        expect(film.middle_m).toBeLessThanOrEqual(film.bottom_m);
        const more = faceFilm({ height_m, appliedThickness_m, thetaLeft_per_Pa: thetaLeft_per_Pa + 10 });
        expect(more.retained_m2).toBeLessThanOrEqual(film.retained_m2 * (1 + 1e-12));
        const thick = faceFilm({ height_m, appliedThickness_m: appliedThickness_m * 1.3, thetaLeft_per_Pa });
        expect(thick.retained_m2).toBeGreaterThanOrEqual(film.retained_m2 * (1 - 1e-12));
      }),
    );
  });

  it('forgets what was put on once thinning has reached the bottom', () => {
    const of = (appliedThickness_m: number) =>
      faceFilm({ height_m: 0.038, appliedThickness_m, thetaLeft_per_Pa: 240 }).mean_m;
    expect(of(0.001)).toBe(of(0.003));
  });

  it('integrates its own thickness profile', () => {
    for (const thetaLeft_per_Pa of [1, 5, 240]) {
      const film = faceFilm({ height_m: 0.05, appliedThickness_m: 0.001, thetaLeft_per_Pa });
      let sum = 0;
      const n = 20000;
      for (let i = 0; i < n; i++)
        sum += Math.min(0.001, jeffreysThickness_m((0.05 * (i + 0.5)) / n, thetaLeft_per_Pa)) * (0.05 / n);
      expect(Math.abs(sum / film.retained_m2 - 1)).toBeLessThan(1e-5);
    }
  });

  it('finds the budget at which to work the face for a wanted film', () => {
    fc.assert(
      fc.property(
        height,
        applied,
        fc.double({ min: 0.01, max: 0.999, noNaN: true }),
        (height_m, put_m, kept) => {
          const thetaLeft_per_Pa = thetaLeftForFaceMean(height_m, put_m, put_m * kept);
          const mean_m = faceFilm({ height_m, appliedThickness_m: put_m, thetaLeft_per_Pa }).mean_m;
          expect(Math.abs(mean_m / (put_m * kept) - 1)).toBeLessThan(1e-9);
        },
      ),
    );
    expect(() => thetaLeftForFaceMean(0.04, 0.001, 0.002)).toThrow(/meanThickness_m/);
  });

  it('refuses nonsense', () => {
    expect(() => faceFilm({ height_m: 0, appliedThickness_m: 0.001, thetaLeft_per_Pa: 1 })).toThrow(
      /height_m/,
    );
    expect(() => faceFilm({ height_m: 1, appliedThickness_m: 0.001, thetaLeft_per_Pa: -1 })).toThrow(
      /thetaLeft/,
    );
    expect(() => jeffreysThickness_m(0.1, 0)).toThrow(RangeError);
    expect(() => sagLength_m(Number.NaN, 1)).toThrow(RangeError);
  });
});
