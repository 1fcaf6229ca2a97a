import { describe, expect, it } from 'vitest';
import { foldRun } from '#core/pour/run/fold-run.ts';
import { forecastRun } from '#core/pour/run/forecast-run.ts';
import type { RunEvent } from '#core/pour/run/run-event.ts';
import { event, plan, request, started } from '#core/pour/run/sample-run.check.ts';
import { screenState, toneOf } from './screen-state.ts';

const at = (now_s: number, events: readonly RunEvent[]) =>
  forecastRun({ request, plan, state: foldRun(plan.steps, events), now_s, draws: 2 });

describe('the pour screen', () => {
  it('shows the first step now, what follows it, and the time left for it', () => {
    const forecast = at(10, [started]);
    const screen = screenState(forecast, 10, 'all');
    expect(screen.now?.step.id).toBe('mix-1');
    expect(screen.next).not.toBeNull();
    expect(screen.wait_s).toBeNull();
    expect(screen.left_s).toBe(screen.now!.window.closes_s - 10);
  });

  it('counts down between two forecasts', () => {
    const forecast = at(10, [started]);
    const [a, b] = [screenState(forecast, 10, 'all'), screenState(forecast, 14, 'all')];
    expect(a.left_s! - b.left_s!).toBe(4);
    expect(a.standing[0]!.left_s! - b.standing[0]!.left_s!).toBe(4);
  });

  it('shows another person nothing of the first one’s steps', () => {
    const screen = screenState(at(10, [started]), 10, 2);
    expect(screen.now).toBeNull();
    expect(screen.handsFree).toBe(true);
  });

  it('has nothing more to do when every step is done but keeping hands off', () => {
    const done = plan.steps
      .filter(({ kind }) => kind !== 'hands off')
      .map(({ id, end_s }, i) => event(i + 2, { kind: 'done', step: id, at_s: end_s }));
    const now_s = Math.max(...done.map(({ at_s }) => at_s)) + 1;
    const screen = screenState(at(now_s, [started, ...done]), now_s, 'all');
    expect(screen.now).toBeNull();
    expect(screen.next).toBeNull();
    expect(screen.handsFree).toBe(true);
    expect(screen.standing).toEqual([]);
  });

  it('says how a figure stands in four words', () => {
    expect([600, 179, 59, -1, null].map(toneOf)).toEqual(['plenty', 'soon', 'short', 'late', 'plenty']);
  });
});
