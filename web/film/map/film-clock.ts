/** The flow budget of a coat's film on the clock of its plan, and the moments of the plan a map starts from. */
import type { CoatPlan } from '#core/pour/plan.ts';
import { spanOf, thetaLeft } from '#core/resin/history.ts';

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

/** When the film lies even and the edges are worked, s on the plan's clock: end of the edge work, else of melding, else of pouring. */
export function evenFrom_s(plan: Pick<CoatPlan, 'steps' | 'filmStart_s'>): number {
  for (const kind of ['wrap edges', 'meld', 'pour'] as const) {
    const ends = plan.steps.filter((step) => step.kind === kind).map((step) => step.end_s);
    if (ends.length > 0) return Math.max(plan.filmStart_s, ...ends);
  }
  return plan.filmStart_s;
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
