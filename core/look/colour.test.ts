import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { colourDifference } from './colour-difference.ts';
import { type Lab, labOfLinear, labOfXyz, linearOfXyz, xyzOfLab, xyzOfLinear } from './lab.ts';
import { decodeSrgb, encodeSrgb, hexOfLinear, linearOfHex } from './srgb.ts';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const light = fc.tuple(share, share, share);
const lab: fc.Arbitrary<Lab> = fc.tuple(
  fc.double({ min: 0, max: 100, noNaN: true }),
  fc.double({ min: -100, max: 100, noNaN: true }),
  fc.double({ min: -100, max: 100, noNaN: true }),
);

describe('sRGB', () => {
  test('every code a screen can show comes back', () => {
    for (let code = 0; code < 256; code++) {
      const hex = `#${code.toString(16).padStart(2, '0').repeat(3)}`;
      expect(hexOfLinear(linearOfHex(hex))).toBe(hex);
    }
  });

  test('decoding undoes encoding and both rise', () => {
    fc.assert(
      fc.property(share, share, (a, b) => {
        expect(decodeSrgb(encodeSrgb(a))).toBeCloseTo(a, 6);
        if (a < b) expect(encodeSrgb(a)).toBeLessThanOrEqual(encodeSrgb(b));
      }),
    );
  });

  test('another text and light that is no number are refused', () => {
    expect(() => linearOfHex('blue')).toThrow(RangeError);
    expect(() => linearOfHex('#12345')).toThrow(RangeError);
    expect(() => hexOfLinear([0, Number.NaN, 0])).toThrow(RangeError);
  });
});

describe('L*a*b*', () => {
  test('light goes to XYZ and L*a*b* and back', () => {
    fc.assert(
      fc.property(light, (rgb) => {
        const back = linearOfXyz(xyzOfLab(labOfXyz(xyzOfLinear(rgb))));
        for (const at of [0, 1, 2] as const) expect(back[at]).toBeCloseTo(rgb[at], 10);
      }),
    );
  });

  test('a grey has no colour and white is 100', () => {
    fc.assert(
      fc.property(share, (y) => {
        const [l, a, b] = labOfLinear([y, y, y]);
        // The standard's seven digits of the luminance row add up to 1.0000001.
        expect(l).toBeLessThanOrEqual(100 + 1e-5);
        expect(Math.hypot(a, b)).toBeLessThan(0.001);
      }),
    );
    expect(labOfLinear([1, 1, 1])[0]).toBeCloseTo(100, 5);
  });
});

describe('colour difference', () => {
  test('is 0 for the same colour, never below 0, and the same both ways', () => {
    fc.assert(
      fc.property(lab, lab, (p, q) => {
        expect(colourDifference(p, p)).toBe(0);
        expect(colourDifference(p, q)).toBeGreaterThanOrEqual(0);
        expect(colourDifference(p, q)).toBeCloseTo(colourDifference(q, p), 9);
      }),
    );
  });

  test('a number that is none is refused', () => {
    expect(() => colourDifference([50, 0, 0], [50, Number.POSITIVE_INFINITY, 0])).toThrow(RangeError);
  });
});
