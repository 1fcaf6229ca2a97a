/**
 * Thickness map against exact and published answers: Huppert 1982 (J. Fluid Mech. 121, 43; the Barenblatt solution of this equation) for a
 * round puddle and a ridge, with the order of convergence; decay of a small wave by weight in one and two directions (Orchard 1962, thin limit); run-off of a
 * 0.6 by 1.2 m top; a tilted top; the long-time limit of wetted plates. Agreement is stated with each. The benchmarks with surface tension (Zhornitskaya and Bertozzi
 * 2000, Smyth and Hill 1988, Landau and Levich 1942) do not apply: this map is weight alone.
 */
import { describe, expect, it } from 'vitest';
import { specificWeight_N_m3 } from '#core/film/constants.ts';
import { type FilmMapRequest, filmMapAtOnce } from '#core/film/film-map.ts';
import type { EdgeFlow } from '#core/film/map-edges.ts';
import { filmGrid } from '#core/film/map-grid.ts';
import { lineStore } from '#core/film/map-line.ts';
import { type Lines, sweep } from '#core/film/map-sweep.ts';
import { plateLimit } from '#core/film/plate-limit.ts';
import { puddleRadius_m, puddleThickness_m, RIDGE_CONSTANT, ridgeHalfWidth_m } from '#core/film/puddle.ts';
import { tiltEndChange_m } from '#core/film/tilt.ts';

const board = (length_m: number, width_m: number): FilmMapRequest['piece'] => ({
  outline: { shape: 'rectangle', length_m, width_m },
  cutOuts: [],
});
const open: EdgeFlow = { kind: 'wetted' };
const allOpen = { front: open, back: open, left: open, right: open };
const WEIGHT = specificWeight_N_m3();

/** A single line of cells with nothing behind its ends. */
function single(n: number) {
  const lines: Lines = {
    start: Int32Array.of(0),
    count: Int32Array.of(n),
    step: 1,
    before: Int32Array.of(0),
    after: Int32Array.of(1),
  };
  const borders = { open: new Uint8Array(2), held_m: new Float64Array(2), lost_m: new Float64Array(2) };
  return { lines, borders, store: lineStore(n) };
}

describe('a round puddle of 100 mL from Theta 10 to 240: radius 156.06 mm, middle 1.7426 mm', () => {
  const V = 1e-4;
  const run = (cell_m: number, growth: number) => {
    const map = filmMapAtOnce({
      piece: board(0.4, 0.4),
      cell_m,
      growth,
      theta_per_Pa: 230,
      puddles: [{ x_m: 0.2, y_m: 0.2, volume_m3: V, radius_m: puddleRadius_m(V, 10) }],
    });
    let error = 0;
    let front_m = 0;
    for (let row = 0; row < map.rows; row++)
      for (let column = 0; column < map.columns; column++) {
        const away_m = Math.hypot((column + 0.5) * cell_m - 0.2, (row + 0.5) * cell_m - 0.2);
        const film = map.thickness_m[row * map.columns + column]!;
        error += Math.abs(film - puddleThickness_m(away_m, V, 240)) * cell_m * cell_m;
        if (film > 1e-5) front_m = Math.max(front_m, away_m);
      }
    return { error: error / V, middle_mm: map.thickest.thickness_m * 1000, front_mm: front_m * 1000 };
  };
  const runs = [run(0.01, 0.08), run(0.005, 0.04), run(0.0025, 0.02)] as const;
  it('is met within 1 % as the app runs it, and better the finer', () => {
    const app = run(0.0025, 0.03);
    expect(app.error).toBeLessThan(0.01);
    expect(Math.abs(app.middle_mm / 1.7426 - 1)).toBeLessThan(0.003);
    expect(Math.abs(app.front_mm - 156.06)).toBeLessThan(4);
    expect(runs[2].error).toBeLessThan(0.007);
  });
  it('converges with order 0.9 or more when cell and step are halved (first order in Theta, a front with infinite slope)', () => {
    for (const i of [0, 1] as const)
      expect(Math.log2(runs[i].error / runs[i + 1]!.error)).toBeGreaterThan(0.9);
  });
});

it('a small wave on an even film decays with rho g k^2 h^3/3, second order in cells', () => {
  const length_m = 0.2;
  const film_m = 0.0015;
  const rate = (WEIGHT * (Math.PI / length_m) ** 2 * film_m ** 3) / 3;
  const off = (n: number): number => {
    const { lines, borders, store } = single(n);
    const cell_m = length_m / n;
    const h = Float64Array.from(
      { length: n },
      (_, i) => film_m * (1 + 1e-4 * Math.cos((Math.PI * (i + 0.5)) / n)),
    );
    const start = (h[0]! - h[n - 1]!) / 2;
    const steps = 40;
    const by = 1 / rate / steps;
    for (let s = 0; s < steps; s++) sweep(h, lines, borders, (WEIGHT / 3) * (by / (4 * cell_m ** 2)), store);
    // backward Euler is known exactly: what is left is the error of the cells
    return (h[0]! - h[n - 1]!) / 2 / start - (1 + 1 / steps) ** -steps;
  };
  expect(Math.abs(off(40))).toBeLessThan(2e-4);
  expect(Math.log2(off(10) / off(20))).toBeGreaterThan(1.9);
  expect(Math.log2(off(20) / off(40))).toBeGreaterThan(1.9);
});

it('a wave of one and a half lengths in two directions on 0.1 m square decays as weight alone makes it, first order in the step', () => {
  // 1.5 mm, k = (2 pi, pi)/0.1 m, Theta 10: with surface tension the exact ratio is 0.54419, by weight alone 0.5494
  const length_m = 0.1;
  const film_m = 0.0015;
  const k2 = ((2 * Math.PI) / length_m) ** 2 + (Math.PI / length_m) ** 2;
  const exact = Math.exp((-10 * WEIGHT * k2 * film_m ** 3) / 3);
  expect(exact).toBeCloseTo(0.5494, 4);
  const ratio = (steps: number): number => {
    const grid = filmGrid(board(length_m, length_m), length_m / 64);
    const { columns, rows, stride } = grid;
    const h = new Float64Array(grid.inside.length);
    const wave = (column: number, row: number): number =>
      Math.cos((2 * Math.PI * (column + 0.5)) / columns) * Math.cos((Math.PI * (row + 0.5)) / rows);
    const amplitude = (): number => {
      let sum = 0;
      for (let row = 0; row < rows; row++)
        for (let column = 0; column < columns; column++) sum += h[row * stride + column]! * wave(column, row);
      return sum;
    };
    for (let row = 0; row < rows; row++)
      for (let column = 0; column < columns; column++)
        h[row * stride + column] = film_m * (1 + 1e-4 * wave(column, row));
    const start = amplitude();
    const faces = grid.faceEdge.length;
    const borders = {
      open: new Uint8Array(faces),
      held_m: new Float64Array(faces),
      lost_m: new Float64Array(faces),
    };
    const store = lineStore(grid.longestLine);
    const k = (WEIGHT / 3) * (10 / steps / (4 * grid.cellX_m ** 2));
    for (let step = 0; step < steps; step++) {
      sweep(h, grid.alongX, borders, k, store);
      sweep(h, grid.alongY, borders, k, store);
    }
    return amplitude() / start;
  };
  const off = (steps: number): number => Math.abs(ratio(steps) - exact);
  expect(off(400) / exact).toBeLessThan(0.001);
  expect(off(50) / exact).toBeLessThan(0.005);
  // the order by three runs, so that the error of the cells (0.05 %) falls out
  const [coarse, middle, fine] = [ratio(50), ratio(100), ratio(200)];
  expect(Math.log2((coarse - middle) / (middle - fine))).toBeGreaterThan(0.95);
});

it('a ridge of 50 mm2 a side is 57.04 mm wide to each side at Theta 240, within a cell, middle within 0.5 %', () => {
  const n = 160;
  const cell_m = 0.0005;
  const { lines, borders, store } = single(n);
  const start_m = ridgeHalfWidth_m(50e-6, 1);
  const shape = (x: number, wide: number): number => Math.cbrt(Math.max(0, 1 - (x / wide) ** 2));
  const h = Float64Array.from({ length: n }, (_, i) => shape((i + 0.5) * cell_m, start_m));
  const area = h.reduce((sum, v) => sum + v * cell_m, 0);
  for (let i = 0; i < n; i++) h[i]! *= 50e-6 / area;
  for (let theta = 0; theta < 239; ) {
    const by = Math.min(Math.max(2e-4, 0.005 * theta), 239 - theta);
    sweep(h, lines, borders, (WEIGHT / 3) * (by / (4 * cell_m ** 2)), store);
    theta += by;
  }
  expect(Math.abs(h.findIndex((v) => v < 1e-6) * cell_m * 1000 - 57.04)).toBeLessThan(0.6);
  // area = middle * wide * integral of (1 - u^2)^(1/3) = 0.8413
  expect(Math.abs((h[0]! * 0.05704 * 0.8413) / 50e-6 - 1)).toBeLessThan(0.005);
  expect(RIDGE_CONSTANT).toBeCloseTo(1.41124, 5);
});

describe('a 0.6 by 1.2 m top, all edges wetted, Theta 240', () => {
  // a coarse solution elsewhere printed 9.3 and 24.7 %; finer cells here go to 9.5 and 24.9 %
  it.each([
    [0.0015, 0.093],
    [0.003, 0.247],
  ])('%d m loses about %d of it', (evenFilm_m, share) => {
    const at = (cell_m: number) => {
      const map = filmMapAtOnce({
        piece: board(1.2, 0.6),
        cell_m,
        theta_per_Pa: 240,
        evenFilm_m,
        edges: allOpen,
      });
      return map.lost_m3 / map.poured_m3;
    };
    const coarse = at(0.01);
    const fine = at(0.005);
    expect(Math.abs(fine - share)).toBeLessThan(0.0025);
    expect(Math.abs(fine - coarse)).toBeLessThan(0.001);
  });
});

describe('a dammed top of 1.5 m, 1.5 mm, out of level, Theta 240: change at the ends, mm', () => {
  it.each([
    [0.001, 0.0603, -0.059],
    [0.008727, 0.563, -0.464],
  ])('fall %d: %d and %d, within 2 %%', (fall, low_mm, high_mm) => {
    const map = filmMapAtOnce({
      piece: board(1.5, 0.02),
      cell_m: 0.0025,
      theta_per_Pa: 240,
      evenFilm_m: 0.0015,
      slope: { x: fall, y: 0 },
    });
    const gain = (map.thickest.thickness_m - 0.0015) * 1000;
    const loss = (map.thinnest.thickness_m - 0.0015) * 1000;
    expect(Math.abs(gain / low_mm - 1)).toBeLessThan(0.02);
    expect(Math.abs(loss / high_mm - 1)).toBeLessThan(0.02);
    expect(map.thickest.x_m).toBeGreaterThan(map.thinnest.x_m);
    if (fall === 0.001)
      expect(Math.abs(gain / (tiltEndChange_m(0.0015, fall, 240) * 1000) - 1)).toBeLessThan(0.02);
  });
});

describe('long-time limit of wetted plates, within 0.6 %', () => {
  it.each([
    [1.2, 0.6, 2],
    [0.6, 0.6, 1],
    [1.8, 0.6, 3],
  ])('%d by %d m', (length_m, width_m, aspect) => {
    const theta_per_Pa = 240e3;
    const map = filmMapAtOnce({
      piece: board(length_m, width_m),
      cell_m: 0.005,
      theta_per_Pa,
      evenFilm_m: 0.006,
      edges: allOpen,
    });
    const limit = plateLimit(0.3, theta_per_Pa, { aspect });
    expect(Math.abs(map.thickest.thickness_m / limit.centre_m - 1)).toBeLessThan(0.006);
    expect(Math.abs(map.mean_m / limit.mean_m - 1)).toBeLessThan(0.006);
  });
  it('a disc of 0.6 m', () => {
    const theta_per_Pa = 240e3;
    const map = filmMapAtOnce({
      piece: { outline: { shape: 'round', diameter_m: 0.6 }, cutOuts: [] },
      cell_m: 0.005,
      theta_per_Pa,
      evenFilm_m: 0.006,
      edges: { rim: open },
    });
    const limit = plateLimit(0.3, theta_per_Pa, 'disc');
    expect(Math.abs(map.thickest.thickness_m / limit.centre_m - 1)).toBeLessThan(0.006);
    expect(Math.abs(map.mean_m / limit.mean_m - 1)).toBeLessThan(0.006);
  });
});
