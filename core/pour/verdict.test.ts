import { describe, expect, it } from 'vitest';
import type { StepKind } from './plan.ts';
import type { LimitedStep } from './steps.ts';
import { judge } from './verdict.ts';

function step(
  kind: StepKind,
  end_s: number,
  closes_s: number,
  hard_s = closes_s,
  optional = false,
): LimitedStep {
  return {
    id: `${kind}-${end_s}`,
    kind,
    label: `Do ${kind}`,
    person: 1,
    cup: null,
    start_s: 0,
    end_s,
    window: {
      opens_s: 0,
      closes_s,
      closesMid_s: closes_s + 100,
      closesHigh_s: closes_s + 300,
      limit: 'cup 1 reaches 104 °F',
      basis: 'model',
    },
    slack_s: closes_s - end_s,
    optional,
    rule: '',
    hard_s,
  };
}

describe('does the pour fit', () => {
  it('fits with the slack asked to the second, and is tight a second under it', () => {
    expect(judge([step('pour', 300, 420)], 120, 1)).toMatchObject({ verdict: 'fits', slack_s: 120 });
    expect(judge([step('pour', 301, 420)], 120, 1).verdict).toBe('tight');
  });

  it('is tight when a cup is out after its safe time but before the middle one, and says both', () => {
    const judged = judge([step('pour', 450, 420, 520)], 120, 2);
    expect(judged).toMatchObject({ verdict: 'tight', slack_s: -30, slackStep: 'pour-450' });
    expect(judged.says).toContain('2 cups are down after 7 min 30 s');
    expect(judged.says).toContain('30 s after the safe time');
    expect(judged.says).toContain('at 8 min 40 s, perhaps as early as 7 min');
  });

  it('does not fit after the hard end, and says by how much', () => {
    const judged = judge([step('pour', 300, 700), step('meld', 800, 700)], 120, 1);
    expect(judged.verdict).toBe('does not fit');
    expect(judged.says).toContain('"do meld" ends at 13 min, 100 s too late');
  });

  it('counts neither waits nor what may be left out', () => {
    const steps = [step('pour', 300, 700), step('torch', 800, 700, 700, true)];
    expect(judge(steps, 120, 1)).toMatchObject({ verdict: 'fits', slack_s: 400 });
  });

  it('blames the pour and not its mixing when both have the same slack', () => {
    const mix = step('mix', 200, 400);
    expect(judge([mix, step('pour', 260, 460)], 120, 1).slackStep).toBe('pour-260');
  });

  it('refuses a plan without steps', () => {
    expect(() => judge([], 120, 1)).toThrow(RangeError);
  });
});
