import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { edgeRunOffs_m3 } from './edge-run-off.ts';
import { DRY_ARRIS_ANGLE_deg, pinnedOnRoundArris } from './self-damming.ts';

const liquid = { density_kg_m3: 1100, surfaceTension_N_m: 0.035 };
const off = (change: Partial<Parameters<typeof edgeRunOffs_m3>[0]>) =>
  edgeRunOffs_m3({
    edges: [{ length_m: 1.2, arrisRadius_m: 0.003 }],
    area_m2: 0.6,
    film_m: 0.00127,
    thetaDry_per_Pa: 0,
    thetaLeft_per_Pa: 240,
    liquid,
    ...change,
  }).reduce((sum, each) => sum + each, 0);

describe('run-off over edges that stay dry for a while', () => {
  it('loses nothing while the dry arris holds the whole film', () => {
    const film_m = 0.0011;
    expect(pinnedOnRoundArris(DRY_ARRIS_ANGLE_deg, 0.003, liquid).thickness_m).toBeGreaterThan(film_m);
    expect(off({ film_m, thetaDry_per_Pa: 100, thetaLeft_per_Pa: 140 })).toBeCloseTo(
      off({ film_m, thetaLeft_per_Pa: 140 }),
      12,
    );
  });

  it('loses as much as when worked at once where the dry arris holds next to nothing', () => {
    // a wide quarter circle holds about lc^2/(2R) above the angle's own 0.6 mm: a third of this film
    const thick = { film_m: 0.0025, edges: [{ length_m: 1.2, arrisRadius_m: 0.006 }] };
    expect(pinnedOnRoundArris(DRY_ARRIS_ANGLE_deg, 0.006, liquid).thickness_m).toBeLessThan(0.0009);
    const atOnce = off({ ...thick, thetaLeft_per_Pa: 240 });
    expect(off({ ...thick, thetaDry_per_Pa: 240, thetaLeft_per_Pa: 0 }) / atOnce).toBeCloseTo(1, 6);
    expect(off({ ...thick, thetaDry_per_Pa: 120, thetaLeft_per_Pa: 120 }) / atOnce).toBeCloseTo(1, 6);
  });

  it('loses more dry than when the arris holds, less than when worked at once', () => {
    const worked = off({ thetaLeft_per_Pa: 140 });
    const waited = off({ thetaDry_per_Pa: 100, thetaLeft_per_Pa: 140 });
    expect(waited).toBeGreaterThan(worked);
    expect(waited).toBeLessThan(off({ thetaLeft_per_Pa: 240 }));
  });

  it('never gains by waiting more than the budget that was left, and never loses by it, on a film of any thickness', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.0008, max: 0.003, noNaN: true }),
        fc.double({ min: 0.001, max: 0.012, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.double({ min: 20, max: 600, noNaN: true }),
        (film_m, arrisRadius_m, share, theta) => {
          const edges = [{ length_m: 1.2, arrisRadius_m }];
          const left = theta * (1 - share);
          const waited = off({
            edges,
            film_m,
            thetaDry_per_Pa: theta - left,
            thetaLeft_per_Pa: left,
          });
          const without = off({ edges, film_m, thetaLeft_per_Pa: left });
          const atOnce = off({ edges, film_m, thetaLeft_per_Pa: theta });
          expect(waited).toBeGreaterThanOrEqual(without - 1e-15);
          expect(waited).toBeLessThanOrEqual(Math.max(atOnce, without) + 1e-15);
          expect(
            off({ edges, film_m: film_m * 1.1, thetaDry_per_Pa: theta - left, thetaLeft_per_Pa: left }),
          ).toBeGreaterThanOrEqual(waited - 1e-15);
        },
      ),
    );
  });

  it('refuses a negative budget', () => {
    expect(() => off({ thetaDry_per_Pa: 1, thetaLeft_per_Pa: -1 })).toThrow('thetaLeft_per_Pa');
    expect(() => off({ thetaDry_per_Pa: -1 })).toThrow('thetaDry_per_Pa');
  });
});
