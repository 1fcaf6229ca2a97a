/**
 * Craters (Taylor and Michael 1973, J. Fluid Mech. 58, 625, abstract read; Young-Laplace solved again here, within 0.5 %), drips in full Stokes flow
 * (Fermigier et al. 1992 with Orchard 1962 turned round), a puddle on a wet coat (printed radii of a finite-volume solution, within 0.5 %), and the
 * rules for divots: worked numbers to their printed digits.
 */
import { describe, expect, it } from 'vitest';
import { capillaryLength_m } from '#core/film/constants.ts';
import { divotSink_m, filmOverSpot_m, floodAnswer } from '#core/film/craters.ts';
import { dripFilm_m } from '#core/film/drip-answers.ts';
import { dripGrowth_Pa, dripPitch_m, fastestDrips } from '#core/film/drips.ts';
import { tiltAnswer } from '#core/film/tilt-answer.ts';
import { wetPuddle } from '#core/film/wet-puddle.ts';

/**
 * Axisymmetric meniscus outside a dry disc, lengths in lc: y depth below the level film, psi slope angle. Started far out as
 * y = amplitude K0(r) and followed inwards by arc length until psi is the contact angle; returns radius and depth there.
 */
function meniscus(amplitude: number, angle: number): { r: number; y: number } {
  const far = 16;
  const k0 = Math.sqrt(Math.PI / (2 * far)) * Math.exp(-far) * (1 - 1 / (8 * far) + 9 / (128 * far * far));
  const k1 = Math.sqrt(Math.PI / (2 * far)) * Math.exp(-far) * (1 + 3 / (8 * far) - 15 / (128 * far * far));
  let r = far;
  let y = amplitude * k0;
  let psi = Math.atan(amplitude * k1);
  // inwards by s: r' = -cos psi, y' = sin psi, psi' = y + sin(psi)/r
  const slope = (at: readonly number[]): [number, number, number] => [
    -Math.cos(at[2]!),
    Math.sin(at[2]!),
    at[1]! + Math.sin(at[2]!) / at[0]!,
  ];
  for (let i = 0; i < 1e6; i++) {
    const ds = Math.min(0.002, 0.02 * r);
    const s0 = [r, y, psi] as const;
    const move = (k: readonly number[], by: number) => s0.map((v, j) => v + by * k[j]!);
    const k1s = slope(s0);
    const k2s = slope(move(k1s, ds / 2));
    const k3s = slope(move(k2s, ds / 2));
    const k4s = slope(move(k3s, ds));
    const next = s0.map((v, j) => v + (ds / 6) * (k1s[j]! + 2 * k2s[j]! + 2 * k3s[j]! + k4s[j]!));
    if (next[2]! >= angle) {
      const part = (angle - psi) / (next[2]! - psi);
      return { r: r + part * (next[0]! - r), y: y + part * (next[1]! - y) };
    }
    [r, y, psi] = next as [number, number, number];
  }
  throw new RangeError('no meniscus');
}

/** Film over a disc of a radius in lc: bisection on the logarithm of the amplitude. */
function filmOver(angle_deg: number, radius: number): number {
  const angle = (angle_deg * Math.PI) / 180;
  let low = -12;
  let high = 16;
  for (let i = 0; i < 45; i++) {
    const middle = (low + high) / 2;
    if (meniscus(Math.exp(middle), angle).r < radius) low = middle;
    else high = middle;
  }
  return meniscus(Math.exp((low + high) / 2), angle).y;
}

describe('film that closes over a spot', () => {
  const lc_mm = capillaryLength_m() * 1000;
  it.each([
    [10, 1, 0.1822],
    [20, 0.25, 0.1869],
    [30, 1, 0.5411],
    [30, 5, 0.7997],
    [45, 2, 0.9943],
    [60, 0.5, 0.7675],
    [60, 10, 1.6647],
    [90, 1, 1.4637],
  ])('%d degrees, radius %d mm: %d mm, as solved here', (angle, radius_mm, film_mm) => {
    expect(filmOverSpot_m(angle, radius_mm / 1000) * 1000).toBeCloseTo(film_mm, 4);
    expect(Math.abs((filmOver(angle, radius_mm / lc_mm) * lc_mm) / film_mm - 1)).toBeLessThan(0.001);
  });
  it.each([
    [25, 0.7],
    [37, 3],
    [52, 1.4],
    [75, 0.35],
    [30, 0.09],
    [15, 0.1],
  ])('between and below the points, %d degrees, %d mm, within 1 %%', (angle, radius_mm) => {
    const solved = filmOver(angle, radius_mm / lc_mm) * lc_mm;
    expect(Math.abs((filmOverSpot_m(angle, radius_mm / 1000) * 1000) / solved - 1)).toBeLessThan(0.01);
  });
  it('small spot of 0.05 lc at 30 degrees: 0.0799 lc', () => {
    expect(filmOverSpot_m(30, 0.05 * capillaryLength_m()) / capillaryLength_m()).toBeCloseTo(0.0799, 3);
  });
  it('the usual silicone spot, 30 to 45 degrees and 1 mm, closes above 0.6 to 0.8 mm', () => {
    const flood = (film_m: number, advancingAngle_deg: number) =>
      floodAnswer({ film_m, advancingAngle_deg, spotRadius_m: 0.001, divotDepth_m: 0 });
    expect(flood(0.0006, 30)).toMatchObject({ closes: true, secondFlood: false });
    expect(flood(0.00075, 45)).toMatchObject({ closes: false, secondFlood: true });
    expect(flood(0.00081, 45).closes).toBe(true);
  });
  it('a divot of 1 mm shows 20 to 30 micrometres', () => {
    expect([divotSink_m(0.001, 0.02), divotSink_m(0.001, 0.03)]).toEqual([2e-5, 3e-5]);
    expect(
      floodAnswer({ film_m: 0.003, advancingAngle_deg: 0, spotRadius_m: 0, divotDepth_m: 0.001 }).secondFlood,
    ).toBe(true);
  });
});

describe('drips in full Stokes flow', () => {
  it.each([
    [0.5, 0.03242, 16.27],
    [1, 0.21966, 16.96],
    [2, 1.1403, 18.87],
  ])('%d mm: growth %d Pa, pitch %d mm', (film_mm, growth, pitch_mm) => {
    const found = fastestDrips(film_mm / 1000);
    expect(Math.abs(found.growth_Pa / growth - 1)).toBeLessThan(1.5e-4);
    expect(found.pitch_m * 1000).toBeCloseTo(pitch_mm, 2);
  });
  it('a thin film grows as the thin-film formula says, with its pitch', () => {
    const found = fastestDrips(2e-5);
    expect(found.growth_Pa / dripGrowth_Pa(2e-5)).toBeCloseTo(1, 3);
    expect(found.pitch_m / dripPitch_m()).toBeCloseTo(1, 4);
  });
  it.each([
    [60, 0.622, 0.03],
    [240, 0.392, 0.012],
    [1200, 0.229, 0.003],
  ])(
    'film that just shows drips at Theta %d: the thin formula says %d mm, the full one a little more',
    (theta, thin_mm, more) => {
      const film_mm = dripFilm_m(theta) * 1000;
      expect(film_mm).toBeGreaterThan(thin_mm);
      expect(film_mm - thin_mm).toBeLessThan(more);
    },
  );
});

describe('30 mL of 30 mm radius onto 1 mm that is wet', () => {
  it.each([
    [1, 48.4, 58],
    [10, 61.5, 87],
    [60, 73.1, 123],
    [240, 82.3, 161],
  ])('Theta %d: own radius %d mm, felt to %d mm', (theta_per_Pa, own_mm, felt_mm) => {
    const found = wetPuddle({ volume_m3: 30e-6, startRadius_m: 0.03, coat_m: 0.001, theta_per_Pa });
    expect(Math.abs(found.ownRadius_m * 1000 - own_mm)).toBeLessThan(0.1);
    expect(Math.abs(found.feltRadius_m * 1000 - felt_mm)).toBeLessThan(0.51);
    expect(found.finalRadius_m * 1000).toBeCloseTo(102.2, 1);
  });
});

it('1 mm per metre does not matter at 1.5 mm and does at 9 mm per metre', () => {
  const at = (slope: number, thickness_m: number) =>
    tiltAnswer({ slope, length_m: 1.5, thickness_m, theta_per_Pa: 240 });
  expect(at(0.001, 0.0015)).toMatchObject({ matters: false });
  expect(at(0.001, 0.0015).difference_m.value * 1000).toBeCloseTo(2 * 0.0609, 4);
  expect(at(0.001, 0.003)).toMatchObject({ matters: true });
  expect(at(0.008727, 0.0015).matters).toBe(true);
  expect(at(0.001, 0.0015).overLowEdge_m2 * 1e6).toBeCloseTo(2.9, 1);
});
