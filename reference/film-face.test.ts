/**
 * Jeffreys 1930 (Proc. Camb. Phil. Soc. 26, 204-205): draining of a vertical face, against a finite-volume solution of
 * h_Theta + (rho g h^3/3)_z = 0 made in this file (within 0.5 %; the numerical film is a first-order smear of the kink) and against worked numbers to their
 * printed digits.
 */
import { describe, expect, it } from 'vitest';
import { faceFilm, jeffreysThickness_m, sagLimitThickness_m, yieldStressToHold_Pa } from '#core/film/face.ts';

const WEIGHT = 1100 * 9.80665;

/** First-order upwind on n cells; explicit steps at 0.9 of the limit. Returns what stays, m2. */
function drained(height_m: number, applied_m: number, theta: number, n: number): number {
  const cell = height_m / n;
  const film = new Array<number>(n).fill(applied_m);
  const step = (0.9 * cell) / (WEIGHT * applied_m ** 2);
  for (let spent = 0; spent < theta; spent += step) {
    const by = Math.min(step, theta - spent);
    let from = 0;
    for (let i = 0; i < n; i++) {
      const out = (WEIGHT * film[i]! ** 3) / 3;
      film[i]! += (by / cell) * (from - out);
      from = out;
    }
  }
  return film.reduce((sum, h) => sum + h * cell, 0);
}

describe('draining against a kinematic-wave solution', () => {
  it.each([
    [0.038, 0.001, 10],
    [0.038, 0.001, 60],
    [0.038, 0.0005, 10],
    [0.076, 0.0007, 5],
  ])('face %d m, %d m put on, Theta %d', (height_m, appliedThickness_m, thetaLeft_per_Pa) => {
    const exact = faceFilm({ height_m, appliedThickness_m, thetaLeft_per_Pa }).retained_m2;
    const numeric = drained(height_m, appliedThickness_m, thetaLeft_per_Pa, 800);
    expect(Math.abs(numeric / exact - 1)).toBeLessThan(0.005);
  });
});

describe('film left at a depth, mm', () => {
  it.each([
    [38, 20, 0.4197],
    [38, 60, 0.2423],
    [38, 240, 0.1212],
    [38, 600, 0.0766],
    [19, 20, 0.2968],
    [19, 60, 0.1713],
    [19, 240, 0.0857],
    [19, 600, 0.0542],
    [76, 20, 0.5935],
    [76, 60, 0.3427],
    [76, 240, 0.1713],
    [76, 600, 0.1084],
    [38, 24, 0.383],
  ])('%d mm down, Theta %d', (depth_mm, theta, film_mm) => {
    const digits = film_mm === 0.383 ? 3 : 4;
    const found = jeffreysThickness_m(depth_mm / 1000, theta) * 1000;
    expect(Math.abs(found - film_mm)).toBeLessThanOrEqual(0.51 * 10 ** -digits);
  });
});

describe('what a 38 mm face retains, mm2', () => {
  it.each([
    [1, 10, 15.036],
    [1, 60, 6.138],
    [1, 240, 3.069],
    [0.5, 10, 14.505],
  ])('%d mm put on, Theta %d', (applied_mm, thetaLeft_per_Pa, retained) => {
    const film = faceFilm({ height_m: 0.038, appliedThickness_m: applied_mm / 1000, thetaLeft_per_Pa });
    expect(film.retained_m2 * 1e6).toBeCloseTo(retained, 3);
  });
});

describe('sag', () => {
  it.each([
    [10, 172, 0.5],
    [60, 70.3, 0.05],
    [240, 35.2, 0.05],
  ])('stripe that just crosses 1.6 mm at Theta %d: %d um', (theta, film_um, half) => {
    expect(Math.abs(sagLimitThickness_m(0.0016, theta) * 1e6 - film_um)).toBeLessThanOrEqual(half);
  });
  it.each([
    [0.2, 2.16],
    [0.5, 5.39],
    [1, 10.79],
    [1.5, 16.18],
  ])('yield stress to hold %d mm: %d Pa', (film_mm, yield_Pa) => {
    expect(yieldStressToHold_Pa(film_mm / 1000)).toBeCloseTo(yield_Pa, 2);
  });
});
