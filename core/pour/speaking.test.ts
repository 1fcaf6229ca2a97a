import { beforeAll, describe, expect, it } from 'vitest';
import { FILM_CRITERIA } from '#core/resin/stage-criteria.ts';
import { type Criterion, filmCriterion } from './film-criterion.ts';
import type { CoatPlan } from './plan.ts';
import { planCoat } from './plan-coat.ts';
import { celsius, QUICK_20, REGULAR_50, requestOf, steady } from './sample-request.check.ts';

/** Every sentence a person reads in a plan. */
function sentences(plan: CoatPlan): string[] {
  return [
    plan.says,
    ...plan.cautions,
    ...plan.steps.flatMap((step) => [step.label, step.window.limit, step.rule]),
    ...plan.stages.flatMap((stage) => [stage.label, stage.criterion, stage.rule]),
    ...plan.waysOut.flatMap((way) => [way.label, way.change, way.note]),
  ];
}

const usOnly = /°F|\bfl oz\b|\d in\b|\bft\b|\blb\b/;
const metricOnly = /°C|\bmL\b|\d L\b|\bmm\b|\bcm\b/;
/** A figure with a bare C, F or K, as no formatter writes it. */
const bare = /\d ?[CFK]\b/;
/** Shares are written "8%", never "8 %". */
const spaced = /\d %/;

const hot = requestOf(
  {
    card: QUICK_20,
    resin: { conversion: 0, temperature_K: celsius(32) },
    board_K: celsius(30),
    film_m: 0.0025,
    kind: 'colour coat',
  },
  { air: steady(celsius(31)), draws: 8 },
);
const cold = requestOf({ resin: { conversion: 0, temperature_K: celsius(16) } }, { draws: 8 });

describe.each(['us', 'metric'] as const)('a plan for a shop that thinks in %s', (system) => {
  let said: string[];
  beforeAll(() => {
    said = [hot, cold].flatMap((request) => sentences(planCoat({ ...request, system })));
  });

  it('says every figure in its own units and none in the others', () => {
    const [own, other] = system === 'us' ? [usOnly, metricOnly] : [metricOnly, usOnly];
    expect(said.filter((sentence) => own.test(sentence)).length).toBeGreaterThan(8);
    expect(said.filter((sentence) => other.test(sentence))).toEqual([]);
  });

  it('writes no bare C, F or K, and no share with a space', () => {
    expect(said.filter((sentence) => bare.test(sentence) || spaced.test(sentence))).toEqual([]);
  });
});

it('changes no number of a plan with the system, and weighs in grams in both', () => {
  const us = planCoat({ ...cold, system: 'us' });
  const metric = planCoat({ ...cold, system: 'metric' });
  const numbers = ({ steps, stages, waysOut: _ways, cautions: _c, says: _s, ...rest }: CoatPlan) => ({
    ...rest,
    steps: steps.map(({ label: _l, rule: _r, window: { limit: _limit, ...window }, ...step }) => ({
      ...step,
      window,
    })),
    stages: stages.map(({ key, at }) => ({ key, at })),
  });
  expect(numbers(metric)).toEqual(numbers(us));
  expect(planCoat(cold).says).toBe(us.says);
  for (const plan of [us, metric]) expect(plan.cautions.join(' ')).toMatch(/Gloves and sleeves for \d+ g/);
});

it('tells how each stage is found with the resin’s own figures', () => {
  const { model } = REGULAR_50;
  const say = (key: Criterion) => filmCriterion(key, model, 'us');
  expect(say('recoatBestFrom')).toContain('within 27 °F of the film');
  expect(filmCriterion('recoatBestFrom', model, 'metric')).toContain('within 15 °C of the film');
  expect(say('sandable')).toContain('22 °F above');
  expect(say('workingEnd')).toMatch(/^The resin is \d(\.\d)? times as viscous/);
  expect(filmCriterion('dryHard', { ...model, dryHardOffset_K: -2 }, 'metric')).toContain('2 °C below');
  for (const key of Object.keys(FILM_CRITERIA) as Criterion[]) expect(say(key)).not.toMatch(/\.$/);
});
