import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerHappening } from './answers.ts';
import { foldRun } from './fold-run.ts';
import { forecastRun } from './forecast-run.ts';
import type { RunEvent } from './run-event.ts';
import { event, plan, request, started } from './sample-run.check.ts';

type Happened = Extract<RunEvent, { kind: 'happened' }>;

function answer(now_s: number, what: Partial<Happened>, ...events: readonly RunEvent[]) {
  const happening = event(500, {
    kind: 'happened',
    what: 'something else',
    cup: null,
    mass_kg: null,
    size_m: null,
    away_s: null,
    note: '',
    at_s: now_s,
    ...what,
  } as Happened) as Happened;
  const state = foldRun(plan.steps, [started, ...events, happening]);
  const forecast = forecastRun({ request, plan, state, now_s, draws: 4 });
  return { forecast, said: answerHappening({ request, plan, forecast, happening }) };
}

describe('an answer to what happened', () => {
  it('says how long the standing cup has, by its safe time', () => {
    const { forecast, said } = answer(150, { what: 'cup hot', cup: 1 });
    expect(said.left_s).toBeCloseTo(forecast.cups[0]!.pourNow!.low_s - 150, 6);
    expect(said.head).toMatch(/Pour cup 1 .* next/);
    expect(said.says.join(' ')).toMatch(/bare concrete.*safety data sheet/);
  });

  it('has a cup past its time set outside, its pour dropped and what is missing made up', () => {
    const { said } = answer(900, { what: 'cup hot', cup: 1 });
    expect(said.left_s).toBeLessThan(0);
    expect(said.drop).toContain('pour-1');
  });

  it('lets a spill within the spare be', () => {
    const { said } = answer(150, { what: 'spill', mass_kg: 0.001 });
    expect(said.head).toMatch(/^Carry on/);
    expect(said.extraCup).toBeNull();
  });

  it('weighs another cup for a large spill while there is time, in the colour and ratio of the one spilt', () => {
    const { said } = answer(30, { what: 'spill', cup: 1, mass_kg: 0.5 });
    expect(said.extraCup).not.toBeNull();
    const { partA_kg, partB_kg, tint_kg, mass_kg } = said.extraCup!;
    expect(partA_kg + partB_kg + tint_kg).toBeCloseTo(mass_kg, 9);
    expect(said.extraCup!.colour).toBe(plan.cups[0]!.colour);
    expect(mass_kg).toBeLessThan(0.5);
  });

  it('says that there is no time for another cup once the film is near its end', () => {
    const { said } = answer(1100, { what: 'short of a colour', cup: 2, mass_kg: 0.5 });
    expect(said.head).toMatch(/^No time for another cup/);
    expect(said.extraCup).toBeNull();
  });

  it('tells a crater that closes from one that does not, by the film needed', () => {
    expect(answer(700, { what: 'crater', size_m: 0.0006 }).said.head).toMatch(/^Push resin over it/);
    expect(answer(700, { what: 'crater', size_m: 0.02 }).said.head).toMatch(/^This film does not close/);
  });

  it('gives a call as long as the least slack, and never more time for a longer one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3600 }), fc.integer({ min: 0, max: 3600 }), (away_s, more) => {
        const first = answer(60, { what: 'called away', away_s });
        expect(first.said.left_s).toBeCloseTo(first.forecast.slack_s! - away_s, 6);
        const longer = answer(60, { what: 'called away', away_s: Math.min(86_400, away_s + more) });
        expect(longer.said.left_s!).toBeLessThanOrEqual(first.said.left_s! + 1e-9);
        expect(longer.said.drop.length).toBeGreaterThanOrEqual(
          first.said.left_s! < 0 ? first.said.drop.length : 0,
        );
      }),
      { numRuns: 20 },
    );
  });

  it('asks for the figure it needs', () => {
    expect(answer(60, { what: 'spill' }).said.head).toMatch(/How much is missing/);
    expect(answer(60, { what: 'crater' }).said.head).toMatch(/How wide is it/);
  });
});
