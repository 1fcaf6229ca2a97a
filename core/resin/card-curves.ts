import { quantileOfSorted } from '#core/numeric/quantile.ts';
import { drawModels, type ReachedRange, rangeOf } from './ensemble.ts';
import { prepareBody } from './follow.ts';
import { UNSAID } from './label.ts';
import { tgAtBalance } from './mix-error.ts';
import type { ResinCard } from './model.ts';
import { CUP_CRITERIA } from './stage-criteria.ts';
import { convertedTo, thickened, warmedTo } from './term.ts';

/** How finely curves are computed. */
export interface CurveOptions {
  /** Resins drawn for the band; default 80. */
  readonly draws?: number | undefined;
  readonly seed?: number | undefined;
}

const drawn = (card: ResinCard, options: CurveOptions) =>
  drawModels(card, options.draws ?? 80, options.seed ?? 1);

/** A value with its 5, 50 and 95 % quantiles over the draws. */
export interface Band {
  readonly low: number;
  readonly mid: number;
  readonly high: number;
}

export function bandOf(values: readonly number[]): Band {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number) => quantileOfSorted(sorted, share);
  return { low: at(0.05), mid: at(0.5), high: at(0.95) };
}

export interface WorkingTimePoint {
  readonly temperature_K: number;
  readonly workingTime: ReachedRange;
}

/**
 * Working time of a film against the temperature of the shop: the chart to hang up. Default: 15 to 35 C in 11 steps, the label's
 * 2.5 mm film on 18 mm MDF. About 0.1 s.
 *
 * @throws RangeError when a temperature or the film is outside what the model answers for.
 */
export function workingTimeByTemperature(
  card: ResinCard,
  options: CurveOptions & {
    readonly temperatures_K?: readonly number[] | undefined;
    readonly film_m?: number | undefined;
  } = {},
): WorkingTimePoint[] {
  const models = drawn(card, options);
  const film_m = options.film_m ?? UNSAID.film_m;
  const temperatures = options.temperatures_K ?? Array.from({ length: 11 }, (_, i) => 288.15 + 2 * i);
  return temperatures.flatMap((temperature_K) => {
    const follow = prepareBody({ film_m, temperature_K }, card.model);
    const times = models.map((model) => {
      const watches = [thickened(model, model.workingRatio, temperature_K)];
      return Math.exp(follow(model, { watches, samples_s: [], peak: false, limit_s: SPAN_s }).reachedLn[0]!);
    });
    const workingTime = rangeOf(times.map((time) => (time < SPAN_s ? time : null)));
    return workingTime === null ? [] : [{ temperature_K, workingTime }];
  });
}

export interface CupTimesPoint {
  readonly mass_kg: number;
  /** Must be out of the cup: 40 C, or 8 % reacted. */
  readonly pourNow: ReachedRange | null;
  /** At its hottest. */
  readonly flash: ReachedRange | null;
  /** Mean temperature then, K. */
  readonly peak_K: Band;
}

/** Cups are followed this long, s. */
const SPAN_s = 2 * 86_400;
const MASSES_kg = [0.02, 0.05, 0.1, 0.2, 0.35, 0.5, 0.75, 1, 1.5, 2, 3, 5] as const;

/** When a cup must be out and when it flashes, against its mass: cups as high as wide, mixed at the shop's temperature (default 24 C). */
export function cupTimesByMass(
  card: ResinCard,
  options: CurveOptions & {
    readonly masses_kg?: readonly number[] | undefined;
    readonly air_K?: number | undefined;
  } = {},
): CupTimesPoint[] {
  const models = drawn(card, options);
  const temperature_K = options.air_K ?? UNSAID.temperature_K;
  const { conversion, temperature_K: hot_K } = CUP_CRITERIA.pourNow;
  return (options.masses_kg ?? MASSES_kg).map((mass_kg) => {
    const follow = prepareBody({ mass_kg, temperature_K }, card.model);
    const seen = models.map((model) =>
      follow(model, {
        watches: [warmedTo(hot_K), convertedTo(conversion)],
        samples_s: [],
        peak: true,
        limit_s: SPAN_s,
      }),
    );
    const limit = Math.log(SPAN_s) * (1 - 1e-9);
    return {
      mass_kg,
      pourNow: rangeOf(
        seen.map(({ reachedLn, peak_K }) => {
          // A cup that never gets to 40 C is told by its conversion alone.
          const ln = Math.min(peak_K >= hot_K ? reachedLn[0]! : Number.POSITIVE_INFINITY, reachedLn[1]!);
          return ln < limit ? Math.exp(ln) : null;
        }),
      ),
      flash: rangeOf(seen.map(({ peak_s }) => peak_s)),
      peak_K: bandOf(seen.map(({ peak_K }) => peak_K)),
    };
  });
}

export interface RatioErrorPoint {
  /** Part B too much (+) or too little (-), as a share of what the label asks. */
  readonly error: number;
  /** Highest glass transition such a mix can reach, K. */
  readonly tg_K: Band;
}

/** What an error of the mix ratio costs: the final glass transition from 25 % too little to 25 % too much of part B. */
export function finalTgByRatioError(
  card: ResinCard,
  options: CurveOptions & { readonly errors?: readonly number[] | undefined } = {},
): RatioErrorPoint[] {
  const models = drawn(card, options);
  const errors = options.errors ?? Array.from({ length: 21 }, (_, i) => -0.25 + 0.025 * i);
  return errors.map((error) => ({
    error,
    tg_K: bandOf(models.map((model) => tgAtBalance(model, 1 + error))),
  }));
}
