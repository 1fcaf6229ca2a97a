import { describe, expect, it } from 'vitest';
import type { CoatPlan, Step } from '#core/pour/plan.ts';
import { ruleText } from './rules.ts';
import { runRows } from './run-rows.ts';

function step(id: string, kind: Step['kind'], over: Partial<Step> = {}): Step {
  return {
    id,
    kind,
    label: id,
    person: 1,
    cup: null,
    start_s: 0,
    end_s: 30,
    window: { opens_s: 0, closes_s: 60, closesMid_s: 60, closesHigh_s: 60, limit: 'x', basis: 'model' },
    slack_s: 30,
    optional: false,
    rule: '',
    ...over,
  };
}

/** Only the steps are read. */
const planOf = (...steps: Step[]) => ({ steps }) as unknown as CoatPlan;

describe('the rows of a run sheet', () => {
  const scrape = (n: number, over: Partial<Step> = {}) =>
    step(`scrape ${n}`, 'scrape drips', { label: `Scrape drips, round ${n}`, slack_s: 100 - n, ...over });

  it('puts the rounds of scraping on the row of the first, with the least of their slacks', () => {
    const rows = runRows(planOf(step('mix', 'mix'), scrape(1), step('torch', 'torch'), scrape(2), scrape(3)));
    expect(rows.map((row) => row.label)).toEqual(['mix', 'Scrape drips, 3 rounds', 'torch']);
    expect(rows[1]?.steps.map((s) => s.id)).toEqual(['scrape 1', 'scrape 2', 'scrape 3']);
    expect(rows[1]?.slack_s).toBe(97);
  });

  it('keeps the rounds of two people apart, and one round as it is called', () => {
    const rows = runRows(planOf(scrape(1), scrape(2, { person: 2 })));
    expect(rows.map((row) => row.label)).toEqual(['Scrape drips, round 1', 'Scrape drips, round 2']);
  });

  it('gives a wait no slack, but says how late a step is', () => {
    const rows = runRows(
      planOf(
        step('wait', 'hands off', { slack_s: 0, optional: true }),
        step('torch', 'torch', { slack_s: -5 }),
      ),
    );
    expect(rows.map((row) => row.slack_s)).toEqual([null, -5]);
  });

  it('tells a rule on the first row that follows it, and not again in a later coat', () => {
    const first = planOf(step('a', 'mix', { rule: 'Slowly.' }), step('b', 'mix', { rule: 'Slowly.' }));
    expect(runRows(first).map((row) => row.rule)).toEqual(['Slowly.', '']);
    expect(runRows(first, [first]).map((row) => row.rule)).toEqual(['', '']);
  });
});

it('drops the words nearly every rule ends in, and keeps a source', () => {
  expect(ruleText('Stop. (Common practice, no source.)')).toBe('Stop.');
  expect(ruleText('Stop. (Published by a maker of gloves.)')).toBe('Stop. (Published by a maker of gloves.)');
});
