import { describe, expect, it } from 'vitest';
import type { CoatPlan, StageKey } from '#core/pour/plan.ts';
import { planCoat } from '#core/pour/plan-coat.ts';
import { requestOf } from '#core/pour/sample-request.check.ts';
import type { TimeRange } from '#core/resin/model.ts';
import { vanityVesselSink } from '#examples/jobs.ts';
import { computeJob } from './compute-job.ts';
import { judgeNextCoat } from './next-coat.ts';

const plan = planCoat(requestOf({}, { draws: 8 }));
const hours = (low: number, mid: number, high: number): TimeRange => ({
  low_s: low * 3600,
  mid_s: mid * 3600,
  high_s: high * 3600,
});

/** The plan with these recoat stages instead of its own. */
function staged(stages: Partial<Record<StageKey, TimeRange | null>>): CoatPlan {
  return {
    ...plan,
    stages: plan.stages.map((stage) => ({
      ...stage,
      at: stages[stage.key] === undefined ? stage.at : stages[stage.key]!,
    })),
  };
}

const under = staged({
  'recoat opens': hours(3, 4, 5),
  'recoat closes': hours(8, 10, 12),
  sandable: hours(13, 16, 24),
});
const START = '2026-05-14T09:00';

/** A coat without a plan of its own, so many whole hours after the one under it. */
function judged(hour: number, of: CoatPlan = under) {
  const at = 9 + hour;
  const day = 14 + Math.floor(at / 24);
  const next = `2026-05-${day}T${String(at % 24).padStart(2, '0')}:00`;
  return judgeNextCoat(of, { name: 'Clear flood', plan: null }, { coat: START, next })!;
}

describe('the next coat against the recoat window', () => {
  it.each([
    [2, 'too early', 'it would stir this one'],
    [3, 'uncertain', 'more likely too early'],
    [4, 'uncertain', 'the window is more likely open'],
    [5, 'bonds by itself', 'without sanding'],
    [8, 'bonds by itself', 'without sanding'],
    [9, 'uncertain', 'more likely still in time'],
    [11, 'uncertain', 'more likely too late'],
    [13, 'uncertain', 'too early to sand'],
    [16, 'abrade first', 'Wash, dry, abrade'],
    [40, 'abrade first', 'Wash, dry, abrade'],
  ])('after %d h: %s', (hour, verdict, words) => {
    const answer = judged(hour);
    expect(answer.verdict).toBe(verdict);
    expect(answer.after_s).toBe(hour * 3600);
    expect(answer.says).toContain(words);
    expect(answer.says).toContain(`Clear flood lands ${hour} h after`);
  });

  it('leaves what is uncertain to the glove or the paper, and nothing else', () => {
    for (const hour of [3, 4, 9, 11]) expect(judged(hour).says).toContain('Test by touch');
    for (const hour of [9, 11]) expect(judged(hour).says).toContain('if in doubt, abrade first');
    expect(judged(13).says).toContain('try the paper');
    for (const hour of [2, 5, 16]) expect(judged(hour).says).not.toContain('Test by touch');
  });

  it('names both ways where a slow film may not be open and a quick one may be closed', () => {
    const wide = staged({ 'recoat opens': hours(3, 4, 9), 'recoat closes': hours(5, 10, 21) });
    const { verdict, says } = judged(7, wide);
    expect(verdict).toBe('uncertain');
    expect(says).toContain('while it strings, wait');
    expect(says).toContain('if in doubt, abrade first');
    expect(judged(4, wide).says).not.toContain('abrade first');
  });

  it('counts from the first resin on the board to the last', () => {
    const pours = plan.steps.filter((step) => step.kind === 'pour');
    const [first, last] = [pours[0]!, pours.at(-1)!];
    expect(first.start_s).toBeGreaterThan(0);
    const next = { name: '', plan };
    const at = (open_h: number, close_h: number) =>
      judgeNextCoat(
        staged({
          'recoat opens': hours(0, 1, open_h),
          'recoat closes': hours(close_h, close_h + 5, close_h + 9),
        }),
        next,
        { coat: START, next: '2026-05-14T14:00' },
      )!;
    expect(at(5, 9)).toMatchObject({ verdict: 'bonds by itself', after_s: 5 * 3600 + first.start_s });
    expect(at(5, 5 + last.end_s / 3600).verdict).toBe('bonds by itself');
    expect(at(5, 5 + (last.end_s - 1) / 3600).verdict).toBe('uncertain');
    expect(at(5 + first.start_s / 3600, 9).verdict).toBe('bonds by itself');
    expect(at(5 + (first.start_s + 1) / 3600, 9).verdict).toBe('uncertain');
    expect(at(5, 9).says).toMatch(/^The next coat lands/);
  });

  it('has a plain answer where the film never closes, never sands, never opens', () => {
    expect(judged(200, staged({ 'recoat opens': hours(3, 4, 5), 'recoat closes': null })).verdict).toBe(
      'bonds by itself',
    );
    const soft = judged(
      40,
      staged({ 'recoat opens': hours(3, 4, 5), 'recoat closes': hours(8, 10, 12), sandable: null }),
    );
    expect(soft.verdict).toBe('uncertain');
    expect(soft.says).toContain('does not get hard enough to sand');
    const never = { coat: START, next: '2026-05-15T09:00' };
    expect(judgeNextCoat(staged({ 'recoat opens': null }), { name: '', plan: null }, never)).toBeNull();
  });

  it('asks to check starts out of order, and says nothing without both', () => {
    const next = { name: 'Flood', plan: null };
    for (const at of [START, '2026-05-14T08:00'])
      expect(judgeNextCoat(under, next, { coat: START, next: at })).toMatchObject({
        verdict: 'too early',
        says: expect.stringContaining('check both starts'),
      });
    expect(judgeNextCoat(under, next, { coat: '', next: START })).toBeNull();
    expect(judgeNextCoat(under, next, { coat: START, next: '2026-02-30T09:00' })).toBeNull();
    expect(judgeNextCoat(null, next, { coat: START, next: '2026-05-15T09:00' })).toBeNull();
  });
});

describe('a job of two coats', () => {
  const dated = (starts: readonly string[]) => ({
    ...vanityVesselSink,
    coats: vanityVesselSink.coats.map((coat, i) => ({ ...coat, startsAt: starts[i] ?? '' })),
  });

  it('judges the second at the first, and nothing at the last or without starts', () => {
    const [first, second] = computeJob(dated([START, '2026-05-17T09:00'])).coats;
    expect(first!.nextCoat!.says).toContain(second!.name);
    expect(second!.nextCoat).toBeNull();
    for (const coat of computeJob(dated([START])).coats) expect(coat.nextCoat).toBeNull();
  });

  it('says its figures in the units of the shop and changes no number with them', () => {
    const us = computeJob(vanityVesselSink);
    const metric = computeJob(vanityVesselSink, { system: 'metric' });
    expect(us).toEqual(computeJob(vanityVesselSink, { system: 'us' }));
    expect(us.coats[0]!.plan!.cautions.join(' ')).toContain('°F');
    const said = metric.coats.flatMap(({ plan: each }) => [...each!.cautions, each!.says]).join(' ');
    expect(said).toContain('°C');
    expect(said).not.toMatch(/°F|fl oz/);
    expect(metric.coats.map((coat) => coat.plan!.slack_s)).toEqual(
      us.coats.map((coat) => coat.plan!.slack_s),
    );
  });
});
