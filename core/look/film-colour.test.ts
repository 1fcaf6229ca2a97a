import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contrastRatio, readDrawdown } from './drawdown.ts';
import { layer, masstone, mixed, over, type Scatter } from './kubelka-munk.ts';
import { internalOf, mirrored, seen } from './surface.ts';

const rate = fc.double({ min: 0, max: 20_000, noNaN: true });
const film: fc.Arbitrary<Scatter> = fc.record({ absorption_per_m: rate, scattering_per_m: rate });
const thickness = fc.double({ min: 0, max: 5e-3, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('a film', () => {
  test('gives back and lets through no more light than falls on it', () => {
    fc.assert(
      fc.property(film, thickness, share, (f, x, ground) => {
        const { reflectance, transmittance } = layer(f, x);
        expect(reflectance).toBeGreaterThanOrEqual(0);
        expect(transmittance).toBeGreaterThanOrEqual(0);
        expect(reflectance + transmittance).toBeLessThanOrEqual(1 + 1e-12);
        expect(over(layer(f, x), ground)).toBeLessThanOrEqual(1 + 1e-12);
      }),
    );
  });

  test('poured in two coats is the film poured in one', () => {
    fc.assert(
      fc.property(film, thickness, thickness, share, (f, x1, x2, ground) => {
        const twice = over(layer(f, x1), over(layer(f, x2), ground));
        expect(twice).toBeCloseTo(over(layer(f, x1 + x2), ground), 8);
      }),
    );
  });

  test('hides its ground when it is thick enough', () => {
    const dark = { absorption_per_m: 3000, scattering_per_m: 2000 };
    for (const ground of [0, 0.5, 1]) expect(over(layer(dark, 0.02), ground)).toBeCloseTo(masstone(dark), 10);
  });

  test('of no thickness shows its ground', () => {
    fc.assert(
      fc.property(film, share, (f, ground) => {
        expect(over(layer(f, 0), ground)).toBeCloseTo(ground, 12);
      }),
    );
  });

  test('refuses a negative load, thickness or absorption', () => {
    const clear = { absorption_per_m: 1, scattering_per_m: 0 };
    expect(() => layer({ ...clear, absorption_per_m: -1 }, 1e-3)).toThrow(RangeError);
    expect(() => layer(clear, -1e-3)).toThrow(RangeError);
    expect(() => mixed([{ perPart: clear, parts: -1 }])).toThrow(RangeError);
    expect(() => masstone(clear)).toThrow(/never hides/);
    expect(() => over(layer(clear, 1e-3), 1.2)).toThrow(RangeError);
  });
});

describe('the surface', () => {
  test('seen from outside and led back inside is the same film', () => {
    fc.assert(
      fc.property(share, (r) => {
        expect(internalOf(seen(r))).toBeCloseTo(r, 12);
      }),
    );
  });

  test('mirrors more the lower one looks, and all of it at the edge', () => {
    const angles = fc.double({ min: 0, max: Math.PI / 2, noNaN: true });
    fc.assert(
      fc.property(angles, angles, (p, q) => {
        expect(mirrored(Math.max(p, q))).toBeGreaterThanOrEqual(mirrored(Math.min(p, q)) - 1e-12);
      }),
    );
    expect(mirrored(Math.PI / 2)).toBeCloseTo(1, 12);
  });

  test('no surface under resin looks brighter than its white', () => {
    expect(() => internalOf(0.97)).toThrow(RangeError);
    expect(() => seen(-0.1)).toThrow(RangeError);
  });
});

describe('a drawdown', () => {
  const readable = fc.record({
    absorption_per_m: fc.double({ min: 50, max: 5000, noNaN: true }),
    scattering_per_m: fc.double({ min: 200, max: 8000, noNaN: true }),
  });

  test('gives back the absorption and scattering it was made with', () => {
    fc.assert(
      fc.property(readable, fc.double({ min: 1e-4, max: 4e-4, noNaN: true }), (f, thickness_m) => {
        const [black, white] = [0.05, 0.93];
        const overBlack = over(layer(f, thickness_m), black);
        const overWhite = over(layer(f, thickness_m), white);
        const reading = readDrawdown({ thickness_m, black, white, overBlack, overWhite });
        if (overWhite - overBlack < 1e-4) return;
        if (reading.kind !== 'read') throw new Error(`read as "${reading.kind}"`);
        expect(reading.film.absorption_per_m / f.absorption_per_m).toBeCloseTo(1, 3);
        expect(reading.film.scattering_per_m / f.scattering_per_m).toBeCloseTo(1, 3);
      }),
    );
  });

  test('that hides the card says so instead of making up a scattering', () => {
    const bare = { thickness_m: 1e-3, black: 0.05, white: 0.93 };
    expect(readDrawdown({ ...bare, overBlack: 0.3, overWhite: 0.31 }, 0.015).kind).toBe('hides');
  });

  test('of a film darker over white than over black fits no film', () => {
    const bare = { thickness_m: 1e-3, black: 0.05, white: 0.93 };
    expect(readDrawdown({ ...bare, overBlack: 0.04, overWhite: 0.9 }).kind).toBe('no film fits');
  });

  test('needs a card with a black and a white side, and a film', () => {
    const films = { overBlack: 0.3, overWhite: 0.6 };
    expect(() => readDrawdown({ thickness_m: 1e-3, black: 0.5, white: 0.5, ...films })).toThrow(/brighter/);
    expect(() => readDrawdown({ thickness_m: 0, black: 0.05, white: 0.9, ...films })).toThrow(/thickness/);
    expect(() => contrastRatio(0.7, 0.6)).toThrow(RangeError);
  });
});
