/** Every cup left standing full: when it is warm, must be out, is dangerous, gels; from a fast, the middle and a slow draw. */
import type { CupRecipe } from '#core/mix/coat.ts';
import { cureCup } from '#core/resin/cup.ts';
import type { AirTemperature, CureHistory, CureState, ResinModel, TimeRange } from '#core/resin/model.ts';
import { type CupStages, cupStages } from '#core/resin/stages.ts';
import { airFrom, later } from './clocks.ts';
import { DRAW_TOLERANCE } from './film-times.ts';
import type { LaidOutCup } from './lay-out.ts';
import type { CupForecast } from './plan.ts';

/** A cup is followed this long; a stage that only some draws reach by then is told as this late. */
export const CUP_SPAN_s = 4 * 3600;

export interface CupModels {
  /** The draws at the 5 and 95 % places of pour-now time (`drawByPourNow`), and the card's own model. */
  readonly fast: ResinModel;
  readonly mid: ResinModel;
  readonly slow: ResinModel;
}

export interface CupTimes {
  readonly warm: TimeRange | null;
  readonly pourNow: TimeRange | null;
  readonly danger: TimeRange | null;
  readonly gel: TimeRange | null;
  readonly peak_K: number;
  /** Of the card's own model. */
  readonly history: CureHistory;
}

function rangeOfThree(fast: number | null, mid: number | null, slow: number | null): TimeRange | null {
  if (fast === null) return null;
  const [low_s, mid_s, high_s] = [fast, mid ?? CUP_SPAN_s, slow ?? CUP_SPAN_s].sort((a, b) => a - b) as [
    number,
    number,
    number,
  ];
  return { low_s, mid_s, high_s };
}

/** Times of one cup on its own clock, 0 = its parts meet. */
export function cupTimes(
  models: CupModels,
  mass_kg: number,
  start: CureState,
  air: AirTemperature,
): CupTimes {
  const stand = (model: ResinModel, own: boolean) =>
    cureCup({
      model,
      mass_kg,
      air,
      start,
      start_s: 0,
      duration_s: CUP_SPAN_s,
      ...(own ? {} : { tolerance: DRAW_TOLERANCE }),
    });
  const history = stand(models.mid, true);
  const mid = cupStages(history, models.mid);
  const fast = cupStages(stand(models.fast, false), models.fast);
  const slow = cupStages(stand(models.slow, false), models.slow);
  const of = (key: keyof CupStages) => rangeOfThree(fast[key], mid[key], slow[key]);
  return {
    warm: of('warm_s'),
    pourNow: of('pourNow_s'),
    danger: of('danger_s'),
    gel: of('gel_s'),
    peak_K: mid.peak_K,
    history,
  };
}

/** Forecasts of all cups on the plan's clock; equal cups in steady air are computed once. */
export function cupForecasts(
  models: CupModels,
  cups: readonly CupRecipe[],
  laid: readonly LaidOutCup[],
  start: CureState,
  air: AirTemperature,
): readonly CupForecast[] {
  const known = new Map<string, CupTimes>();
  return cups.map((cup, index) => {
    const { mixed_s, emptied_s } = laid[index]!;
    const key = `${cup.mass_kg} ${air.time_s.length < 2 ? 0 : mixed_s}`;
    let times = known.get(key);
    if (times === undefined) {
      times = cupTimes(models, cup.mass_kg, start, airFrom(air, mixed_s));
      known.set(key, times);
    }
    return {
      number: cup.number,
      colour: cup.colour,
      swatch: cup.swatch,
      mixed_s,
      emptied_s,
      warm: later(times.warm, mixed_s),
      pourNow: later(times.pourNow, mixed_s),
      danger: later(times.danger, mixed_s),
      gel: later(times.gel, mixed_s),
      peak_K: times.peak_K,
      history: times.history,
    };
  });
}
