import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalQuantile } from '#core/numeric/random.ts';
import { drawModels } from '#core/resin/ensemble.ts';
import { planCoat } from '../plan-coat.ts';
import { QUICK_20, requestOf } from '../sample-request.check.ts';
import { batchSeed, chanceToFinish, tellChance, throwBatch, throwingGround } from './chance.ts';
import { filmEnds, filmMoved, pourNow_s } from './cure-ends.ts';
import { frameOf, type PourFrame } from './frame.ts';
import { filmWeights, readCup, readFilm, respond } from './response.ts';
import { DEFAULT_SPREADS, type PourSpreads } from './spreads.ts';
import { stepIdsOf, type Thrown, throwPour } from './throw-pour.ts';

const request = requestOf({ card: QUICK_20, crew: 2 });
const plan = planCoat({ ...request, waysOut: false });
const frame = frameOf(request, plan);

const STEADY: PourSpreads = {
  steps: Object.fromEntries(
    Object.keys(DEFAULT_SPREADS.steps).map((kind) => [kind, { factor: 1, ln: 0, runs: 0 }]),
  ) as PourSpreads['steps'],
  common: 0,
  temperature_K: 0,
  pause: { chance: 0, mid_s: 60, ln: 0 },
};

const asPlanned = (of: PourFrame): Thrown => ({
  mix: of.cups.map(() => 1),
  pour: of.cups.map(() => 1),
  meld: 1,
  wrap: 1,
  torch: 1,
  scrape: 1,
  by_K: 0,
  pause: null,
});

/** Standard normal probability, by inverting the quantile (bisection). */
function normalShare(z: number): number {
  let low = 1e-9;
  let high = 1 - 1e-9;
  for (let i = 0; i < 60; i++) {
    const p = 0.5 * (low + high);
    if (normalQuantile(p) < z) low = p;
    else high = p;
  }
  return low;
}

describe('a thrown pour', () => {
  it('that goes as planned has the slack of the plan at every step the middle resin decides', () => {
    const slacks = new Float64Array(stepIdsOf(frame).length);
    throwPour(frame, respond(request.coat.card.model, frame.response), asPlanned(frame), slacks);
    plan.cups.forEach((cup, i) => {
      const step = plan.steps.find(({ id }) => id === `pour-${cup.number}`)!;
      const at = plan.cupForecasts[i]!;
      // the cup's own limit, by the card's own model, as the plan has it
      expect(slacks[i]!).toBeLessThanOrEqual(at.pourNow!.mid_s - at.emptied_s + 5);
      expect(slacks[i]!).toBeGreaterThan(step.slack_s);
    });
  });

  it('is never better for a longer meld, wrap or torch', () => {
    const response = respond(request.coat.card.model, frame.response);
    const factor = fc.double({ min: 0.3, max: 4, noNaN: true });
    fc.assert(
      fc.property(
        factor,
        factor,
        factor,
        fc.double({ min: 1, max: 2, noNaN: true }),
        (meld, wrap, torch, more) => {
          const least = (by: number) => {
            const slacks = new Float64Array(stepIdsOf(frame).length);
            throwPour(
              frame,
              response,
              { ...asPlanned(frame), meld: meld * by, wrap: wrap * by, torch: torch * by },
              slacks,
            );
            return slacks;
          };
          const short = least(1);
          const long = least(more);
          stepIdsOf(frame).forEach((id, k) => {
            if (id !== 'scrape-1') expect(long[k]!).toBeLessThanOrEqual(short[k]! + 1e-6);
          });
        },
      ),
    );
  });
});

describe('a resin read between its nodes', () => {
  it('is within 1 % of curing it anew where nearly all pours fall: 2.5 K off, a cup that stood 0.7 to 1.5 times as long', () => {
    const models = drawModels(QUICK_20, 6, 11);
    const film = frame.response.film;
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 5 }),
        fc.double({ min: -2.5, max: 2.5, noNaN: true }),
        fc.double({ min: 0.7, max: 1.5, noNaN: true }),
        (draw, by_K, stood) => {
          const model = models[draw]!;
          const response = respond(model, frame.response);
          const anew = filmEnds(model, filmMoved(film, by_K, stood));
          const cup_s = pourNow_s(model, frame.response.masses_kg[0]!, filmMoved(film, by_K, 1))!;
          expect(Math.abs(readCup(response.pourNow[0]!, by_K) / cup_s - 1)).toBeLessThan(0.01);
          const weights = filmWeights(by_K, stood);
          expect(Math.abs(readFilm(response.workingEnd, weights) / anew.workingEnd_s! - 1)).toBeLessThan(
            0.01,
          );
          expect(Math.abs(readFilm(response.torch!, weights) / anew.torch_s! - 1)).toBeLessThan(0.01);
          expect(Math.abs(readFilm(response.gel, weights) / anew.gel_s! - 1)).toBeLessThan(0.01);
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('the chance to finish', () => {
  it('is the closed form where only one logarithmic duration scatters', () => {
    // one cup, then a meld: in time when ln meld <= ln(working end - down)
    const meld_s = 300;
    const one: PourFrame = {
      ...frame,
      crew: 1,
      cups: [{ ...frame.cups[0]!, mass: 0 }],
      meld_s,
      wrap_s: 0,
      wrapPlanned_s: null,
      torch_s: 0,
      scrape_s: 0,
      oldest: 0,
      oldestStands_s: frame.cups[0]!.mix_s + frame.cups[0]!.empty_s,
    };
    const { mix_s, empty_s, spread_s } = one.cups[0]!;
    for (const [ln, spare] of [
      [0.3, 1.1],
      [0.3, 1.5],
      [0.6, 0.8],
    ] as const) {
      const ends_s = mix_s + empty_s + spread_s + meld_s * spare;
      const fixed = Math.log(ends_s);
      const response = {
        pourNow: [{ by_K: [0], ln_s: [9] }],
        workingEnd: Array(8).fill(fixed),
        torch: null,
        gel: Array(8).fill(12),
      };
      const spreads = { ...STEADY, steps: { ...STEADY.steps, meld: { factor: 1, ln, runs: 0 } } };
      const ground = { frame: one, responses: [response], spreads };
      const batches = [1, 2, 3, 4].map((seed) => throwBatch(ground, 2500, seed));
      const told = tellChance(plan, one, batches);
      // a Latin hypercube has one point in each of 2500 strata, so it is right to one stratum
      expect(Math.abs(told.chance - normalShare(Math.log(spare) / ln))).toBeLessThan(1 / 2500 + 1e-9);
    }
  });

  it('is the share of resins that hold when nothing but the resin differs', () => {
    const ground = throwingGround({ request, plan, spreads: STEADY, resins: 24, seed: 5 });
    const each = ground.responses.map((response) => {
      const slacks = new Float64Array(stepIdsOf(ground.frame).length);
      throwPour(ground.frame, response, asPlanned(ground.frame), slacks);
      return Math.min(...slacks) >= 0;
    });
    const told = chanceToFinish({ request, plan, spreads: STEADY, resins: 24, seed: 5, pours: 4800 });
    expect(told.chance).toBeCloseTo(each.filter(Boolean).length / 24, 6);
  });

  it('is the same for the same seed and whatever order the batches come in, and its error shrinks', () => {
    const ask = { request, plan, spreads: DEFAULT_SPREADS, resins: 16, seed: 3 };
    const told = chanceToFinish({ ...ask, pours: 2000 });
    expect(chanceToFinish({ ...ask, pours: 2000 })).toEqual(told);
    const ground = throwingGround(ask);
    const batches = [...Array(10).keys()].map((i) => throwBatch(ground, 200, batchSeed(3, i)));
    const turned = tellChance(plan, ground.frame, [...batches].reverse());
    expect(turned.chance).toBeCloseTo(told.chance, 12);
    expect(turned.slack).toEqual(told.slack);
    const more = chanceToFinish({ ...ask, seed: 4, pours: 20_000 });
    expect(Math.abs(more.chance - told.chance)).toBeLessThan(5 * (told.standardError + more.standardError));
  });

  it('tells shares that add up, and late steps at least as often as they break', () => {
    const told = chanceToFinish({ request, plan, spreads: DEFAULT_SPREADS, resins: 16, pours: 2000 });
    const broken = told.steps.reduce((sum, { breaks }) => sum + breaks, 0);
    expect(broken).toBeCloseTo(1 - told.chance, 9);
    for (const { late, breaks } of told.steps) expect(late).toBeGreaterThanOrEqual(breaks);
    expect(told.slack.low_s).toBeLessThanOrEqual(told.slack.mid_s);
    expect(told.slack.mid_s).toBeLessThanOrEqual(told.slack.high_s);
  });

  it('grows with people, with slower hands it falls', () => {
    const of = (crew: number, factor: number) => {
      const asked = requestOf({ card: QUICK_20, crew });
      const steps = Object.fromEntries(
        Object.entries(DEFAULT_SPREADS.steps).map(([kind, spread]) => [kind, { ...spread, factor }]),
      ) as PourSpreads['steps'];
      const made = planCoat({ ...asked, waysOut: false });
      return chanceToFinish({
        request: asked,
        plan: made,
        spreads: { ...DEFAULT_SPREADS, steps },
        resins: 16,
        pours: 1000,
      }).chance;
    };
    expect(of(2, 1)).toBeGreaterThan(of(1, 1));
    expect(of(2, 1.3)).toBeLessThan(of(2, 1));
  });

  it('refuses figures out of range by name', () => {
    const ask = { request, plan, spreads: DEFAULT_SPREADS };
    expect(() => chanceToFinish({ ...ask, pours: 10 })).toThrow(/pours = 10: allowed 100/);
    expect(() => chanceToFinish({ ...ask, resins: 1 })).toThrow(/resins = 1: allowed 2/);
    expect(() => chanceToFinish({ ...ask, spreads: { ...DEFAULT_SPREADS, common: 2 } })).toThrow(
      /common = 2/,
    );
    expect(() => chanceToFinish({ ...ask, plan: { ...plan, coatId: 'other' } })).toThrow(
      /plan is of coat "other"/,
    );
  });
});
