import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrisShare } from '#core/film/arris.ts';
import { coatOf, topOf } from '#core/pour/sample-request.check.ts';
import { SHOP_DEFAULTS } from '#core/pour/shop-rates.ts';
import type { QuantityLine } from './coat.ts';
import { coatQuantity, type QuantityRequest, withRounding } from './quantity.ts';

const measures = topOf(1.2, 0.56);
const request = (change: Partial<QuantityRequest> = {}): QuantityRequest => ({
  coat: coatOf(),
  measures,
  thetaWhenWrapped_per_Pa: { low: 240 / 1.5, mid: 240, high: 240 * 1.5 },
  cups: 3,
  rates: SHOP_DEFAULTS,
  ...change,
});
const lineOf = (of: QuantityRequest, key: QuantityLine['key']) =>
  coatQuantity(of).lines.find((line) => line.key === key);

describe('the bill of a coat', () => {
  it('adds up: volumes and masses of the lines are the totals, each mass its volume times the density', () => {
    const bill = coatQuantity(request());
    expect(bill.lines.map((line) => line.key)).toEqual([
      'top',
      'faces',
      'rims',
      'underside',
      'run-off',
      'cup film',
      'allowance',
    ]);
    expect(bill.lines.reduce((sum, line) => sum + line.volume_m3, 0)).toBe(bill.volume_m3);
    expect(bill.lines.reduce((sum, line) => sum + line.mass_kg, 0)).toBe(bill.mass_kg);
    for (const line of bill.lines) {
      expect(line.mass_kg).toBeCloseTo(line.volume_m3 * 1100, 12);
      expect(line.low_m3).toBeLessThanOrEqual(line.volume_m3);
      expect(line.high_m3).toBeGreaterThanOrEqual(line.volume_m3);
    }
  });

  it('covers the top by area and film: 1.2 x 0.56 m less two holes at 1.27 mm', () => {
    const holes = (Math.PI / 4) * (0.1 ** 2 + 0.035 ** 2);
    expect(lineOf(request(), 'top')!.volume_m3).toBeCloseTo((1.2 * 0.56 - holes) * 0.00127, 9);
  });

  it('covers the faces by development, counting nothing of the top twice', () => {
    const outer = measures.edges.filter((edge) => edge.outer && edge.kind === 'finished');
    expect(outer.map((edge) => edge.name).sort()).toEqual(['front', 'left', 'right']);
    const area = outer.reduce((sum, edge) => sum + edge.faceArea_m2, 0);
    expect(lineOf(request(), 'faces')!.volume_m3).toBeCloseTo(area * 0.0005, 12);
    expect(area).toBeGreaterThan(0.9 * 0.038 * (1.2 + 2 * 0.56));
    expect(lineOf(request(), 'rims')!.working.length_m).toBeCloseTo(Math.PI * 0.1, 6);
  });

  it('lets run-off go with the square root of the flow budget and with what the arris then lets pass', () => {
    const line = lineOf(request(), 'run-off')!;
    const { film_m, card } = coatOf();
    const passes = (theta: number) => arrisShare(film_m, 0.003, card.model, theta);
    const ratio = (factor: number) => (Math.sqrt(factor) * passes(240 * factor)) / passes(240);
    expect(line.low_m3 / line.volume_m3).toBeCloseTo(ratio(1 / 1.5), 2);
    expect(line.high_m3 / line.volume_m3).toBeCloseTo(ratio(1.5), 2);
    expect(line.low_m3 / line.volume_m3).toBeLessThan(1 / Math.sqrt(1.5));
    expect(line.basis).toBe('model');
  });

  it('has neither faces, rims, underside nor run-off when every edge is dammed', () => {
    const bill = coatQuantity(request({ coat: coatOf({ wrapEdges: false }) }));
    expect(bill.lines.map((line) => line.key)).toEqual(['top', 'cup film', 'allowance']);
  });

  it('leaves in each cup the larger of the least and the share of its mass, the allowance on top', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 1, maxLength: 12 }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        fc.double({ min: 0.0003, max: 0.006, noNaN: true }),
        (weights, allowance, film_m) => {
          const whole = weights.reduce((sum, weight) => sum + weight, 0);
          const cupShares = weights.map((weight) => weight / whole);
          const bill = coatQuantity(
            request({ coat: coatOf({ allowance, film_m }), cups: cupShares.length, cupShares }),
          );
          const film = bill.lines.find((line) => line.key === 'cup film')!.mass_kg;
          const asked = cupShares.reduce(
            (sum, share) => sum + Math.max(0.015, 0.025 * share * bill.mass_kg),
            0,
          );
          expect(film).toBeCloseTo(asked, 9);
          const spare = bill.lines.find((line) => line.key === 'allowance')!.mass_kg;
          expect(spare).toBeCloseTo((bill.mass_kg * allowance) / (1 + allowance), 9);
        },
      ),
    );
  });

  it('puts what rounding adds on its own line, so that the cups as weighed are the total', () => {
    const bill = coatQuantity(request());
    const rounded = withRounding(bill, bill.mass_kg + 0.004, 1100);
    expect(rounded.mass_kg).toBeCloseTo(bill.mass_kg + 0.004, 12);
    expect(rounded.lines.at(-1)).toMatchObject({ key: 'rounding', basis: 'scale' });
    expect(rounded.lines.at(-1)!.mass_kg).toBeCloseTo(0.004, 12);
  });

  it('needs more for a thicker film, a larger top, a longer flow', () => {
    const mass = (of: Partial<QuantityRequest>) => coatQuantity(request(of)).mass_kg;
    expect(mass({ coat: coatOf({ film_m: 0.0016 }) })).toBeGreaterThan(mass({}));
    expect(mass({ measures: topOf(1.3, 0.56) })).toBeGreaterThan(mass({}));
    expect(mass({ thetaWhenWrapped_per_Pa: { low: 400, mid: 600, high: 900 } })).toBeGreaterThan(mass({}));
  });

  it('names what it refuses', () => {
    expect(() => coatQuantity(request({ coat: coatOf({ film_m: 0 }) }))).toThrow('film_m');
    expect(() => coatQuantity(request({ cups: 0 }))).toThrow('cups');
    expect(() => coatQuantity(request({ cups: 2, cupShares: [1] }))).toThrow('cupShares');
    expect(() =>
      coatQuantity(request({ thetaWhenWrapped_per_Pa: { low: 1, mid: Number.NaN, high: 2 } })),
    ).toThrow('thetaWhenWrapped_per_Pa.mid');
  });
});
