import { formatDuration, formatMass } from '#core/quantity/format.ts';
import type { Body, Watch } from './follow.ts';
import { tgOf } from './kinetics.ts';
import type { ResinModel } from './model.ts';
import type { CupReading, Observation } from './observations.ts';
import { convertedTo, hardened, type Term, thickened, warmedTo } from './term.ts';

/**
 * How closely an observation repeats, one standard deviation of ln t; touch and recoat in the glass transition (K) and the
 * conversion at which they are judged. Common practice, no source.
 */
export const OBSERVED = {
  cupTime: 0.1,
  /** All readings of one cup together count as one time known to this: probe, scale and air are the same throughout. */
  cupSeries: 0.08,
  workingEnd: 0.15,
  gel: 0.12,
  /** Tack is gone at Tg = T - 5 K, 5 K either way (about 0.07 in ln t each), and a finger is no instrument. */
  touch: 0.38,
  touchOffset_K: -5,
  recoatOpens: 0.05,
  recoatConversion: 0.04,
  recoatCloses_K: 2.5,
  recoat_K: 4,
} as const;

/** Rises of the cup above its first reading at which its time is taken, K, up to `HIGHEST_K`. */
const RISES_K = [3, 6, 10, 15, 21, 28] as const;
const HIGHEST_K = 333.15;

/** What the shop saw, as terms of the fit; those withdrawn are left out. */
export function observationTerms(observations: readonly Observation[]): Term[] {
  return observations.filter((each) => !each.withdrawn).map(termOf);
}

function termOf(seen: Observation): Term {
  const body: Body =
    'film_m' in seen
      ? { film_m: seen.film_m, temperature_K: seen.air_K }
      : {
          mass_kg: seen.mass_kg,
          temperature_K: seen.air_K,
          ...(seen.diameter_m === undefined ? {} : { diameter_m: seen.diameter_m }),
          ...(seen.start_K === undefined ? {} : { start_K: seen.start_K }),
        };
  const said = sayObservation(seen);
  const timed = (time_s: number, sd: number, watch: (model: ResinModel) => Watch): Term => ({
    said,
    body,
    watches: (model) => [watch(model)],
    samples_s: [],
    peak: false,
    limit_s: Math.max(8 * time_s, 3600),
    told: { time_s, sdLn: sd },
    count: 1,
    residuals: (_model, { reachedLn }) => [(reachedLn[0]! - Math.log(time_s)) / sd],
  });
  switch (seen.kind) {
    case 'cup time':
      return timed(seen.time_s, OBSERVED.cupTime, () => warmedTo(seen.reaches_K));
    case 'gel':
      return timed(seen.time_s, OBSERVED.gel, (model) => convertedTo(model.gelConversion));
    case 'working end':
      return timed(seen.time_s, OBSERVED.workingEnd, (model) =>
        thickened(model, model.workingRatio, seen.air_K),
      );
    case 'touch':
      return timed(seen.time_s, OBSERVED.touch, (model) => hardened(model, OBSERVED.touchOffset_K));
    case 'recoat': {
      const { time_s, result } = seen;
      return {
        said,
        body,
        watches: () => [],
        peak: false,
        limit_s: time_s,
        samples_s: [time_s],
        count: 2,
        residuals: (model, { samples }) => {
          const { conversion, temperature_K } = samples[0]!;
          const open = (conversion - model.gelConversion - OBSERVED.recoatOpens) / OBSERVED.recoatConversion;
          const closed =
            (tgOf(model, conversion) - temperature_K - OBSERVED.recoatCloses_K) / OBSERVED.recoat_K;
          if (result === 'too early') return [Math.max(0, open), 0];
          if (result === 'too late') return [0, Math.max(0, -closed)];
          return [Math.max(0, -open), Math.max(0, closed)];
        },
      };
    }
    case 'cup temperatures':
      return seriesTerm(said, body, seen.readings);
  }
}

/**
 * A cup's readings: the times it passes set rises above its first reading; where it has not risen 3 K by the last reading,
 * the rise itself, to 1 K. The body starts at the first reading.
 */
function seriesTerm(said: string, body: Body, readings: readonly CupReading[]): Term {
  const first = readings[0]!;
  const started = { ...body, start_K: first.temperature_K };
  const passed = RISES_K.flatMap((rise) => {
    const level = first.temperature_K + rise;
    const at = level > HIGHEST_K ? null : passing(readings, level);
    return at === null ? [] : [{ level, time_s: at }];
  });
  const last = readings[readings.length - 1]!;
  if (passed.length === 0) {
    return {
      said,
      body: started,
      watches: () => [],
      samples_s: [last.time_s],
      peak: false,
      limit_s: last.time_s,
      count: 1,
      residuals: (_model, { samples }) => [samples[0]!.temperature_K - last.temperature_K],
    };
  }
  const sd = OBSERVED.cupSeries * Math.sqrt(passed.length);
  return {
    said,
    body: started,
    watches: () => passed.map(({ level }) => warmedTo(level)),
    samples_s: [],
    peak: false,
    limit_s: Math.max(8 * last.time_s, 3600),
    count: passed.length,
    residuals: (_model, { reachedLn }) =>
      passed.map(({ time_s }, i) => (reachedLn[i]! - Math.log(time_s)) / sd),
  };
}

/** First time a series passes a level, linear between readings; null when it does not. */
export function passing(readings: readonly CupReading[], level_K: number): number | null {
  for (let i = 1; i < readings.length; i++) {
    const [from, to] = [readings[i - 1]!, readings[i]!];
    if (from.temperature_K >= level_K || to.temperature_K < level_K) continue;
    const share = (level_K - from.temperature_K) / (to.temperature_K - from.temperature_K);
    return Math.max(1, from.time_s + share * (to.time_s - from.time_s));
  }
  return null;
}

/** "gel seen after 35 min", "a cup of 100 g at 40 °C after 9 min". */
export function sayObservation(seen: Observation): string {
  const after = 'time_s' in seen ? `after ${formatDuration(seen.time_s)}` : '';
  switch (seen.kind) {
    case 'cup temperatures':
      return `the readings of a cup of ${formatMass(seen.mass_kg)}`;
    case 'cup time':
      return `a cup of ${formatMass(seen.mass_kg)} at ${Math.round(seen.reaches_K - 273.15)} °C ${after}`;
    case 'gel':
      return 'film_m' in seen
        ? `gel of a film ${after}`
        : `gel of a cup of ${formatMass(seen.mass_kg)} ${after}`;
    case 'working end':
      return `a film no longer workable ${after}`;
    case 'touch':
      return `a film dry to the glove ${after}`;
    case 'recoat':
      return `a next coat ${seen.result === 'ok' ? 'that took well' : seen.result} ${after}`;
  }
}
