import { describe, expect, it } from 'vitest';
import { foldRun } from '#core/pour/run/fold-run.ts';
import { freezePour } from '#core/pour/run/frozen-pour.ts';
import type { RunEvent } from '#core/pour/run/run-event.ts';
import { event, plan, request, started } from '#core/pour/run/sample-run.check.ts';
import { afterRows } from './after-rows.ts';
import { learnedRates } from './learned-rates.ts';

const pour = freezePour(request, plan, '1');
const { rates } = request;

/** A run in which every step of a kind took so many times what was planned. */
function poured(kind: string, slower: number): readonly RunEvent[] {
  let n = 1;
  return [
    started,
    ...plan.steps
      .filter((step) => step.kind === kind)
      .flatMap((step) => [
        event(++n, { kind: 'began', step: step.id, at_s: step.start_s }),
        event(++n, {
          kind: 'done',
          step: step.id,
          at_s: step.start_s + slower * (step.end_s - step.start_s),
        }),
      ]),
  ];
}
const twice = { pour, events: poured('wrap edges', 2) };

describe('rates learned from pours', () => {
  it('say on how many runs they rest, and of nothing that was not done', () => {
    expect(learnedRates([twice, twice], rates).map(({ kind, runs }) => [kind, runs])).toEqual([
      ['wrap edges', 2],
    ]);
    expect(learnedRates([{ pour, events: [started] }], rates)).toEqual([]);
  });

  it('go from the shop’s own rate toward what was seen, the further the more runs there are', () => {
    const seen = (count: number) =>
      learnedRates(
        Array.from({ length: count }, () => twice),
        rates,
      )[0]!.rates.wrap_m_per_s!;
    expect(seen(1)).toBeLessThan(rates.wrap_m_per_s);
    expect(seen(20)).toBeLessThan(seen(1));
    expect(seen(20)).toBeGreaterThanOrEqual(rates.wrap_m_per_s / 2);
  });

  it('count a run against the rates of today: what was put in already is not put in twice', () => {
    const runs = Array.from({ length: 40 }, () => twice);
    const adopted = { ...rates, ...learnedRates(runs, rates)[0]!.rates };
    expect(learnedRates(runs, adopted)[0]!.spread.factor).toBeCloseTo(1, 1);
  });

  it('leave out steps that were ticked off together', () => {
    expect(learnedRates([{ pour, events: poured('wrap edges', 0.01) }], rates)).toEqual([]);
  });

  it('lengthen times and shorten speeds', () => {
    const [mix] = learnedRates([{ pour, events: poured('mix', 1.5) }], rates);
    expect(mix!.rates.mix_s).toBeGreaterThan(rates.mix_s);
  });
});

describe('planned against actual', () => {
  it('has every step but keeping hands off, with what it took', () => {
    const rows = afterRows(plan, foldRun(plan.steps, twice.events));
    expect(rows.length).toBe(plan.steps.filter(({ kind }) => kind !== 'hands off').length);
    const wrap = rows.find(({ step }) => step.kind === 'wrap edges')!;
    expect(wrap.actual!.lasts_s).toBeCloseTo(2 * wrap.planned.lasts_s, 6);
    expect(rows.find(({ step }) => step.kind === 'torch')!.actual).toBeNull();
  });
});
