/** The moments of a plan at which the film of its coat changes hands, s on the plan's clock. */
import type { CoatPlan } from './plan.ts';

type Stepped = Pick<CoatPlan, 'steps'>;

/** Last cup spread: the end of the last pour (a pour is done when its resin is spread); undefined without a pour. */
export function spreadEnd_s(plan: Stepped): number | undefined {
  const pours = plan.steps.filter((step) => step.kind === 'pour');
  return pours.length === 0 ? undefined : Math.max(...pours.map((step) => step.end_s));
}

/** Middle of the time in which the edges are worked, as the bill counts their run-off; undefined when the plan wraps none. */
export function edgesWorked_s(plan: Stepped): number | undefined {
  const wraps = plan.steps.filter((step) => step.kind === 'wrap edges');
  if (wraps.length === 0) return undefined;
  return (Math.min(...wraps.map((step) => step.start_s)) + Math.max(...wraps.map((step) => step.end_s))) / 2;
}
