import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { AppearanceDocument } from './appearance-document.ts';
import { filmContrast, filmLight, flakesOf, measuredColourant, pickedDye, pickedPaste } from './colourant.ts';
import { labOfLinear } from './lab.ts';
import { readColourant, trustOf } from './read-colourant.ts';
import { judgeSample } from './sample-verdict.ts';
import { hexOfLinear, type LinearRgb, linearOfHex } from './srgb.ts';

const WHITE: LinearRgb = [0.82, 0.82, 0.82];
const BLACK: LinearRgb = [0.02, 0.02, 0.02];
const channel = fc.double({ min: 0.01, max: 0.8, noNaN: true });
const light = fc.tuple(channel, channel, channel);
const contrast = fc.double({ min: 0.2, max: 0.98, noNaN: true });

describe('a picked paste', () => {
  test('thick enough looks as it was picked', () => {
    fc.assert(
      fc.property(light, contrast, (picked, hides) => {
        const thick = filmLight(pickedPaste(picked, 0.03, hides), {
          load: 0.03,
          film_m: 1,
          undercoat: BLACK,
        });
        thick.forEach((value, at) => {
          expect(value).toBeCloseTo(picked[at]!, 6);
        });
      }),
    );
  });

  test('hides in 1 mm as well as the maker said', () => {
    fc.assert(
      fc.property(light, contrast, (picked, hides) => {
        expect(filmContrast(pickedPaste(picked, 0.03, hides), 0.03, 1e-3)).toBeCloseTo(hides, 9);
      }),
    );
  });

  test('at half the load in twice the film is the same film', () => {
    fc.assert(
      fc.property(light, contrast, (picked, hides) => {
        const paste = pickedPaste(picked, 0.04, hides);
        const one = filmLight(paste, { load: 0.04, film_m: 1e-3, undercoat: WHITE });
        const other = filmLight(paste, { load: 0.02, film_m: 2e-3, undercoat: WHITE });
        other.forEach((value, at) => {
          expect(value).toBeCloseTo(one[at]!, 12);
        });
      }),
    );
  });

  test('hides better the more there is of it', () => {
    const paste = pickedPaste(linearOfHex('#4f6b5a'), 0.03, 0.5);
    const ratios = [0.01, 0.02, 0.03, 0.05].map((load) => filmContrast(paste, load, 1.3e-3));
    expect([...ratios].sort((a, b) => a - b)).toEqual(ratios);
  });
});

describe('a dye', () => {
  test('lets its undercoat through and only ever darkens it', () => {
    fc.assert(
      fc.property(light, light, (picked, under) => {
        const dyed = filmLight(pickedDye(picked, 0.01), { load: 0.01, film_m: 1.3e-3, undercoat: under });
        dyed.forEach((value, at) => {
          expect(value).toBeLessThanOrEqual(under[at]! + 1e-12);
        });
      }),
    );
  });
  test('over black is black, whatever its colour', () => {
    const dyed = filmLight(pickedDye(linearOfHex('#c0392b'), 0.01), {
      load: 0.01,
      film_m: 1e-3,
      undercoat: [0, 0, 0],
    });
    expect(dyed).toEqual([0, 0, 0]);
  });
});

test('clear resin without colour shows the undercoat as it is', () => {
  fc.assert(
    fc.property(light, (under) => {
      const shown = filmLight(pickedPaste(WHITE, 0.03, 0.9), {
        load: 0,
        film_m: 1e-3,
        undercoat: under,
        clear_m: 3e-3,
      });
      shown.forEach((value, at) => {
        expect(value).toBeCloseTo(under[at]!, 12);
      });
    }),
  );
});

describe('a drawdown', () => {
  test('read back from its own films gives the colourant it was made with', () => {
    const k = fc.double({ min: 20, max: 5000, noNaN: true });
    const s = fc.double({ min: 300, max: 6000, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(k, k, k), fc.tuple(s, s, s), (absorption_per_m, scattering_per_m) => {
        const made = {
          body: 'paste',
          evidence: 'drawdown',
          absorption_per_m,
          scattering_per_m,
          flake: null,
        } as const;
        const on = (undercoat: LinearRgb) => filmLight(made, { load: 1, film_m: 1.5e-4, undercoat });
        const films = {
          film_m: 1.5e-4,
          load: 1,
          black: BLACK,
          white: WHITE,
          overBlack: on(BLACK),
          overWhite: on(WHITE),
        };
        const read = measuredColourant(films, 'paste', 0);
        if (read.kind !== 'read') throw new Error(read.kind);
        for (const at of [0, 1, 2] as const) {
          if (films.overWhite[at] - films.overBlack[at] < 1e-3) continue;
          expect(read.colourant.absorption_per_m[at] / absorption_per_m[at]).toBeCloseTo(1, 3);
          expect(read.colourant.scattering_per_m[at] / scattering_per_m[at]).toBeCloseTo(1, 3);
        }
      }),
    );
  });

  const document = (change: object) =>
    AppearanceDocument.parse({ drawdown: { film: '0.2 mm', load: '3 %', ...change } });
  test('with its patches changed over, too dark a white or no film is refused with its field', () => {
    const problem = (change: object) => {
      const read = readColourant('#777777', 0.03, 'paste', document(change));
      return read.ok ? null : read.problems[0];
    };
    expect(problem({ overBlack: '#bbbbbb', overWhite: '#202020' })).toMatchObject({
      path: 'appearance.drawdown.overWhite',
    });
    expect(problem({ white: '#202020' })).toMatchObject({ path: 'appearance.drawdown.white' });
    expect(problem({ black: '#f0f0f0' })).toMatchObject({ path: 'appearance.drawdown.black' });
    expect(problem({ film: '' })).toMatchObject({ path: 'appearance.drawdown.film' });
    expect(problem({ film: '9 mm' })!.allowed).toContain('mm');
  });
  test('of a film that hides, or barely colours, is doubted', () => {
    const doubt = (change: object) => {
      const read = readColourant('#777777', 0.03, 'paste', document(change));
      return read.ok ? read.warnings.map((w) => w.code) : read.problems;
    };
    expect(doubt({ overBlack: '#707070', overWhite: '#727272' })).toEqual(['warning.drawdown-hides']);
    expect(doubt({ overBlack: '#202020', overWhite: '#c8c8c8' })).toEqual(['warning.drawdown-contrast']);
    expect(doubt({ overBlack: '#606060', overWhite: '#909090' })).toEqual([]);
  });
});

describe('flakes', () => {
  test('cover more the more there is of them, never more than everything', () => {
    const read = readColourant('#b08d57', 0.02, 'flake', null);
    if (!read.ok) throw new Error();
    const covers = [0, 0.0005, 0.002, 0.02].map((load) => flakesOf(read.value, load, 1.3e-3)!.cover);
    expect(covers[0]).toBe(0);
    expect([...covers].sort((a, b) => a - b)).toEqual(covers);
    expect(covers.at(-1)!).toBeLessThanOrEqual(1);
    expect(trustOf(read.value)).toMatch(/poured sample/);
  });
  test('are nothing of a paste', () => {
    expect(flakesOf(pickedPaste(WHITE, 0.03, 0.9), 0.03, 1e-3)).toBeNull();
  });
});

describe('a made sample', () => {
  const agreed = labOfLinear(linearOfHex('#4f6b5a'));
  test('that is the agreed colour matches it', () => {
    expect(judgeSample(agreed, agreed)).toEqual({ difference: 0, verdict: 'matches', towards: [] });
  });
  test('of another colour differs, and says which way', () => {
    const made = judgeSample(agreed, labOfLinear(linearOfHex('#8f6b5a')));
    expect(made.verdict).toBe('differs');
    expect(made.towards[0]).toBe('redder');
  });
  test('read with a large error tells nothing', () => {
    expect(judgeSample(agreed, agreed, 6).verdict).toBe('cannot tell');
  });
});

test('a picked colour and its picture are the same on the screen when it hides', () => {
  const paste = pickedPaste(linearOfHex('#4f6b5a'), 0.03, 0.98);
  expect(hexOfLinear(filmLight(paste, { load: 0.03, film_m: 5e-3, undercoat: BLACK }))).toBe('#4f6b5a');
});
