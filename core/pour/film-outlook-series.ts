/** The flow budget of a coat's film on the plan's clock, and what gel means for it. */
import { type FlowBudget, thetaOfSeries, thetaTotal } from '#core/film/flow-budget.ts';
import type { Reason } from '#core/film/reason.ts';
import type { CureHistory, ResinCard, TimeRange } from '#core/resin/model.ts';
import { GELLED_VISCOSITY_Pa_s } from '#core/resin/viscosity.ts';
import { STAGE_RULES } from './rules.ts';

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

/** Why the film stops when it does. */
export function gelReason(
  card: ResinCard,
  series: FlowBudget,
  gel: TimeRange | null,
  peak_K: number,
): Reason {
  return {
    says:
      gel === null
        ? 'The film does not gel within 30 days.'
        : 'The molecules join into one network: from here on nothing flows, whatever is done.',
    formula: 'gel when conversion = gel point; viscosity = fresh viscosity (a gel/(a gel - a))^(A + B a)',
    numbers: {
      gelConversion: card.model.gelConversion,
      thetaTotal_per_Pa: thetaTotal(series),
      freshViscosity_Pa_s: series.viscosity_Pa_s[0]!,
      filmPeak_K: peak_K,
      ...(gel === null ? {} : { gel_s: gel.mid_s }),
    },
    source: 'gel point Flory 1941, Stockmayer 1943; viscosity Castro and Macosko 1980 (from memory)',
    ...(gel === null ? {} : { range: { low: gel.low_s, value: gel.mid_s, high: gel.high_s } }),
    rule: STAGE_RULES.gel,
  };
}
