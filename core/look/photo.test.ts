import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Lab, labOfLinear } from './lab.ts';
import { emptyLook } from './look-document.ts';
import { briefFromPatches, patchSizes } from './photo-brief.ts';
import { correctPhoto } from './photo-reference.ts';
import { differencesToPlan, type Photo, photoColours } from './photo-shares.ts';
import { type LinearRgb, linearOfHex } from './srgb.ts';

const labOf = (hex: string): Lab => labOfLinear(linearOfHex(hex));
const bytes = (hex: string) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));

/** A picture of upright stripes: as many columns of each colour as said. */
function stripes(rows: number, parts: readonly (readonly [hex: string, columns: number])[]): Photo {
  const row = parts.flatMap(([hex, columns]) => Array.from({ length: columns }, () => bytes(hex)).flat());
  const columns = row.length / 3;
  return { columns, rows, rgb: Uint8Array.from(Array.from({ length: rows }, () => row).flat()) };
}
const THREE = stripes(50, [
  ['#1f2a30', 60],
  ['#4f6b5a', 25],
  ['#b08d57', 15],
]);

describe('colours of a picture', () => {
  test('are those in it, with their shares, largest first, the same for the same seed', () => {
    const found = photoColours(THREE, { count: 3, seed: 7 });
    expect(found.colours.map((colour) => [colour.hex, colour.share])).toEqual([
      ['#1f2a30', 0.6],
      ['#4f6b5a', 0.25],
      ['#b08d57', 0.15],
    ]);
    expect(photoColours(THREE, { count: 3, seed: 7 })).toEqual(found);
  });

  test('are found through a grey cast of noise within a percent of area', () => {
    const noisy = {
      ...THREE,
      rgb: THREE.rgb.map((code, at) => Math.min(255, Math.max(0, code + ((at * 7919) % 13) - 6))),
    };
    const found = photoColours(noisy as Photo, { count: 3, seed: 1 });
    [0.6, 0.25, 0.15].forEach((share, at) => {
      expect(Math.abs(found.colours[at]!.share - share)).toBeLessThan(0.01);
    });
  });

  test('outside the top are not counted', () => {
    const found = photoColours({ ...THREE, inside: (column) => column >= 60 }, { count: 2, seed: 1 });
    expect(found.colours.map((colour) => colour.share)).toEqual([0.625, 0.375]);
    expect(found.labels[0]).toBe(255);
  });

  test('stand beside the plan in its order, with what is more and what is less', () => {
    const plan = [
      { key: 'warm', lab: labOf('#b08d57'), share: 0.2 },
      { key: 'dark', lab: labOf('#20282f'), share: 0.55 },
      { key: 'green', lab: labOf('#4f6b5a'), share: 0.25 },
    ];
    const { colours } = photoColours(THREE, { middles: plan.map((colour) => colour.lab) });
    const differences = differencesToPlan(plan, colours);
    expect(differences.map((d) => [d.key, d.found])).toEqual([
      ['warm', 0.15],
      ['dark', 0.6],
      ['green', 0.25],
    ]);
    expect(differences[0]!.difference).toBeCloseTo(0, 6);
    expect(differences[1]!.difference).toBeGreaterThan(0.5);
  });

  test('need a pixel on the top, and three bytes a pixel', () => {
    expect(() => photoColours({ ...THREE, inside: () => false }, { count: 2, seed: 1 })).toThrow(/no pixel/);
    expect(() => photoColours({ ...THREE, rows: 49 }, { count: 2, seed: 1 })).toThrow(/bytes/);
    expect(() => photoColours(THREE, { count: 0, seed: 1 })).toThrow(/colours/);
  });
});

describe('a brief from a picture', () => {
  test('of discs has their size', () => {
    // Discs of 24 pixels on a wide grid: the runs of the ground are left out by asking for the discs alone.
    const columns = 400;
    const labels = new Uint8Array(columns * columns).map((_, at) => {
      const [x, y] = [(at % columns) % 40, Math.floor(at / columns) % 40];
      return Math.hypot(x - 19.5, y - 19.5) < 12 ? 0 : 255;
    });
    const sizes = patchSizes({ labels }, columns, columns, 0.002);
    expect(Math.abs(sizes.block_m / 0.048 - 1)).toBeLessThan(0.04);
  });

  test('of stripes runs the way they run', () => {
    const { labels } = photoColours(THREE, { count: 3, seed: 1 });
    const brief = briefFromPatches(patchSizes({ labels }, 100, 50, 0.01), { meld: 'soft', restless: 0.3 });
    expect(brief.direction).toBe('across');
    expect({ ...emptyLook().brief, ...brief }).toEqual(brief);
  });
});

describe('a picture with a reference in it', () => {
  const grey = (value: number): LinearRgb => [value, value, value];
  const casts = fc.tuple(
    ...[0, 1, 2].map(() => fc.double({ min: 0.6, max: 1.2, noNaN: true })),
  ) as fc.Arbitrary<[number, number, number]>;
  const channel = fc.double({ min: 0.03, max: 0.7, noNaN: true });

  test('loses the colour of its light', () => {
    fc.assert(
      fc.property(casts, fc.tuple(channel, channel, channel), (cast, truth) => {
        const shot = (light: LinearRgb): LinearRgb => [
          light[0] * cast[0],
          light[1] * cast[1],
          light[2] * cast[2],
        ];
        const read = correctPhoto(shot(truth), [{ read: shot(grey(0.18)), known: 0.18 }]);
        read!.light.forEach((value, at) => {
          expect(value).toBeCloseTo(truth[at]!, 9);
        });
      }),
    );
  });

  test('with a white and a grey loses the curve of the camera as well', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.8, max: 1.25, noNaN: true }),
        fc.tuple(channel, channel, channel),
        (curve, truth) => {
          const shot = ([r, g, b]: LinearRgb): LinearRgb => [r ** curve, g ** curve, b ** curve];
          const read = correctPhoto(shot(truth), [
            { read: shot(grey(0.18)), known: 0.18 },
            { read: shot(grey(0.82)), known: 0.82 },
          ]);
          read!.light.forEach((value, at) => {
            expect(value).toBeCloseTo(truth[at]!, 9);
          });
        },
      ),
    );
  });

  test('says how far it may be off, less with two references', () => {
    const one = correctPhoto([0.05, 0.09, 0.07], [{ read: grey(0.18), known: 0.18 }])!;
    const two = correctPhoto(
      [0.05, 0.09, 0.07],
      [
        { read: grey(0.18), known: 0.18 },
        { read: grey(0.82), known: 0.82 },
      ],
    )!;
    expect(one.error).toBeGreaterThan(two.error);
    expect(two.error).toBeGreaterThan(0);
  });

  test('too dark, burnt out or two alike cannot be gone by', () => {
    expect(correctPhoto(grey(0.2), [{ read: grey(0.01), known: 0.18 }])).toBeNull();
    expect(correctPhoto(grey(0.2), [{ read: grey(1), known: 0.82 }])).toBeNull();
    const alike = [
      { read: grey(0.3), known: 0.18 },
      { read: grey(0.31), known: 0.82 },
    ];
    expect(correctPhoto(grey(0.2), alike)).toBeNull();
    expect(() => correctPhoto(grey(0.2), [])).toThrow(RangeError);
  });
});
