import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { BOARDS } from '#core/resin/boards.ts';
import type { CoatPlan, StageKey } from './plan.ts';
import { type PlanRequest, planCoat } from './plan-coat.ts';
import { celsius, clear, QUICK_20, requestOf, steady, topOf } from './sample-request.check.ts';
import { SHOP_DEFAULTS } from './shop-rates.ts';

const planned = (coat: Parameters<typeof requestOf>[0] = {}, change: Partial<PlanRequest> = {}) =>
  planCoat(requestOf(coat, { waysOut: false, ...change }));
const stage = (plan: CoatPlan, key: StageKey) => plan.stages.find((each) => each.key === key)!.at!;

/** Every number anywhere in a plan. */
function numbersIn(value: unknown, path = 'plan'): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (ArrayBuffer.isView(value)) return [...(value as Float64Array)].map((n, i) => [`${path}[${i}]`, n]);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inside]) => numbersIn(inside, `${path}.${key}`));
}

describe('a colour coat in three colours on a vanity top', () => {
  let plan: CoatPlan;
  beforeAll(() => {
    plan = planned();
  });

  it('is the same twice over, and another with another seed only in its ranges', () => {
    expect(planned()).toEqual(plan);
    const other = planned({}, { seed: 2 });
    expect(other.film.time_s).toEqual(plan.film.time_s);
    expect(stage(other, 'gel').low_s).not.toBe(stage(plan, 'gel').low_s);
  });

  it('conserves mass: the cups hold the sum of the lines, rounding included', () => {
    const cups = plan.cups.reduce((sum, cup) => sum + cup.mass_kg, 0);
    const lines = plan.quantity.lines.reduce((sum, line) => sum + line.mass_kg, 0);
    expect(cups).toBeCloseTo(plan.quantity.mass_kg, 9);
    expect(lines).toBeCloseTo(plan.quantity.mass_kg, 9);
    const rounding = plan.quantity.lines.find((line) => line.key === 'rounding')!;
    expect(rounding.mass_kg).toBeGreaterThanOrEqual(-1e-9);
    expect(rounding.mass_kg).toBeLessThanOrEqual(plan.cups.length * 5 * SHOP_DEFAULTS.scaleStep_kg);
  });

  it('divides the colours by share to within the rounding', () => {
    for (const [name, share] of [
      ['ink', 0.6],
      ['sea', 0.28],
      ['copper', 0.12],
    ] as const) {
      const own = plan.cups.filter((cup) => cup.colour === name).reduce((sum, cup) => sum + cup.mass_kg, 0);
      expect(Math.abs(own - share * plan.quantity.mass_kg)).toBeLessThan(0.01);
    }
  });

  it('uses in its bill the flow budget that is left when its own steps work the edges', () => {
    const wrap = plan.steps.find((step) => step.kind === 'wrap edges')!;
    const middle = (wrap.start_s + wrap.end_s) / 2 - plan.filmStart_s;
    const { time_s, theta_per_Pa: theta } = plan.film;
    const after = time_s.findIndex((time) => time > middle);
    const billed = plan.quantity.lines.find((line) => line.key === 'run-off')!.working.flowBudgetLeft_per_Pa!;
    expect(billed).toBeLessThan((theta.at(-1)! - theta[after - 1]!) * 1.005);
    expect(billed).toBeGreaterThan((theta.at(-1)! - theta[after]!) * 0.995);
  });

  it('orders its windows and its stages', () => {
    for (const { window, start_s, end_s, slack_s, kind } of plan.steps) {
      expect(window.opens_s).toBeLessThanOrEqual(start_s + 1e-9);
      expect(end_s).toBeGreaterThan(start_s);
      expect(window.closes_s).toBeLessThanOrEqual(window.closesMid_s);
      expect(window.closesMid_s).toBeLessThanOrEqual(window.closesHigh_s);
      expect(slack_s).toBeCloseTo(window.closes_s - end_s, 9);
      if (kind !== 'hands off') expect(window.closes_s).toBeLessThan(stage(plan, 'recoat opens').low_s);
    }
    const order: StageKey[] = ['working end', 'no more levelling', 'gel', 'recoat opens', 'recoat closes'];
    for (const end of ['low_s', 'mid_s', 'high_s'] as const)
      for (let i = 1; i < order.length; i++)
        expect(stage(plan, order[i]!)[end]).toBeGreaterThan(stage(plan, order[i - 1]!)[end]);
    for (const cup of plan.cupForecasts) {
      const { warm, pourNow, danger, gel } = cup;
      const at = [warm, pourNow, danger, gel].map((each) => each!.mid_s);
      expect(at).toEqual([...at].sort((a, b) => a - b));
      expect(pourNow!.low_s).toBeLessThan(pourNow!.mid_s);
      expect(pourNow!.mid_s).toBeLessThan(pourNow!.high_s);
      expect(cup.history.time_s[0]).toBe(0);
    }
  });

  it('starts the film in the state its cup had when it was empty', () => {
    const first = plan.cupForecasts[0]!;
    expect(plan.filmStart_s).toBe(first.emptied_s);
    const { time_s, conversion } = first.history;
    const after = time_s.findIndex((time) => time > first.emptied_s - first.mixed_s);
    expect(plan.film.conversion[0]!).toBeGreaterThan(conversion[after - 1]!);
    expect(plan.film.conversion[0]!).toBeLessThanOrEqual(conversion[after]!);
  });

  it('answers what the film can still do', () => {
    const { lastTouch, longestWave_m, faceHolds_m, faceHoldsLow_m, faceHoldsHigh_m, thetaTotal_per_Pa } =
      plan.answers;
    const times = lastTouch.map((touch) => touch.at_s!);
    expect(times).toEqual([...times].sort((a, b) => b - a));
    expect(longestWave_m).toBeGreaterThan(0.05);
    expect(faceHoldsLow_m).toBeLessThan(faceHolds_m);
    expect(faceHolds_m).toBeLessThan(faceHoldsHigh_m);
    expect(thetaTotal_per_Pa).toBeLessThan(plan.film.theta_per_Pa.at(-1)!);
    expect(thetaTotal_per_Pa).toBeGreaterThan(0.5 * plan.film.theta_per_Pa.at(-1)!);
  });

  it('says verdict, slack and figures in one sentence, and tells both recoat windows when they disagree', () => {
    expect(plan.verdict).toBe('fits');
    expect(plan.says).toMatch(/^It fits: 3 cups are down after \d+ min.*to spare/);
    const least = plan.steps.find((step) => step.id === plan.slackStep)!;
    expect(least.slack_s).toBe(plan.slack_s);
    for (const step of plan.steps.filter((each) => !each.optional))
      expect(step.slack_s).toBeGreaterThanOrEqual(plan.slack_s - 1e-6);
    expect(plan.cautions.join(' ')).toContain('Two recoat windows');
    expect(plan.cautions.join(' ')).toContain('safety data sheet');
  });

  it('holds no number that is not finite', () => {
    for (const [path, value] of numbersIn(plan)) expect(Number.isFinite(value), path).toBe(true);
  });
});

describe('what changes a plan, and which way', () => {
  // Cup numbers are fixed and edges dammed, so that nothing but the change itself acts.
  const fixed = { fewestCups: 6, wrapEdges: false, kind: 'flood coat', colours: [clear] } as const;

  it('never has more slack with hotter resin or a hotter shop', () => {
    const slack = (change: number, where: 'resin' | 'shop') =>
      planned(
        {
          ...fixed,
          resin: { conversion: 0, temperature_K: celsius(22 + (where === 'resin' ? change : 0)) },
        },
        { air: steady(celsius(22 + (where === 'shop' ? change : 0))) },
      ).slack_s;
    for (const where of ['resin', 'shop'] as const) {
      const slacks = [0, 2, 4, 6, 8].map((change) => slack(change, where));
      for (let i = 1; i < slacks.length; i++) expect(slacks[i]!).toBeLessThanOrEqual(slacks[i - 1]! + 1);
    }
  });

  it('never has less slack with more crew', () => {
    for (const coat of [fixed, { ...fixed, card: QUICK_20, film_m: 0.0025 }]) {
      const slacks = [1, 2, 3].map((crew) => planned({ ...coat, crew }).slack_s);
      expect(slacks[1]!).toBeGreaterThanOrEqual(slacks[0]! - 1e-6);
      expect(slacks[2]!).toBeGreaterThanOrEqual(slacks[1]! - 1e-6);
    }
  });

  it('never has more slack on a bigger piece', () => {
    const slacks = [1, 1.3, 1.6, 1.9].map(
      (length) => planned({ ...fixed, card: QUICK_20 }, { measures: topOf(length, 0.56) }).slack_s,
    );
    for (let i = 1; i < slacks.length; i++) expect(slacks[i]!).toBeLessThanOrEqual(slacks[i - 1]! + 1e-6);
  });

  it('leaves more on the faces when the edges are worked later: a slow melder holds more and loses less', () => {
    // no waiting for the best minute, which would make up for quick melding
    const rates = { ...SHOP_DEFAULTS, wrapPatience_s: 0 };
    const quick = planned({}, { rates });
    const slow = planned({}, { rates: { ...rates, meld_s_per_m2: 1500 } });
    expect(slow.answers.faceHolds_m).toBeGreaterThan(quick.answers.faceHolds_m);
    const runs = (plan: CoatPlan) => plan.quantity.lines.find((line) => line.key === 'run-off')!.mass_kg;
    expect(runs(slow)).toBeLessThan(runs(quick));
  });

  it('keeps every cup within the maker’s own largest and makes at least the number asked', () => {
    const limited = planned({ largestCup_kg: 0.3 });
    for (const cup of limited.cups) expect(cup.mass_kg).toBeLessThanOrEqual(0.3 + 0.006);
    expect(planned({ fewestCups: 7 }).cups).toHaveLength(7);
  });

  it('plans about a hundred cups at most and says so instead of failing', () => {
    const plan = planned(
      { largestCup_kg: 0.02, film_m: 0.006 },
      {
        measures: topOf(3, 0.9),
        draws: 4,
      },
    );
    expect(plan.cups.length).toBeGreaterThan(90);
    expect(plan.cups.length).toBeLessThanOrEqual(110);
    expect(plan.cautions.join(' ')).toContain('Cups of 20.0 g would be about');
  });

  it('plans the thinnest seal coat and the thickest flood', () => {
    const seal = planned({ kind: 'seal coat', film_m: 0.0001, faceFilm_m: 0.0001, colours: [] });
    expect(seal.cups[0]!.colour).toBe('clear');
    expect(seal.steps.find((step) => step.kind === 'torch')!.window.limit).toContain('stay anyway');
    const thick = planned({ kind: 'flood coat', film_m: 0.006, colours: [] });
    expect(thick.answers.peak_K).toBeGreaterThan(seal.answers.peak_K);
  });

  it('puts drips and wrapping out of a dammed coat', () => {
    const kinds = new Set(planned({ ...fixed }).steps.map((step) => step.kind));
    expect(kinds.has('wrap edges') || kinds.has('scrape drips') || kinds.has('meld')).toBe(false);
  });

  it('melds only colour coats of more than one colour', () => {
    expect(planned({ colours: [clear] }).steps.some((step) => step.kind === 'meld')).toBe(false);
    expect(planned({ kind: 'flood coat' }).steps.some((step) => step.kind === 'meld')).toBe(false);
  });

  it('follows the shop’s temperature: a night that cools makes gel later', () => {
    const cooling = { time_s: [0, 7200], temperature_K: [celsius(24), celsius(15)] };
    expect(stage(planned({}, { air: cooling }), 'gel').mid_s).toBeGreaterThan(
      1.1 * stage(planned(), 'gel').mid_s,
    );
  });
});

describe('a pour that goes wrong', () => {
  const hot = requestOf(
    { card: QUICK_20, resin: { conversion: 0, temperature_K: celsius(32) }, board_K: celsius(30) },
    { air: steady(celsius(31)), waysOut: false },
  );

  it('does not fit with a quick resin in a hot shop, says by how much, and that no cup is safe', () => {
    const plan = planCoat(hot);
    expect(plan.verdict).toBe('does not fit');
    expect(plan.slack_s).toBeLessThan(0);
    expect(plan.says).toMatch(/^It does not fit: .* too late/);
    expect(plan.cautions[0]).toContain('No cup of this resin at 90 °F can be poured in time');
  });

  it('warns of alcohol ink before the torch, of a hot cup with its grams, of a part too small for the scale', () => {
    const plan = planned({
      colours: [
        { ...clear, share: 0.97 },
        { name: 'smoke', share: 0.03, colourant: 'alcohol ink', load: 0.005, swatch: '#555555' },
      ],
    });
    const all = plan.cautions.join('\n');
    expect(all).toContain('smoke holds alcohol ink: no torch');
    expect(all).toMatch(/Cup 1 \(\d+ g\) left standing has to be out/);
    expect(all).toContain('smoke wants');
    expect(all).toContain('Cup 2: part B');
  });
});

describe('any request in range', () => {
  it('gives finite numbers, nobody two tasks at once, mass conserved', { timeout: 60_000 }, () => {
    const any = fc.record({
      length: fc.double({ min: 0.4, max: 3, noNaN: true }),
      width: fc.double({ min: 0.3, max: 0.9, noNaN: true }),
      film: fc.double({ min: 0.0003, max: 0.003, noNaN: true }),
      resin: fc.double({ min: 16, max: 34, noNaN: true }),
      air: fc.double({ min: 15, max: 34, noNaN: true }),
      crew: fc.constantFrom(1, 2, 3),
      quick: fc.boolean(),
      wrap: fc.boolean(),
      one: fc.boolean(),
    });
    fc.assert(
      fc.property(any, ({ length, width, film, resin, air, crew, quick, wrap, one }) => {
        const plan = planned(
          {
            film_m: film,
            crew,
            wrapEdges: wrap,
            resin: { conversion: 0, temperature_K: celsius(resin) },
            board_K: celsius(air),
            ...(quick ? { card: QUICK_20 } : {}),
            ...(one ? { colours: [clear] } : {}),
          },
          {
            measures: topOf(length, width),
            air: steady(celsius(air)),
            draws: 8,
            board: BOARDS['plywood-18'],
          },
        );
        for (const [path, value] of numbersIn(plan)) expect(Number.isFinite(value), path).toBe(true);
        for (const a of plan.steps)
          for (const b of plan.steps)
            if (a.id < b.id && a.person === b.person)
              expect(a.end_s <= b.start_s + 1e-6 || b.end_s <= a.start_s + 1e-6, `${a.id} ${b.id}`).toBe(
                true,
              );
        const ids = plan.steps.map((step) => step.id);
        expect(new Set(ids).size).toBe(ids.length);
        const cups = plan.cups.reduce((sum, cup) => sum + cup.mass_kg, 0);
        expect(cups).toBeCloseTo(plan.quantity.mass_kg, 9);
      }),
      { numRuns: 60, seed: 20260514 },
    );
  });
});
