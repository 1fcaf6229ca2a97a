/** The rows of a run sheet: the steps of a coat in order, repeated rounds of one job on one row with their times. */
import type { CoatPlan, Step } from '#core/pour/plan.ts';
import { ruleText } from './rules.ts';

export interface RunRow {
  readonly key: string;
  readonly label: string;
  /** In order; more than one where the same is done again and again. */
  readonly steps: readonly [Step, ...Step[]];
  /** The rule of thumb, on the first row that follows it; '' on the others. */
  readonly rule: string;
  /** The least of the steps' slacks, s; null for a wait, which has none. */
  readonly slack_s: number | null;
}

/**
 * Rounds of scraping by the same person share the row of the first of them; every other step has its own. Rules that coats
 * `before` this one follow too are told there.
 */
export function runRows(plan: CoatPlan, before: readonly CoatPlan[] = []): RunRow[] {
  const groups = new Map<string, [Step, ...Step[]]>();
  for (const step of plan.steps) {
    const key = step.kind === 'scrape drips' ? `${step.kind} ${step.person}` : step.id;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [step]);
    else group.push(step);
  }
  const told = new Set(before.flatMap((coat) => coat.steps.map((step) => step.rule)));
  return [...groups].map(([key, steps]) => {
    const [first] = steps;
    const rule = told.has(first.rule) ? '' : ruleText(first.rule);
    told.add(first.rule);
    const waits = steps.every((step) => step.kind === 'hands off' || (step.optional && step.slack_s === 0));
    return {
      key,
      label:
        steps.length === 1
          ? first.label
          : `${first.label.replace(/, round \d+$/, '')}, ${steps.length} rounds`,
      steps,
      rule,
      slack_s: waits ? null : Math.min(...steps.map((step) => step.slack_s)),
    };
  });
}
