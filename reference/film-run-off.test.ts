/**
 * Run-off over a free edge, solved three ways in this file: the similarity equation (F^3 F')' + xi F'/2 = 0 by Runge-Kutta, the
 * partial equation h_T = (h^3 h_x)_x by finite volumes, and the same in two dimensions on a rectangle. The constant 0.36832 and the profile
 * have no published copy that we found; constant within 1e-4 (ordinary) and 1 % (partial), table within 0.0005, plates within 0.005.
 */
import { describe, expect, it } from 'vitest';
import { arrisBarrier_m } from '#core/film/arris.ts';
import {
  EDGE_LOSS_CONSTANT,
  edgeLossConstant,
  edgeProfile,
  edgeTaper_m,
  freeEdgeLoss_m2,
} from '#core/film/edge-profile.ts';
import { plateKeptShare, plateLimit, plateScale_m } from '#core/film/plate-limit.ts';
import { runOff } from '#core/film/run-off.ts';

/**
 * Integrates u'' = -xi u'/(2 F^3), u = F^4/4, from a wall film F(0) and wall flux q, in the variable s = xi^(1/4)-like small steps;
 * returns F at the points asked for and far out.
 */
function shoot(
  wallFilm: number,
  flux: number,
  reach: number,
  points: readonly number[],
): { far: number; at: number[] } {
  const start = wallFilm === 0 ? 1e-9 : 0;
  let xi = start;
  let u = wallFilm ** 4 / 4 + flux * start;
  let v = flux;
  const film = (w: number): number => (4 * w) ** 0.25;
  const curve = (x: number, w: number, slope: number): number => (-x * slope) / (2 * film(w) ** 3);
  const stops = [...points, reach];
  const at: number[] = [];
  for (const stop of stops) {
    while (xi < stop) {
      const h = Math.min(stop - xi, Math.max(1e-9, 0.004 * Math.max(xi, wallFilm * 0.01), 0), 0.004);
      const k1u = v;
      const k1v = curve(xi, u, v);
      const k2u = v + (h / 2) * k1v;
      const k2v = curve(xi + h / 2, u + (h / 2) * k1u, k2u);
      const k3u = v + (h / 2) * k2v;
      const k3v = curve(xi + h / 2, u + (h / 2) * k2u, k3u);
      const k4u = v + h * k3v;
      const k4v = curve(xi + h, u + h * k3u, k4u);
      u += (h / 6) * (k1u + 2 * k2u + 2 * k3u + k4u);
      v += (h / 6) * (k1v + 2 * k2v + 2 * k3v + k4v);
      xi = stop - xi - h < 1e-15 ? stop : xi + h;
    }
    at.push(film(u));
  }
  return { far: at.pop()!, at };
}

describe('the similarity equation', () => {
  // Any wall flux solves it for some far film; F -> F/far, xi -> xi/far^1.5 brings that to 1.
  const far = shoot(0, 0.2, 12, []).far;
  it('gives the loss constant', () => {
    expect(Math.abs((2 * 0.2) / far ** 2.5 - EDGE_LOSS_CONSTANT)).toBeLessThan(1e-4);
  });
  it('gives the profile, at and between the points of the table', () => {
    const points = [0.005, 0.03, 0.1, 0.25, 0.37, 0.5, 0.7, 0.9, 1, 1.4, 1.5, 2, 2.9, 3.7];
    const { at } = shoot(
      0,
      0.2,
      12,
      points.map((xi) => xi * far ** 1.5),
    );
    for (const [i, xi] of points.entries())
      expect(Math.abs(edgeProfile(xi) - at[i]! / far)).toBeLessThan(5e-4);
  });
  it('gives the loss constant with a film on the arris', () => {
    for (const flux of [0.02, 0.1, 0.5, 2, 8, 30]) {
      const limit = shoot(1, flux, 10 * Math.max(1, (5.43 * flux) ** 0.6), []).far;
      expect(Math.abs(edgeLossConstant(1 / limit) - (2 * flux) / limit ** 2.5)).toBeLessThan(5e-4);
    }
  });
  it.each([
    [0.1, 0.5193],
    [0.25, 0.6486],
    [0.5, 0.7609],
    [1, 0.8761],
    [1.5, 0.9352],
    [2, 0.9675],
  ])('F(%d) = %d', (xi, film) => {
    expect(Math.abs(edgeProfile(xi) - film)).toBeLessThanOrEqual(0.51e-4);
  });
  it.each([
    [0, 0.3683],
    [0.2, 0.3669],
    [0.4, 0.3503],
    [0.5, 0.3293],
    [0.6, 0.2962],
    [0.7, 0.2486],
    [0.8, 0.1846],
    [0.9, 0.1023],
  ])('with %d of the film on the arris the constant is %d', (held, constant) => {
    expect(edgeLossConstant(held)).toBeCloseTo(constant, 4);
  });
});

/** Share lost by a strip or rectangle (half sides 1 by `long`), implicit in time by line sweeps would be faster; explicit is plain. */
function lostShare(nx: number, long: number | undefined, spread: number): number {
  const ny = long === undefined ? 1 : Math.round(nx * long);
  const dx = 1 / nx;
  const h = new Float64Array(nx * ny).fill(1);
  const w = new Float64Array(nx * ny);
  const most = (long === undefined ? 0.4 : 0.2) * dx * dx;
  let spent = 0;
  while (spent < spread) {
    const by = Math.min(most, spread - spent);
    for (let i = 0; i < h.length; i++) w[i] = h[i]! ** 4 / 4;
    for (let j = 0; j < ny; j++)
      for (let i = 0; i < nx; i++) {
        const c = j * nx + i;
        let flow = (i === 0 ? -2 * w[c]! : w[c - 1]! - w[c]!) + (i + 1 < nx ? w[c + 1]! - w[c]! : 0);
        if (long !== undefined)
          flow += (j === 0 ? -2 * w[c]! : w[c - nx]! - w[c]!) + (j + 1 < ny ? w[c + nx]! - w[c]! : 0);
        h[c]! += (by / (dx * dx)) * flow;
      }
    spent += by;
  }
  return 1 - h.reduce((sum, v) => sum + v, 0) / h.length;
}

describe('the partial equation', () => {
  it('loses 0.3683 h0 sqrt(D) over a free edge, within 1 %', () => {
    expect(Math.abs(lostShare(400, undefined, 0.04) / (EDGE_LOSS_CONSTANT * 0.2) - 1)).toBeLessThan(0.01);
  });
  it.each([
    [1, 0.04],
    [1, 0.25],
    [1, 1],
    [1.5, 0.25],
    [2, 0.09],
    [2, 0.36],
    [3, 0.5],
  ])('agrees with the plate tables: aspect %d, D/a^2 %d', (aspect, spread) => {
    // 1 m half side, thickness and budget chosen for the spread
    const theta = (3 * spread) / (1100 * 9.80665 * 0.01 ** 3);
    const kept = plateKeptShare(0.01, theta, 1, { aspect });
    expect(Math.abs(1 - lostShare(40, aspect, spread) - kept)).toBeLessThan(0.005);
  });
});

describe('worked numbers at Theta 240', () => {
  it.each([
    [1, 10.82, 34.3],
    [1.5, 29.82, 63.0],
    [2, 61.2, 97.0],
    [3, 168.7, 178.2],
  ])('%d mm loses %d mL/m and is at 90 %% %d mm in', (film_mm, loss_mL_m, depth_mm) => {
    expect(Math.abs(freeEdgeLoss_m2(film_mm / 1000, 240) * 1e6 - loss_mL_m)).toBeLessThanOrEqual(
      loss_mL_m > 60 ? 0.05 : 0.005,
    );
    expect(edgeTaper_m(film_mm / 1000, 240) * 1000).toBeCloseTo(depth_mm, 1);
  });
  it.each([
    [1, 1.369],
    [2, 1.06],
    [3, 0.844],
    [6, 0.499],
  ])('an arris of %d mm dams %d mm', (radius_mm, film_mm) => {
    expect(arrisBarrier_m(radius_mm / 1000) * 1000).toBeCloseTo(film_mm, 3);
  });
  // Solved again here on 80 by 160 cells; a solution elsewhere on a coarser grid printed 9.3 % and 24.7 %.
  it.each([
    [0.0015, 0.093, 0.099],
    [0.003, 0.247, 0.281],
  ])(
    'a 0.6 by 1.2 m top and a pour of %d m: the loss is that of a fine grid, near %d; perimeter formula %d',
    (film_m, coarse, perimeter) => {
      const lost = 1 - plateKeptShare(film_m, 240, 0.3, { aspect: 2 });
      const spread = (1100 * 9.80665 * film_m ** 3 * 240) / 3 / 0.3 ** 2;
      expect(Math.abs(lost - lostShare(80, 2, spread))).toBeLessThan(0.001);
      expect(Math.abs(lost - coarse)).toBeLessThan(0.003);
      expect((freeEdgeLoss_m2(film_m, 240) * 3.6) / (0.72 * film_m)).toBeCloseTo(perimeter, 3);
    },
  );
  it('carries at most 3.884 mm in the middle and 3.04 mm on average', () => {
    expect(plateScale_m(0.3, 240) * 1000).toBeCloseTo(4.707, 4);
    const limit = plateLimit(0.3, 240, { aspect: 2 });
    expect(limit.centre_m * 1000).toBeCloseTo(3.884, 3);
    expect(Math.abs(limit.mean_m * 1000 - 3.037)).toBeLessThan(0.01);
  });
  it.each([
    [1.5, 1, 1.9],
    [1.5, 2, 14.5],
    [1.5, 3, 20.3],
    [1.5, 6, 24.2],
    [2.5, 2, 87.7],
    [2.5, 3, 93.6],
    [2.5, 6, 98.0],
    [0.8, 3, 1.0],
    [0.8, 6, 3.2],
  ])('%d mm over an arris of %d mm loses %d mL/m', (film_mm, radius_mm, loss_mL_m) => {
    const answer = runOff({
      thickness_m: film_mm / 1000,
      thetaLeft_per_Pa: 240,
      edgeLength_m: 1,
      arrisRadius_m: radius_mm / 1000,
      area_m2: 100,
    });
    // the shares are tabulated to two decimals: half a hundredth of the free loss, and the 0.05 of the printed loss
    const free = freeEdgeLoss_m2(film_mm / 1000, 240) * 1e6;
    expect(Math.abs(answer.lossPerMetre_m2 * 1e6 - loss_mL_m)).toBeLessThanOrEqual(0.0051 * free + 0.05);
  });
});
