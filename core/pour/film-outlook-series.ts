/** The flow budget of a coat's film on the plan's clock. */
import { type FlowBudget, thetaOfSeries } from '#core/film/flow-budget.ts';
import type { CureHistory } from '#core/resin/model.ts';
import { GELLED_VISCOSITY_Pa_s } from '#core/resin/viscosity.ts';

/**
 * Flow budget of a film from its first sample to gel, shifted onto another clock.
 * @param shift_s added to every time, s
 * @returns undefined when fewer than two samples lie before gel: nothing of it flows.
 */
export function filmSeries(film: CureHistory, shift_s: number): FlowBudget | undefined {
  const gelled = film.viscosity_Pa_s.findIndex((viscosity) => !(viscosity < GELLED_VISCOSITY_Pa_s));
  const count = gelled < 0 ? film.time_s.length : gelled;
  if (count < 2) return undefined;
  return thetaOfSeries(
    Array.from(film.time_s.subarray(0, count), (time) => time + shift_s),
    Array.from(film.viscosity_Pa_s.subarray(0, count)),
  );
}
