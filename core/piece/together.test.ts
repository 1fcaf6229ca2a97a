import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coatQuantity } from '#core/mix/quantity.ts';
import { coatOf, topOf } from '#core/pour/sample-request.check.ts';
import { SHOP_DEFAULTS } from '#core/pour/shop-rates.ts';
import type { PieceMeasures } from './piece.ts';
import { together } from './together.ts';

const side = fc.double({ min: 0.4, max: 2.4, noNaN: true });
const tops = fc.array(fc.tuple(side, side), { minLength: 2, maxLength: 5 });
const named = (sizes: readonly (readonly [number, number])[]) =>
  sizes.map(([length_m, width_m], i) => ({ name: `top ${i + 1}`, measures: topOf(length_m, width_m) }));
const bill = (measures: PieceMeasures) =>
  coatQuantity({
    coat: coatOf(),
    measures,
    thetaWhenWrapped_per_Pa: { low: 160, mid: 240, high: 360 },
    thetaDry_per_Pa: { low: 20, mid: 30, high: 45 },
    cups: 3,
    rates: SHOP_DEFAULTS,
  });
/** Lines that hang on the pieces alone and not on the cups. */
const OF_PIECES = ['top', 'faces', 'rims', 'underside', 'run-off'] as const;

describe('pieces told together', () => {
  it('are, for one piece, that piece and nothing else', () => {
    const measures = topOf(1.2, 0.56);
    expect(together([{ name: 'counter', measures }])).toBe(measures);
  });

  it('call every edge by its piece', () => {
    const { edges, parts } = together(
      named([
        [1.2, 0.56],
        [0.9, 0.4],
      ]),
    );
    expect(edges.map(({ name }) => name)).toEqual(
      ['top 1', 'top 2'].flatMap((top) =>
        ['front', 'right', 'back', 'left', 'bowl', 'tap'].map((edge) => `${top}: ${edge}`),
      ),
    );
    expect(parts).toHaveLength(2);
  });

  it('weigh and measure what they do one by one', () => {
    fc.assert(
      fc.property(tops, (sizes) => {
        const pieces = named(sizes);
        const all = together(pieces);
        for (const key of ['topArea_m2', 'finishedFaceArea_m2', 'perimeter_m', 'bodyMass_kg'] as const) {
          const sum = pieces.reduce((total, { measures }) => total + measures[key], 0);
          expect(all[key]).toBeCloseTo(sum, 12);
        }
        expect(all.longestDiagonal_m).toBe(
          Math.max(...pieces.map(({ measures }) => measures.longestDiagonal_m)),
        );
      }),
      { numRuns: 20 },
    );
  });

  it('take the resin they take one by one, line by line, the run-off too', () => {
    fc.assert(
      fc.property(tops, (sizes) => {
        const pieces = named(sizes);
        const whole = bill(together(pieces));
        const apart = pieces.map(({ measures }) => bill(measures));
        for (const key of OF_PIECES)
          for (const end of ['low_m3', 'volume_m3', 'high_m3'] as const) {
            const of = (from: typeof whole) => from.lines.find((line) => line.key === key)?.[end] ?? 0;
            const sum = apart.reduce((total, each) => total + of(each), 0);
            expect(of(whole) / sum).toBeCloseTo(1, 10);
          }
      }),
      { numRuns: 20 },
    );
  });

  it('take the same in any order', () => {
    fc.assert(
      fc.property(tops, (sizes) => {
        const pieces = named(sizes);
        const there = bill(together(pieces));
        const back = bill(together([...pieces].reverse()));
        expect(back.volume_m3 / there.volume_m3).toBeCloseTo(1, 10);
      }),
      { numRuns: 20 },
    );
  });

  it('are at least one', () => {
    expect(() => together([])).toThrow('from one');
  });
});
