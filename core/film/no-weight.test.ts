/** The limit of every flow that weight drives: with next to none, nothing moves, whatever film, slope and budget. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { smallestEscapingBubble_m } from './bubbles.ts';
import { edgeTaper_m } from './edge-profile.ts';
import { faceFilm } from './face.ts';
import { filmMapAtOnce } from './film-map.ts';
import { thetaOfSeries, thetaTotal } from './flow-budget.ts';
import { runOff } from './run-off.ts';
import { tiltEndChange_m, tiltFlux_m2_Pa } from './tilt.ts';

const WEIGHTLESS = { density_kg_m3: 1e-15, surfaceTension_N_m: 0.035 };
const film = fc.double({ min: 0.0003, max: 0.004, noNaN: true });
const theta = fc.double({ min: 1, max: 1200, noNaN: true });
const slope = fc.double({ min: -0.05, max: 0.05, noNaN: true });

describe('without weight', () => {
  it('nothing leaves a top, thins at an edge, sags, tilts or rises', () => {
    fc.assert(
      fc.property(film, theta, slope, (film_m, theta_per_Pa, fall) => {
        const off = runOff({
          thickness_m: film_m,
          thetaLeft_per_Pa: theta_per_Pa,
          edgeLength_m: 3,
          arrisRadius_m: 0.003,
          area_m2: 0.7,
          liquid: WEIGHTLESS,
        });
        expect(off.volume_m3).toBeLessThan(1e-9);
        expect(edgeTaper_m(film_m, theta_per_Pa, 0.9, WEIGHTLESS)).toBeLessThan(1e-6);
        const face = faceFilm({
          height_m: 0.038,
          appliedThickness_m: film_m,
          thetaLeft_per_Pa: theta_per_Pa,
          liquid: WEIGHTLESS,
        });
        expect(face.mean_m / film_m).toBeCloseTo(1, 6);
        expect(tiltEndChange_m(film_m, Math.abs(fall), theta_per_Pa, WEIGHTLESS)).toBeLessThan(1e-8);
        expect(tiltFlux_m2_Pa(film_m, Math.abs(fall), WEIGHTLESS) * theta_per_Pa).toBeLessThan(1e-18);
        expect(smallestEscapingBubble_m(film_m, theta_per_Pa, 'rigid', WEIGHTLESS)).toBeGreaterThan(film_m);
      }),
      { numRuns: 100 },
    );
  });
  it('a map stays as it was poured, on any bench and with every edge open', () => {
    fc.assert(
      fc.property(film, theta, slope, (film_m, theta_per_Pa, fall) => {
        const map = filmMapAtOnce({
          piece: { outline: { shape: 'rectangle', length_m: 0.2, width_m: 0.1 }, cutOuts: [] },
          cell_m: 0.01,
          theta_per_Pa,
          evenFilm_m: film_m,
          edges: { front: { kind: 'wetted' }, left: { kind: 'dry', holds_m: film_m * 1.01 } },
          slope: { x: fall, y: -fall },
          liquid: WEIGHTLESS,
        });
        expect(map.lost_m3 / map.poured_m3).toBeLessThan(1e-9);
        expect(map.thinnest.thickness_m / film_m).toBeCloseTo(1, 9);
        expect(map.thickest.thickness_m / film_m).toBeCloseTo(1, 9);
      }),
      { numRuns: 25 },
    );
  });
});

describe('a thicker liquid, less time', () => {
  it('leave less budget, and with it a map loses and spreads less', () => {
    const times = Array.from({ length: 31 }, (_, i) => 60 * i);
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        fc.double({ min: 1.1, max: 3, noNaN: true }),
        fc.integer({ min: 3, max: 30 }),
        fc.double({ min: 0.0008, max: 0.003, noNaN: true }),
        (start_Pa_s, by, minutes, film_m) => {
          const budget = (first_Pa_s: number, until: number) =>
            thetaTotal(
              thetaOfSeries(
                times.slice(0, until),
                times.slice(0, until).map((time) => first_Pa_s * Math.exp(time / 600)),
              ),
            );
          const map = (theta_per_Pa: number) =>
            filmMapAtOnce({
              piece: { outline: { shape: 'rectangle', length_m: 0.2, width_m: 0.1 }, cutOuts: [] },
              cell_m: 0.01,
              theta_per_Pa,
              puddles: [{ x_m: 0.08, y_m: 0.05, volume_m3: film_m * 0.02, radius_m: 0.03 }],
              edges: { front: { kind: 'wetted' }, left: { kind: 'wetted' } },
            });
          const usual = budget(start_Pa_s, minutes + 1);
          const now = map(usual);
          for (const less of [budget(start_Pa_s * by, minutes + 1), budget(start_Pa_s, minutes)]) {
            expect(less).toBeLessThan(usual);
            const then = map(less);
            expect(then.lost_m3).toBeLessThanOrEqual(now.lost_m3 * (1 + 1e-9));
            expect(then.thickest.thickness_m).toBeGreaterThanOrEqual(now.thickest.thickness_m * (1 - 1e-9));
            expect(then.bareShare).toBeGreaterThanOrEqual(now.bareShare - 1e-12);
          }
        },
      ),
      { numRuns: 25 },
    );
  });
});
