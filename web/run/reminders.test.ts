import { describe, expect, it } from 'vitest';
import { foldRun } from '#core/pour/run/fold-run.ts';
import { forecastRun } from '#core/pour/run/forecast-run.ts';
import { plan, request, started } from '#core/pour/run/sample-run.check.ts';
import { remindersOf } from './reminders.ts';

const film = forecastRun({
  request,
  plan,
  state: foldRun(plan.steps, [started]),
  now_s: 0,
  draws: 8,
}).film;
const of = (key: string) => remindersOf(film).find((each) => each.key === key)!;

describe('reminders once the film is down', () => {
  it('keep hands and air off until even the slow resin has gelled', () => {
    expect(of('hands off')).toMatchObject({ from_s: null, to_s: film.stages.gel_s!.high_s });
    expect(of('airflow').from_s).toBe(film.stages.gel_s!.high_s);
  });

  it('have the tape pulled after gel and before the film is hard', () => {
    const { from_s, to_s } = of('tape');
    expect(from_s!).toBe(film.stages.gel_s!.high_s);
    expect(to_s!).toBeGreaterThan(from_s!);
    expect(to_s!).toBeLessThanOrEqual(film.stages.dryHard_s!.mid_s);
  });

  it('leave out what the film does not reach', () => {
    const none = { ...film, stages: { ...film.stages, gel_s: null, recoatOpens_s: null, handle_s: null } };
    expect(remindersOf(none).map(({ key }) => key)).toEqual(['hands off']);
  });
});
