/**
 * Kubelka-Munk and the surface against values from outside the project:
 * - The differential equation itself, dR/dx = S - 2 (K + S) R + S R^2 (Kubelka & Munk 1931), integrated here by classical
 *   Runge-Kutta in 4,000 steps: an independent route to every finite film. Agreement 1e-9.
 * - Fresnel's law at n = 1.5: 4 % at normal incidence, 8.919 % at 60 degrees, 25.306 % at 75 degrees (closed form of any
 *   optics text; from memory). Thrown back inside: 0.596346, by integration of the same law over the half space.
 * - Film that hides (contrast ratio 0.98 over a white of 0.80, as ASTM D2805 takes it): scattering times thickness 6.500688
 *   for a masstone of 0.8 and 1.636515 for 0.3, from the same differential equation.
 * The papers were not opened.
 */
import { describe, expect, test } from 'vitest';
import { contrastRatio } from '#core/look/drawdown.ts';
import { absorptionToScattering, layer, masstone, mixed, over } from '#core/look/kubelka-munk.ts';
import { mirrored, RESIN_INDEX, seen, THROWN_BACK } from '#core/look/surface.ts';

/** Reflectance of a film over a ground by integrating Kubelka and Munk's equation upwards from the ground. */
function integrated(s: number, k: number, ground: number, steps = 4000): number {
  const slope = (r: number) => s - 2 * (k + s) * r + s * r * r;
  const h = 1 / steps;
  let r = ground;
  for (let at = 0; at < steps; at++) {
    const k1 = slope(r);
    const k2 = slope(r + (h / 2) * k1);
    const k3 = slope(r + (h / 2) * k2);
    const k4 = slope(r + h * k3);
    r += (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
  }
  return r;
}

const finite = (sx: number, kx: number, ground: number) =>
  over(layer({ scattering_per_m: sx * 1000, absorption_per_m: kx * 1000 }, 1e-3), ground);

describe('finite films against the differential equation', () => {
  test.each([
    [1, 0.1, 0],
    [1, 0.1, 0.8],
    [1, 0.1, 1],
    [0.5, 0.5, 0.8],
    [3, 0.05, 0],
    [3, 0.05, 0.8],
    [10, 0.02, 0.8],
    [0.2, 2, 0.8],
    [0, 0.5, 0.8],
    [2, 0, 0],
    [2, 0, 0.8],
    [0.05, 0.01, 0.05],
  ])('SX %d, KX %d over %d', (sx, kx, ground) => {
    expect(Math.abs(finite(sx, kx, ground) - integrated(sx, kx, ground))).toBeLessThan(1e-9);
  });

  test('a film of 1 and 0.1 over white 0.8 gives back 0.71234729, its masstone is 0.64174243', () => {
    expect(finite(1, 0.1, 0.8)).toBeCloseTo(0.71234729, 8);
    expect(masstone({ scattering_per_m: 1, absorption_per_m: 0.1 })).toBeCloseTo(0.64174243, 8);
  });
});

test('K/S of opaque films: 9.025 at 0.05, 0.25 at 0.5, 0.00555556 at 0.9', () => {
  expect(absorptionToScattering(0.05)).toBeCloseTo(9.025, 10);
  expect(absorptionToScattering(0.5)).toBeCloseTo(0.25, 12);
  expect(absorptionToScattering(0.9)).toBeCloseTo(0.00555556, 8);
});

test.each([
  [0.8, 6.500688],
  [0.3, 1.636515],
])('a masstone of %d hides a white of 0.80 at SX %d', (tone, sx) => {
  const kx = sx * absorptionToScattering(tone);
  expect(contrastRatio(finite(sx, kx, 0), finite(sx, kx, 0.8))).toBeCloseTo(0.98, 6);
});

test('one part of colour in ten of white: K/S 0.11483516, masstone 0.62202948', () => {
  const mix = mixed([
    { perPart: { scattering_per_m: 1, absorption_per_m: 0.005 }, parts: 0.9 },
    { perPart: { scattering_per_m: 0.1, absorption_per_m: 1 }, parts: 0.1 },
  ]);
  expect(mix.absorption_per_m / mix.scattering_per_m).toBeCloseTo(0.11483516, 8);
  expect(masstone(mix)).toBeCloseTo(0.62202948, 8);
});

describe('the surface of the resin', () => {
  test.each([
    [0, 0.04],
    [45, 0.05024],
    [60, 0.08919],
    [75, 0.25306],
    [85, 0.6128],
  ])('at %d degrees it mirrors %d', (degrees, share) => {
    expect(mirrored((degrees * Math.PI) / 180)).toBeCloseTo(share, 5);
  });

  test('the share thrown back inside is the integral of the same law', () => {
    // Light from outside, spread evenly: integral of F(theta) sin(2 theta); inside 1 - (1 - that) / n^2 (reciprocity).
    const steps = 20_000;
    let outside = 0;
    for (let at = 0; at < steps; at++) {
      const angle = ((at + 0.5) / steps) * (Math.PI / 2);
      outside += mirrored(angle) * Math.sin(2 * angle) * (Math.PI / 2 / steps);
    }
    expect(Math.abs(1 - (1 - outside) / RESIN_INDEX ** 2 - THROWN_BACK)).toBeLessThan(5e-4);
  });

  test.each([
    [0.05, 0.01998763],
    [0.4, 0.20369748],
    [0.8, 0.59302752],
    [1, 0.96],
  ])('an internal reflectance of %d looks %d', (internal, looks) => {
    expect(seen(internal)).toBeCloseTo(looks, 8);
  });
});
