import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GENERIC_CARDS, QUICK_20, REGULAR_50 } from './cards.ts';
import { conversionIntegral, nthOrderConversion } from './closed-forms.ts';
import { surfaceCoefficient } from './convection.ts';
import { cupLoss, cupShape, cupSurfaces, innerResistance } from './cup-loss.ts';
import { drawModels, rangeOf } from './ensemble.ts';
import { heatFromRatio, massRatioOf } from './heat-of-reaction.ts';
import { arrheniusFactor, conversionForTg, diffusionFactor, rate, reactionOf, tgOf } from './kinetics.ts';
import { tabulatedLoss } from './loss-table.ts';
import { modelOffRatio } from './mix-error.ts';
import type { ResinCard } from './model.ts';
import { conversionForRatio, freshViscosity, viscosity, viscosityRatio } from './viscosity.ts';

const model = REGULAR_50.model;

describe('kinetics', () => {
  it('has the slopes of its own rate, on and off the ratio', () => {
    const out = new Float64Array(3);
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.75, noNaN: true }),
        fc.double({ min: 275, max: 400, noNaN: true }),
        fc.constantFrom(0.85, 1, 1.2),
        (a, T, balance) => {
          const reaction = reactionOf(model, balance);
          reaction.slopes(a, T, out);
          const f = reaction.rate(a, T);
          const byA = (reaction.rate(a + 1e-6, T) - reaction.rate(a - 1e-6, T)) / 2e-6;
          const byT = (reaction.rate(a, T + 1e-4) - reaction.rate(a, T - 1e-4)) / 2e-4;
          expect(out[0]).toBe(f);
          expect(Math.abs(out[1]! - byA)).toBeLessThan(1e-5 * (f + Math.abs(byA)) + 1e-14);
          expect(Math.abs(out[2]! - byT)).toBeLessThan(1e-5 * (f + Math.abs(byT)) + 1e-14);
        },
      ),
    );
  });

  it('starts at k1 and freezes past the glass transition', () => {
    expect(rate(model, 0, 297.15) / model.kRef_per_s).toBeCloseTo(1, 9);
    expect(diffusionFactor(model, 0.5, 297.15)).toBeCloseTo(1, 6);
    const frozen = conversionForTg(model, 297.15 + model.vitrificationOffset_K)!;
    expect(diffusionFactor(model, frozen, 297.15)).toBeCloseTo(0.5, 12);
    expect(conversionForTg(model, 400)).toBeNull();
    expect(conversionForTg(model, 200)).toBeNull();
  });

  it('refuses what is out of range', () => {
    expect(() => rate(model, -0.1, 297)).toThrow(/conversion is -0.1/);
    expect(() => rate(model, 0.1, 0)).toThrow(/temperature_K is 0/);
    expect(() => tgOf(model, 1.01)).toThrow(RangeError);
    expect(() => arrheniusFactor(-1, 297)).toThrow(RangeError);
    expect(() => reactionOf({ ...model, kRef_per_s: Number.NaN })).toThrow(/kRef_per_s/);
    expect(() => conversionIntegral(0.5, 2, 1)).toThrow(RangeError);
    expect(() => nthOrderConversion(-1, 1, 1)).toThrow(RangeError);
  });
});

describe('viscosity', () => {
  it('turns a ratio into a conversion and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1e6, noNaN: true }), (ratio) => {
        const a = conversionForRatio(model, ratio);
        expect(Math.abs(viscosityRatio(model, a)! / ratio - 1)).toBeLessThan(1e-5);
      }),
    );
  });

  it('about halves in 10 K and is null from gel on', () => {
    expect(freshViscosity(model, 297.15)).toBeCloseTo(model.viscosityRef_Pa_s, 12);
    const half = freshViscosity(model, 307.15) / freshViscosity(model, 297.15);
    expect(half).toBeGreaterThan(0.45);
    expect(half).toBeLessThan(0.55);
    expect(viscosity(model, 0.6, 297.15)).toBeNull();
    expect(viscosityRatio(model, 0.7)).toBeNull();
    expect(viscosity(model, 0.2008, 297.15)! / model.viscosityRef_Pa_s).toBeCloseTo(2, 3);
  });
});

describe('cup loss', () => {
  it('of a shape: as high as wide unless told', () => {
    const shape = cupShape(1e-3);
    expect(shape.depth_m).toBeCloseTo(shape.diameter_m, 12);
    const flat = cupShape(1e-3, 0.2);
    expect(flat.depth_m * cupSurfaces(flat).base_m2).toBeCloseTo(1e-3, 12);
  });

  it('balances: what leaves the skin is what crosses the liquid', () => {
    const shape = cupShape(5e-4);
    const loss = cupLoss(shape, 0.2, 293.15);
    for (const excess of [4, 17, 60, 130]) {
      const power = loss.flow(excess);
      const skin = excess - power * innerResistance(shape, 0.2);
      const { wall_m2, top_m2, base_m2 } = cupSurfaces(shape);
      let outside = skin;
      let wall = 8;
      for (let i = 0; i < 60; i++) {
        wall = surfaceCoefficient('side', 293.15 + outside, 293.15, shape.depth_m);
        outside = skin / (1 + 0.005 * wall);
      }
      const top = surfaceCoefficient('up', 293.15 + skin, 293.15, shape.diameter_m / 4);
      const out = wall * wall_m2 * outside + top * top_m2 * skin + 3.5 * base_m2 * skin;
      expect(Math.abs(out / power - 1)).toBeLessThan(1e-5);
    }
  });

  it('tabulates a smooth law within 0.5 %, odd, with its own slope', () => {
    const law = (d: number) => 5 * d + 2 * d ** 1.25;
    const loss = tabulatedLoss(law);
    for (const d of [0.12, 0.7, 3, 9, 33, 77, 150, 300]) {
      expect(Math.abs(loss.flow(d) / law(d) - 1)).toBeLessThan(0.005);
      expect(loss.flow(-d)).toBe(-loss.flow(d));
      expect(Math.abs(loss.slope(d) - (loss.flow(d + 1e-5) - loss.flow(d - 1e-5)) / 2e-5)).toBeLessThan(1e-5);
    }
    expect(loss.flow(500)).toBeGreaterThan(loss.flow(320));
    expect(() => tabulatedLoss(() => 1)).toThrow(/does not rise/);
  });
});

describe('off the ratio', () => {
  it('changes nothing at the ratio', () => {
    const same = modelOffRatio(model, 0.875, 1);
    expect(same.heat_J_kg).toBeCloseTo(model.heat_J_kg, 6);
    expect(same.gelConversion).toBe(model.gelConversion);
    expect(same.tgFull_K).toBeCloseTo(model.tgFull_K, 9);
  });

  it('reads excess amine as Tg(a/r)', () => {
    const rich = modelOffRatio(model, 0.875, 1.2);
    for (const a of [0, 0.3, 0.7, 1]) expect(tgOf(rich, a)).toBeCloseTo(tgOf(model, a / 1.2), 9);
  });
});

describe('the generic cards', () => {
  it('have the heat their mix ratio gives, within its 8 %', () => {
    for (const card of GENERIC_CARDS) {
      const heat = heatFromRatio(massRatioOf(card.mix));
      expect(Math.abs(card.model.heat_J_kg / heat - 1)).toBeLessThan(0.16);
    }
  });

  it('have ids of their own', () => {
    expect(GENERIC_CARDS.map((card) => card.id)).toEqual(['quick-20', 'regular-50']);
  });
});

/** A card known by its spread alone, as before any fit. */
function unfitted(card: ResinCard): ResinCard {
  const { posterior: _posterior, ...rest } = card;
  return rest;
}

describe('an ensemble', () => {
  it('starts with the card, repeats with its seed and stays in the domain', () => {
    const models = drawModels(QUICK_20, 40, 3);
    expect(models).toHaveLength(40);
    expect(models[0]).toEqual(QUICK_20.model);
    expect(drawModels(QUICK_20, 40, 3)).toEqual(models);
    expect(drawModels(QUICK_20, 40, 4)[7]).not.toEqual(models[7]);
    for (const drawn of models) {
      expect(drawn.workingRatio).toBeGreaterThan(1);
      expect(() => reactionOf(drawn)).not.toThrow();
    }
    expect(drawModels(QUICK_20, 1, 3)).toEqual([QUICK_20.model]);
    expect(() => drawModels(QUICK_20, 0, 3)).toThrow(RangeError);
  });

  it('of a card known exactly is that card', () => {
    const zero = { rhoLn: 0, order: 0, activation_J_mol: 0, heatLn: 0, viscosityRefLn: 0, workingRatioLn: 0 };
    const spread = { ...zero, kRefLn: 0, gelConversion: 0, tgFull_K: 0, dryHardOffset_K: 0 };
    for (const drawn of drawModels({ ...unfitted(QUICK_20), spread }, 6, 1)) {
      expect(Math.abs(drawn.kRef_per_s / QUICK_20.model.kRef_per_s - 1)).toBeLessThan(0.006);
    }
  });

  it('follows a k1 that no label pins', () => {
    const spread = { ...QUICK_20.spread, kRefLn: 1 };
    const logs = drawModels({ ...unfitted(QUICK_20), spread }, 80, 1).map((m) => Math.log(m.kRef_per_s));
    const mean = logs.reduce((sum, v) => sum + v, 0) / logs.length;
    const deviation = Math.sqrt(logs.reduce((sum, v) => sum + (v - mean) ** 2, 0) / logs.length);
    expect(deviation).toBeGreaterThan(0.6);
  });
});

describe('a range', () => {
  it('is the 5, 50 and 95 % quantiles', () => {
    const times = Array.from({ length: 101 }, (_, i) => 100 - i);
    expect(rangeOf(times)).toEqual({ low_s: 5, mid_s: 50, high_s: 95, reached: 1 });
  });

  it('counts never as later than everything, and says how many get there', () => {
    const range = rangeOf([
      ...Array.from({ length: 30 }, (_, i) => i),
      ...Array.from({ length: 70 }, () => null),
    ])!;
    expect(range.reached).toBeCloseTo(0.3, 12);
    expect(range.low_s).toBeCloseTo(4.95, 9);
    expect(range.mid_s).toBe(29);
    expect(rangeOf([null, null])).toBeNull();
    expect(rangeOf([1, ...Array.from({ length: 30 }, () => null)])).toBeNull();
    expect(() => rangeOf([])).toThrow(RangeError);
    expect(() => rangeOf([Number.NaN])).toThrow(RangeError);
  });
});
