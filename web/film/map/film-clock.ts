/** The flow budget of a coat's film on the clock of its plan, and the moments of the plan a map starts from. */
import { spreadEnd_s } from '#core/pour/film-moments.ts';
import type { CoatPlan } from '#core/pour/plan.ts';
import { spanOf, thetaLeft, timeOfTheta } from '#core/resin/history.ts';

type Clocked = Pick<CoatPlan, 'film' | 'filmStart_s'>;

/** Flow budget still to come at a time of the plan, 1/Pa; before the film lies all of it, after gel none. */
export function thetaLeftAt_per_Pa(plan: Clocked, time_s: number): number {
  const { start_s, end_s } = spanOf(plan.film);
  return thetaLeft(plan.film, Math.min(end_s, Math.max(start_s, time_s - plan.filmStart_s)));
}

/** Flow budget spent between two times of the plan, 1/Pa, from 0. */
export function thetaBetween_per_Pa(plan: Clocked, from_s: number, to_s: number): number {
  return Math.max(0, thetaLeftAt_per_Pa(plan, from_s) - thetaLeftAt_per_Pa(plan, to_s));
}

/** When nothing of the film flows any more, s on the plan's clock: its budget is spent, or its history ends. */
export function flowEnds_s(plan: Clocked): number {
  const { time_s, theta_per_Pa } = plan.film;
  const all = theta_per_Pa.at(-1) ?? 0;
  const at = theta_per_Pa.findIndex((spent) => spent >= all);
  return plan.filmStart_s + (time_s[Math.max(0, at)] ?? 0);
}

/** When the film lies even, its edges still dry: the last cup is spread, s on the plan's clock. */
export function evenFrom_s(plan: Pick<CoatPlan, 'steps' | 'filmStart_s'>): number {
  return Math.max(plan.filmStart_s, spreadEnd_s(plan) ?? plan.filmStart_s);
}

/** When a part of the budget has been spent since a time, s on the plan's clock; the end of the flow when there is less. */
export function whenSpent_s(plan: Clocked, from_s: number, theta_per_Pa: number): number {
  const before = (plan.film.theta_per_Pa.at(-1) ?? 0) - thetaLeftAt_per_Pa(plan, from_s);
  const time_s = timeOfTheta(plan.film, before + theta_per_Pa);
  return time_s === null ? flowEnds_s(plan) : Math.max(from_s, plan.filmStart_s + time_s);
}

/** The middle of the pouring of a cup, s on the plan's clock; the cup's own forecast where no step pours it. */
export function pouredAt_s(
  plan: Pick<CoatPlan, 'steps' | 'cupForecasts' | 'filmStart_s'>,
  cup: number,
): number {
  const step = plan.steps.find((one) => one.kind === 'pour' && one.cup === cup);
  if (step !== undefined) return (step.start_s + step.end_s) / 2;
  return plan.cupForecasts.find((one) => one.number === cup)?.emptied_s ?? plan.filmStart_s;
}
