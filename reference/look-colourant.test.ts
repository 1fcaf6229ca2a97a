/**
 * Drawdowns, picked pastes and hiding against values worked apart from this project by another program, which integrates Kubelka and
 * Munk's equation and uses Saunderson's correction with 0.04 and 0.596, gloss left out (Kubelka & Munk 1931; Saunderson 1942;
 * papers not opened). Contrast ratios as ISO 6504-3 and ASTM D2805 define them, over a white of 0.80 (standards not opened).
 * Agreement: reflectances 1e-7, colours to the code value, contrast ratios 1e-6.
 */
import { describe, expect, test } from 'vitest';
import { filmContrast, filmLight, measuredColourant, pickedPaste } from '#core/look/colourant.ts';
import { contrastRatio } from '#core/look/drawdown.ts';
import { layer, over } from '#core/look/kubelka-munk.ts';
import { hexOfLinear, type LinearRgb, linearOfHex } from '#core/look/srgb.ts';
import { internalOf } from '#core/look/surface.ts';

const grey = (value: number): LinearRgb => [value, value, value];
const code = (r: number, g: number, b: number) =>
  `#${[r, g, b].map((c) => c.toString(16).padStart(2, '0')).join('')}`;

/** K 0.6, 3, 5 and S 2, 1.5, 1.2 for each millimetre, at a load of 1. */
const ORANGE = {
  body: 'paste',
  evidence: 'drawdown',
  absorption_per_m: [600, 3000, 5000],
  scattering_per_m: [2000, 1500, 1200],
  flake: null,
} as const;

describe('a film of 0.2 mm on a card of 0.02 and 0.82', () => {
  const over_ = (undercoat: LinearRgb, film_m = 2e-4) => filmLight(ORANGE, { load: 1, film_m, undercoat });
  test.each([
    ['black', 0.02, [0.12875674, 0.06374146, 0.03841711]],
    ['white', 0.82, [0.52220404, 0.15865514, 0.07684978]],
  ] as const)('over %s', (_name, ground, values) => {
    over_(grey(ground)).forEach((value, at) => {
      expect(Math.abs(value - values[at]!)).toBeLessThan(1e-7);
    });
  });
  test('reads back as its absorption and scattering', () => {
    const films = {
      film_m: 2e-4,
      load: 1,
      black: grey(0.02),
      white: grey(0.82),
      overBlack: over_(grey(0.02)),
      overWhite: over_(grey(0.82)),
    };
    const read = measuredColourant(films, 'paste', 0);
    if (read.kind !== 'read') throw new Error(read.kind);
    for (const at of [0, 1, 2] as const) {
      expect(read.colourant.absorption_per_m[at] / ORANGE.absorption_per_m[at]).toBeCloseTo(1, 7);
      expect(read.colourant.scattering_per_m[at] / ORANGE.scattering_per_m[at]).toBeCloseTo(1, 7);
    }
  });
  test.each([
    [1e-4, 0.82, code(209, 148, 117)],
    [5e-4, 0.82, code(159, 80, 57)],
    [5e-4, 0.02, code(125, 77, 56)],
    [5e-4, 0.2, code(135, 78, 57)],
    [1.5e-3, 0.82, code(138, 77, 57)],
  ])('drawn %d m thick over %d it is %s', (film_m, ground, hex) => {
    expect(hexOfLinear(over_(grey(ground), film_m))).toBe(hex);
  });
  test.each([
    [2e-4, 0.32921],
    [5e-4, 0.738256],
    [1e-3, 0.949588],
    [1.5e-3, 0.990293],
  ])('%d m of it has a contrast ratio of %d', (film_m, ratio) => {
    expect(Math.abs(filmContrast(ORANGE, 1, film_m) - ratio)).toBeLessThan(1e-6);
  });
});

test('#1f3a5f that hides 0.90 in 1 mm: S 0.63280981, K 8.522615, 2.488447, 0.707511 for each mm', () => {
  const paste = pickedPaste(linearOfHex('#1f3a5f'), 1, 0.9);
  expect(Math.abs(paste.scattering_per_m[0] / 1000 - 0.63280981)).toBeLessThan(2e-7);
  [8.522615, 2.488447, 0.707511].forEach((k, at) => {
    expect(Math.abs(paste.absorption_per_m[at]! / 1000 - k)).toBeLessThan(2e-6);
  });
  const over = (film_m: number) => hexOfLinear(filmLight(paste, { load: 1, film_m, undercoat: grey(0.82) }));
  expect([1e-4, 3e-4, 1e-3, 3e-3].map(over)).toEqual([
    code(80, 157, 205),
    code(33, 94, 166),
    code(31, 59, 111),
    code(31, 58, 95),
  ]);
});

describe('contrast ratio over a white of 0.80', () => {
  test.each([
    [1, 0.02, 0.60978093],
    [2, 0.04, 0.79751831],
    [4, 0.08, 0.927978],
    [8, 0.16, 0.987306],
    [20, 0.4, 0.99990099],
    [0.2, 1, 0.49096081],
    [0.2, 2, 0.81318688],
  ])('inside the resin: SX %d, KX %d gives %d', (sx, kx, ratio) => {
    const film = layer({ scattering_per_m: sx, absorption_per_m: kx }, 1);
    expect(Math.abs(contrastRatio(over(film, 0), over(film, 0.8)) - ratio)).toBeLessThan(1e-8);
  });
  test.each([
    [1, 0.02, 0.361038],
    [2, 0.04, 0.575691],
    [4, 0.08, 0.807597],
    [8, 0.16, 0.960649],
    [12, 0.24, 0.992076],
    [0.2, 1, 0.42617],
    [0.2, 2, 0.783297],
  ])('as a card shows it: SX %d, KX %d gives %d', (sx, kx, ratio) => {
    const paste = { ...ORANGE, scattering_per_m: grey(sx), absorption_per_m: grey(kx) };
    expect(Math.abs(filmContrast(paste, 1, 1, { black: 0, white: 0.8 }) - ratio)).toBeLessThan(1e-6);
  });
});

test('3 mm of clear of 1, 2 and 10 for each metre takes light to 0.99401796, 0.98807171, 0.94176453, both ways', () => {
  const clear = filmLight(ORANGE, {
    load: 0,
    film_m: 0,
    undercoat: grey(0.5),
    clear_m: 3e-3,
    clearAbsorption_per_m: [1, 2, 10],
  });
  [0.99401796, 0.98807171, 0.94176453].forEach((share, at) => {
    expect(Math.abs(internalOf(clear[at]!) / internalOf(0.5) - share)).toBeLessThan(5e-9);
  });
});
