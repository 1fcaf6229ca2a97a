import { surroundingsAt } from '#core/numeric/column.ts';
import { hermite, hermitePeak } from '#core/numeric/hermite.ts';
import { surroundingsOf } from './film.ts';
import { firstTime, readState, spanOf } from './history.ts';
import { tgOf } from './kinetics.ts';
import type { AirTemperature, CureHistory, ResinModel } from './model.ts';
import { CUP_CRITERIA, FILM_CRITERIA } from './stage-criteria.ts';
import { fluidityOf, freshViscosity } from './viscosity.ts';

/** Times on the clock of the history; null where the body does not get there within it. */
export interface CupStages {
  readonly warm_s: number | null;
  readonly pourNow_s: number | null;
  readonly danger_s: number | null;
  readonly gel_s: number | null;
  /** Hottest the centre gets (to about 1 K), and when the mean is hottest. */
  readonly peak_K: number;
  readonly peak_s: number;
}

export interface FilmStages {
  readonly workingEnd_s: number | null;
  readonly noMoreLevelling_s: number | null;
  readonly gel_s: number | null;
  readonly recoatOpens_s: number | null;
  readonly recoatBestFrom_s: number | null;
  readonly recoatBestTo_s: number | null;
  readonly recoatCloses_s: number | null;
  readonly dryHard_s: number | null;
  readonly sandable_s: number | null;
  readonly handle_s: number | null;
  readonly inUse_s: number | null;
  readonly fullCure_s: number | null;
  /** Hottest layer of the film, and when its mean is hottest. */
  readonly peak_K: number;
  readonly peak_s: number;
}

/** Stages of a cup by the criteria of `CUP_CRITERIA`. `model` is the one the history was computed with. */
export function cupStages(history: CureHistory, model: ResinModel): CupStages {
  const reach = (criterion: { temperature_K: number; conversion: number }) =>
    earlier(
      firstTime(history, (_a, T) => T, criterion.temperature_K),
      firstTime(history, (a) => a, criterion.conversion),
    );
  return {
    warm_s: reach(CUP_CRITERIA.warm),
    pourNow_s: reach(CUP_CRITERIA.pourNow),
    danger_s: reach(CUP_CRITERIA.danger),
    gel_s: firstTime(history, (a) => a, model.gelConversion),
    ...hottestOf(history),
  };
}

/**
 * Stages of a film by the criteria of `FILM_CRITERIA`. Viscosity ratios are against the fresh mix at the air temperature at
 * the start of the history. `inUse_s` and `fullCure_s` compare with the conversion 30 days after the start, so they are null
 * for a history shorter than `FULL_CURE_SPAN_s`.
 *
 * @throws RangeError when the air series is not usable.
 */
export function filmStages(history: CureHistory, model: ResinModel, air: AirTemperature): FilmStages {
  const { start_s, end_s } = spanOf(history);
  const fresh = freshViscosity(model, surroundingsAt(surroundingsOf(air), start_s));
  const fluidity = fluidityOf(model);
  // Fluidity stays finite where viscosity does not; ratio reached = fresh x fluidity down to 1/ratio.
  const thicker = (ratio: number) => firstTime(history, (a, T) => -fresh * fluidity(a, T), -1 / ratio);
  const above = (offset_K: number) => firstTime(history, (a, T) => tgOf(model, a) - T, offset_K);
  const converted = (conversion: number) => firstTime(history, (a) => a, conversion);
  const month_s = start_s + FILM_CRITERIA.fullCure.span_s;
  const final = end_s >= month_s ? readState(history, month_s, model).conversion : null;

  const recoatOpens = converted(model.gelConversion + FILM_CRITERIA.recoatOpens.pastGel);
  return {
    workingEnd_s: thicker(model.workingRatio),
    noMoreLevelling_s: thicker(FILM_CRITERIA.noMoreLevelling.ratio),
    gel_s: converted(model.gelConversion),
    recoatOpens_s: recoatOpens,
    recoatBestFrom_s: later(recoatOpens, above(FILM_CRITERIA.recoatBestFrom.offset_K)),
    recoatBestTo_s: above(FILM_CRITERIA.recoatBestTo.offset_K),
    recoatCloses_s: above(FILM_CRITERIA.recoatCloses.offset_K),
    dryHard_s: above(model.dryHardOffset_K),
    sandable_s: above(FILM_CRITERIA.sandable.offset_K),
    handle_s: above(FILM_CRITERIA.handle.offset_K),
    inUse_s: final === null ? null : converted(FILM_CRITERIA.inUse.share * final),
    fullCure_s: final === null ? null : converted(FILM_CRITERIA.fullCure.share * final),
    ...hottestOf(history),
  };
}

/** Highest stored hottest temperature, and when the mean is highest by its cubic. */
function hottestOf(history: CureHistory): { readonly peak_K: number; readonly peak_s: number } {
  const { time_s, hottest_K, temperature_K: T, temperatureRate_K_s: rate } = history;
  let top = 0;
  let peak_K = hottest_K[0]!;
  for (let i = 1; i < T.length; i++) {
    if (T[i]! > T[top]!) top = i;
    peak_K = Math.max(peak_K, hottest_K[i]!);
  }
  let peak_s = time_s[top]!;
  let highest = T[top]!;
  for (const i of [top - 1, top]) {
    if (i < 0 || i + 1 >= time_s.length) continue;
    const h = time_s[i + 1]! - time_s[i]!;
    const at = hermitePeak(T[i]!, rate[i]!, T[i + 1]!, rate[i + 1]!, h);
    const value = hermite(T[i]!, rate[i]!, T[i + 1]!, rate[i + 1]!, h, at);
    if (value > highest) {
      highest = value;
      peak_s = time_s[i]! + at;
    }
  }
  return { peak_K, peak_s };
}

function earlier(a: number | null, b: number | null): number | null {
  if (a === null) return b;
  return b === null ? a : Math.min(a, b);
}

function later(a: number | null, b: number | null): number | null {
  return a === null || b === null ? null : Math.max(a, b);
}
