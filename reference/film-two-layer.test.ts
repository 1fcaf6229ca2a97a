/**
 * Cells of a dense colour over a light one: the table of core/film/two-layer.ts solved again here from the Stokes equations of two layers (no slip below,
 * free deformable top, no tension between the layers), fastest wave by a search over wavelengths. Agreement within 1 % in growth and 2 % in
 * pitch (the top of the growth curve is flat). Equal fluids give Orchard 1962 to 1e-8. Figures of Zetina, Godinez and Zenit 2015 (PLoS ONE 10(5)
 * e0126135, abstract read): cells only with the denser paint on top.
 */
import { describe, expect, it } from 'vitest';
import { orchardRate } from '#core/film/levelling.ts';
import { cellGrowth, cellsAnswer, mixtureDensity_kg_m3 } from '#core/film/two-layer.ts';

/** Gaussian elimination with exchange of rows. */
function solve(a: number[][], b: number[]): number[] {
  const n = b.length;
  for (let c = 0; c < n; c++) {
    let best = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(a[r]![c]!) > Math.abs(a[best]![c]!)) best = r;
    [a[c], a[best]] = [a[best]!, a[c]!];
    [b[c], b[best]] = [b[best]!, b[c]!];
    for (let r = c + 1; r < n; r++) {
      const f = a[r]![c]! / a[c]![c]!;
      for (let k = c; k < n; k++) a[r]![k]! -= f * a[c]![k]!;
      b[r]! -= f * b[c]!;
    }
  }
  for (let r = n - 1; r >= 0; r--) {
    for (let k = r + 1; k < n; k++) b[r]! -= a[r]![k]! * b[k]!;
    b[r]! /= a[r]![r]!;
  }
  return b;
}

/** W, W', W'', W''' of the four solutions cosh x, sinh x, x cosh x, x sinh x, x = k (z - z0), in units of k. */
function basis(x: number): number[][] {
  const c = Math.cosh(x);
  const s = Math.sinh(x);
  return [
    [c, s, x * c, x * s],
    [s, c, c + x * s, s + x * c],
    [c, s, 2 * s + x * c, 2 * c + x * s],
    [s, c, 3 * c + x * s, 3 * s + x * c],
  ];
}

/** Growth rates of the two surfaces, 1/s, largest first. */
function rates(
  k: number,
  bottom_m: number,
  film_m: number,
  muBottom: number,
  muTop: number,
  drho: number,
  rho = 1100,
  gamma = 0.035,
): [number, number] {
  const answer = (jump: readonly [number, number]): [number, number] => {
    const floor = basis(0);
    const mid = basis(k * bottom_m);
    // the top layer counts from the interface
    const low = basis(0);
    const high = basis(k * (film_m - bottom_m));
    const shear = (b: number[][], mu: number) => b[2]!.map((v, i) => mu * (v + b[0]![i]!));
    const normal = (b: number[][], mu: number) =>
      b[3]!.map((v, i) => mu * k * (-(v - b[1]![i]!) + 2 * b[1]![i]!));
    const z = [0, 0, 0, 0];
    const minus = (list: number[]) => list.map((v) => -v);
    const rows = [
      [...floor[0]!, ...z],
      [...floor[1]!, ...z],
      [...mid[0]!, ...minus(low[0]!)],
      [...mid[1]!, ...minus(low[1]!)],
      [...shear(mid, muBottom), ...minus(shear(low, muTop))],
      [...minus(normal(mid, muBottom)), ...normal(low, muTop)],
      [...z, ...shear(high, muTop)],
      [...z, ...minus(normal(high, muTop))],
    ];
    const x = solve(rows, [0, 0, 0, 0, 0, jump[0], 0, jump[1]]);
    const at = (b: number[], from: number) => b.reduce((sum, v, i) => sum + v * x[from + i]!, 0);
    return [at(mid[0]!, 0), at(high[0]!, 4)];
  };
  const [a, c] = answer([-drho * 9.80665, 0]);
  const [b, d] = answer([0, (rho + drho) * 9.80665 + gamma * k * k]);
  const trace = a + d;
  const root = Math.sqrt(Math.max(0, (trace / 2) ** 2 - (a * d - b * c)));
  return [trace / 2 + root, trace / 2 - root];
}

function fastest(share: number, ratio: number): { pitch: number; c: number } {
  const film_m = 0.002;
  const drho = 50;
  let best = { pitch: 0, c: 0 };
  for (let pitch = 0.4; pitch < 2.5; pitch *= 1.004) {
    const k = (2 * Math.PI) / (pitch * film_m);
    const rate = rates(k, share * film_m, film_m, 5, 5 * ratio, drho)[0];
    const c = (rate * 5) / (drho * 9.80665 * film_m);
    if (c > best.c) best = { pitch, c };
  }
  return best;
}

it('equal fluids: the slowest surface decays as Orchard says', () => {
  for (const wavelength_m of [0.003, 0.01, 0.05]) {
    const rate = rates((2 * Math.PI) / wavelength_m, 0.0007, 0.0015, 5, 5, 0)[1];
    expect(rate / (-orchardRate(wavelength_m, 0.0015) / 5)).toBeCloseTo(1, 8);
  }
});

describe('the table, at its points and between', () => {
  it.each([
    [0.2, 0.2],
    [0.2, 1],
    [0.2, 5],
    [1 / 3, 0.2],
    [1 / 3, 1],
    [1 / 3, 5],
    [0.5, 0.2],
    [0.5, 1],
    [0.5, 5],
    [2 / 3, 0.2],
    [2 / 3, 1],
    [2 / 3, 5],
    [0.8, 0.2],
    [0.8, 1],
    [0.8, 5],
    [0.9, 0.2],
    [0.9, 1],
    [0.9, 5],
  ])('bottom share %d, viscosity ratio %d: growth within 1 %%, pitch within 2 %%', (share, ratio) => {
    const found = cellGrowth(share, ratio);
    const solved = fastest(share, ratio);
    expect(Math.abs(found.growth / solved.c - 1)).toBeLessThan(0.01);
    expect(Math.abs(found.pitchOverFilm / solved.pitch - 1)).toBeLessThan(0.02);
  });
  it.each([
    [0.4, 0.5],
    [0.6, 2],
    [0.85, 3],
    [0.26, 0.4],
  ])('between: bottom share %d, ratio %d within 4 %%', (share, ratio) => {
    const found = cellGrowth(share, ratio);
    const solved = fastest(share, ratio);
    expect(Math.abs(found.growth / solved.c - 1)).toBeLessThan(0.04);
    expect(Math.abs(found.pitchOverFilm / solved.pitch - 1)).toBeLessThan(0.04);
  });
});

describe('worked numbers', () => {
  const layers = (film_mm: number, theta_per_Pa: number, drho = 50) =>
    cellsAnswer({
      bottom: { name: 'blue', thickness_m: film_mm / 2000, density_kg_m3: 1100 },
      top: { name: 'white', thickness_m: film_mm / 2000, density_kg_m3: 1100 + drho },
      theta_per_Pa,
    });
  it('2 mm, 5 Pa s, 50 kg/m3: cells of 3.003 mm, 0.008489 1/s', () => {
    expect(layers(2, 240).pitch_m! * 1000).toBeCloseTo(3.002, 2);
    expect(layers(2, 1 / 5).eFolds.value).toBeCloseTo(0.00849, 5);
  });
  it.each([
    [2, 60, 78.5],
    [2, 240, 19.6],
    [2, 600, 7.9],
    [1, 60, 157],
    [1, 240, 39],
    [1, 600, 16],
    [3, 60, 52],
    [3, 240, 13],
    [3, 600, 5],
  ])('%d mm, Theta %d: cells from %d kg/m3', (film_mm, theta, drho) => {
    expect(Math.abs(layers(film_mm, theta).critical_kg_m3 - drho)).toBeLessThan(drho > 50 ? 0.6 : 0.51);
  });
  it.each([
    [0.01, 4200, 1108],
    [0.03, 4200, 1125],
    [0.05, 4200, 1142],
    [0.1, 4200, 1188],
    [0.03, 2900, 1121],
    [0.05, 1800, 1122],
  ])('%d by weight of %d makes %d kg/m3', (share, pigment, mix) => {
    expect(Math.abs(mixtureDensity_kg_m3(share, pigment, 1100) - mix)).toBeLessThan(0.6);
  });
  it('5 % of white over a light colour, 2 mm, Theta 240: cells; white under it: none', () => {
    expect(layers(2, 240, 42)).toMatchObject({ cells: 'yes', goesUnder: 'white' });
    const under = layers(2, 240, -42);
    expect(under).toMatchObject({ cells: 'no', goesUnder: 'blue' });
    expect(under.pitch_m).toBeUndefined();
    expect(under.eFolds.value).toBe(0);
  });
});
