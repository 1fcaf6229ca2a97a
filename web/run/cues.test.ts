import { describe, expect, it } from 'vitest';
import { foldRun } from '#core/pour/run/fold-run.ts';
import { forecastRun } from '#core/pour/run/forecast-run.ts';
import type { RunEvent } from '#core/pour/run/run-event.ts';
import { event, plan, request, started } from '#core/pour/run/sample-run.check.ts';
import { cues, dueCues } from './cues.ts';

const at = (now_s: number, events: readonly RunEvent[] = [started]) =>
  forecastRun({ request, plan, state: foldRun(plan.steps, events), now_s, draws: 2 });

describe('spoken cues', () => {
  const forecast = at(0);
  const list = cues(forecast, 'all', 60);

  it('come the chosen time before a window closes, and once more when it has', () => {
    const needed = forecast.steps.filter(({ step }) => !step.optional && step.kind !== 'hands off');
    for (const { step, window } of needed) {
      expect(list.find(({ id }) => id === `closes ${step.id}`)?.at_s).toBe(window.closes_s - 60);
      expect(list.find(({ id }) => id === `closed ${step.id}`)?.at_s).toBe(window.closes_s);
    }
  });

  it('announce a step before it is due, and say what it is', () => {
    const next = forecast.steps.find(({ state }) => state === 'to do')!;
    const cue = list.find(({ id }) => id === `due ${next.step.id}`)!;
    expect(cue.at_s).toBe(next.start_s - 60);
    expect(cue.says).toMatch(/in 1 minute\.$/);
  });

  it('warn of a cup that stands mixed', () => {
    const [first] = forecast.cups;
    expect(first!.place).toBe('standing');
    expect(list.find(({ id }) => id === 'cup 1')?.at_s).toBe(first!.pourNow!.low_s - 60);
  });

  it('are given once, and not any more when long past', () => {
    const [first] = list.filter(({ at_s }) => at_s > 0);
    const now_s = first!.at_s + 1;
    expect(dueCues(list, first!.at_s - 1, new Set()).map(({ id }) => id)).not.toContain(first!.id);
    expect(dueCues(list, now_s, new Set()).map(({ id }) => id)).toContain(first!.id);
    expect(dueCues(list, now_s, new Set([first!.id])).map(({ id }) => id)).not.toContain(first!.id);
    expect(dueCues(list, now_s + 60, new Set()).map(({ id }) => id)).not.toContain(first!.id);
  });

  it('are none when they are switched off, and none for what is done or for other people', () => {
    expect(cues(forecast, 'all', null)).toEqual([]);
    expect(cues(forecast, 3, 60).map(({ id }) => id)).toEqual(['cup 1', 'airflow', 'tape']);
    const done = at(200, [started, event(2, { kind: 'done', step: 'mix-1', at_s: 190 })]);
    expect(cues(done, 'all', 60).some(({ id }) => id.endsWith(' mix-1'))).toBe(false);
  });
});
