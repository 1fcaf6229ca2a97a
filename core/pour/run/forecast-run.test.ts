import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldRun } from './fold-run.ts';
import { forecastRun } from './forecast-run.ts';
import type { RunEvent } from './run-event.ts';
import { event, plan, request, started } from './sample-run.check.ts';

const at = (now_s: number, ...events: readonly RunEvent[]) =>
  forecastRun({ request, plan, state: foldRun(plan.steps, [started, ...events]), now_s, draws: 8 });
const stepOf = (forecast: ReturnType<typeof at>, id: string) =>
  forecast.steps.find(({ step }) => step.id === id)!;
const air = (n: number, at_s: number, temperature_K: number) =>
  event(n, { kind: 'reading', of: 'air', cup: null, temperature_K, at_s });
const done = (n: number, step: string, at_s: number) => event(n, { kind: 'done', step, at_s });

describe('a run forecast', () => {
  it('is the plan when it has just started', () => {
    const forecast = forecastRun({
      request,
      plan,
      state: foldRun(plan.steps, [started]),
      now_s: 0,
      draws: 32,
    });
    for (const { step, start_s, end_s, window } of forecast.steps) {
      const planned = plan.steps.find(({ id }) => id === step.id)!;
      expect(Math.abs(start_s - planned.start_s)).toBeLessThan(1);
      expect(Math.abs(end_s - planned.end_s)).toBeLessThan(1);
      expect(Math.abs(window.closes_s - planned.window.closes_s) / planned.window.closes_s).toBeLessThan(
        0.01,
      );
    }
    expect(forecast.steps[0]!.state).toBe('in hand');
  });

  it('moves everything after a step that took longer', () => {
    const planned = stepOf(at(0), 'mix-1');
    const late_s = 90;
    const forecast = at(planned.end_s + late_s, done(2, 'mix-1', planned.end_s + late_s));
    expect(stepOf(forecast, 'mix-1').state).toBe('done');
    expect(stepOf(forecast, 'pour-1')).toMatchObject({ state: 'in hand', start_s: planned.end_s + late_s });
    expect(stepOf(forecast, 'pour-3').end_s).toBeCloseTo(stepOf(at(0), 'pour-3').end_s + late_s, 6);
  });

  it('stretches the step in hand while it is not done', () => {
    const planned = stepOf(at(0), 'mix-1');
    expect(stepOf(at(planned.end_s + 200), 'mix-1').end_s).toBe(planned.end_s + 200);
  });

  it('closes every window sooner the warmer the shop is read', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 290, max: 303, noNaN: true }),
        fc.double({ min: 0.5, max: 6, noNaN: true }),
        (cool_K, by_K) => {
          const cool = at(10, air(2, 5, cool_K));
          const warm = at(10, air(2, 5, cool_K + by_K));
          for (const id of ['pour-3', 'meld', 'wrap', 'scrape-1'])
            expect(stepOf(warm, id).window.closes_s).toBeLessThan(stepOf(cool, id).window.closes_s + 1e-6);
        },
      ),
      { numRuns: 15 },
    );
  });

  it('takes a cup read warmer for warmer resin, in the other cups too', () => {
    const plain = at(120);
    const { temperature_K } = plain.cups[0]!;
    expect(plain.cups[0]!.place).toBe('standing');
    const same = at(
      121,
      event(2, { kind: 'reading', of: 'cup', cup: 1, temperature_K: temperature_K!, at_s: 120 }),
    );
    expect(Math.abs(same.resinOff_K)).toBeLessThan(0.1);
    const warmer = at(
      121,
      event(2, { kind: 'reading', of: 'cup', cup: 1, temperature_K: temperature_K! + 4, at_s: 120 }),
    );
    expect(warmer.resinOff_K).toBeGreaterThan(2);
    expect(warmer.resinOff_K).toBeLessThan(6);
    for (const i of [0, 1, 2])
      expect(warmer.cups[i]!.pourNow!.mid_s).toBeLessThan(plain.cups[i]!.pourNow!.mid_s);
  });

  it('leaves skipped steps out and says the least slack of what is left', () => {
    const forecast = at(0, event(2, { kind: 'skipped', step: 'meld', why: '', at_s: 0 }));
    expect(stepOf(forecast, 'meld').state).toBe('skipped');
    expect(stepOf(forecast, 'wrap').start_s).toBeLessThanOrEqual(stepOf(at(0), 'wrap').start_s);
    const left = forecast.steps.filter(({ state, step }) => state !== 'skipped' && !step.optional);
    expect(forecast.slack_s).toBe(Math.min(...left.map(({ slack_s }) => slack_s)));
  });

  it('has nothing left when all is done', () => {
    const all = plan.steps.map(({ id, end_s }, i) => done(i + 2, id, end_s));
    const forecast = at(90_000, ...all);
    expect(forecast.slack_s).toBeNull();
    expect(forecast.cups.every(({ place }) => place === 'empty')).toBe(true);
  });

  it('refuses a time that is none', () => {
    expect(() => at(Number.NaN)).toThrow(/now_s = NaN: allowed/);
  });
});
