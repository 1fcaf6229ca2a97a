import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import { readDuration_s, readLength_m, readMass_kg, readTemperature_K } from '#core/quantity/read.ts';
import { ObservationDocument, type RECOAT_RESULTS } from './card-document.ts';
import { DocumentReader, parseShape, readShopTemperature_K } from './document-reader.ts';

/** One reading of a thermometer in a cup. */
export interface CupReading {
  readonly time_s: number;
  readonly temperature_K: number;
}

interface Seen {
  readonly id: string;
  /** As typed. */
  readonly date: string;
  /** Kept, but not used. */
  readonly withdrawn: boolean;
  readonly air_K: number;
}

/** What was in the cup. */
export interface InCup {
  readonly mass_kg: number;
  readonly diameter_m?: number | undefined;
  /** Temperature of the fresh mix; undefined: that of the air. */
  readonly start_K?: number | undefined;
}

/** What a shop saw of a resin. Times from when the parts met (cup) or the film was poured. */
export type Observation =
  | (Seen & InCup & { readonly kind: 'cup temperatures'; readonly readings: readonly CupReading[] })
  | (Seen & InCup & { readonly kind: 'cup time'; readonly reaches_K: number; readonly time_s: number })
  | (Seen & { readonly kind: 'gel'; readonly time_s: number } & (InCup | { readonly film_m: number }))
  | (Seen & {
      readonly kind: 'working end' | 'touch';
      readonly time_s: number;
      readonly film_m: number;
    })
  | (Seen & {
      readonly kind: 'recoat';
      readonly time_s: number;
      readonly film_m: number;
      readonly result: (typeof RECOAT_RESULTS)[number];
    });

const HOUR_s = 3600;
const FILM_m = { min: 1e-4, max: 0.05 } as const;
const MASS_kg = { min: 0.005, max: 20 } as const;
/** Hottest a cup is measured, K: beyond, plastic gives way and the model says nothing. */
const HOTTEST_CUP_K = 523.15;

/**
 * Reads one observation: needs the air, the time (or readings) and what was in the cup or how thick the film was. Paths are
 * those of the document under `path`, as `observations.3.time`. Never throws on what was typed.
 */
export function readObservation(input: unknown, path = ''): Result<Observation> {
  const at = (field: string) => (path === '' ? field : `${path}.${field}`);
  const shape = parseShape(ObservationDocument, input, 'observation');
  if (!shape.ok) return bad(...shape.problems.map((each) => ({ ...each, path: at(each.path) })));
  const typed = shape.value;
  const reader = new DocumentReader();
  const need = <T>(field: string, text: string, needs: string, read: (text: string) => Result<T>) => {
    if (text.trim() === '') {
      reader.refuse(at(field), 'observation.missing', `This observation needs ${needs}.`, '');
      return undefined;
    }
    return reader.take(read(text));
  };
  const air_K = need('air', typed.air, 'the air temperature', (text) =>
    readShopTemperature_K(text, at('air'), 'air'),
  );
  const time = () =>
    need('time', typed.time, 'the time it was seen', (text) =>
      readDuration_s(text, { path: at('time'), what: 'time', min: 10, max: 60 * 24 * HOUR_s }),
    );
  const film = () =>
    need('film', typed.film, 'the film thickness', (text) =>
      readLength_m(text, { path: at('film'), what: 'film', ...FILM_m }),
    );
  const cup = (): InCup | undefined => {
    const mass_kg = need('mass', typed.mass, 'the mass in the cup', (text) =>
      readMass_kg(text, { path: at('mass'), what: 'mass in the cup', ...MASS_kg }),
    );
    const diameter_m = reader.maybe(typed.diameter, (text) =>
      readLength_m(text, { path: at('diameter'), what: 'diameter of the cup', min: 0.01, max: 0.5 }),
    );
    const start_K = reader.maybe(typed.start, (text) =>
      readShopTemperature_K(text, at('start'), 'temperature of the fresh mix'),
    );
    if (mass_kg === undefined) return undefined;
    return {
      mass_kg,
      ...(diameter_m === undefined ? {} : { diameter_m }),
      ...(start_K === undefined ? {} : { start_K }),
    };
  };
  const inCup = typed.kind === 'cup temperatures' || typed.kind === 'cup time';
  const gelInCup = typed.kind === 'gel' && typed.film.trim() === '';
  const what = inCup || gelInCup ? cup() : film();
  const readings =
    typed.kind === 'cup temperatures' ? readReadings(typed.readings, at('readings'), reader) : undefined;
  const time_s = typed.kind === 'cup temperatures' ? undefined : time();
  if (reader.problems.length > 0 || air_K === undefined || what === undefined) return bad(...reader.problems);
  const seen: Seen = { id: typed.id, date: typed.date, withdrawn: typed.withdrawn, air_K };
  const done = (value: Observation): Result<Observation> => good(value, reader.warnings);
  if (typed.kind === 'cup temperatures')
    return done({ ...seen, ...(what as InCup), kind: 'cup temperatures', readings: readings! });
  if (typed.kind === 'cup time') {
    const reaches_K = typed.reaches === '40 C' ? 313.15 : 323.15;
    return done({ ...seen, ...(what as InCup), kind: 'cup time', reaches_K, time_s: time_s! });
  }
  if (gelInCup) return done({ ...seen, ...(what as InCup), kind: 'gel', time_s: time_s! });
  const film_m = what as number;
  if (typed.kind === 'recoat')
    return done({ ...seen, kind: 'recoat', film_m, time_s: time_s!, result: typed.result });
  if (typed.kind === 'gel') return done({ ...seen, kind: 'gel', film_m, time_s: time_s! });
  return done({ ...seen, kind: typed.kind, film_m, time_s: time_s! });
}

function readReadings(
  typed: ObservationDocument['readings'],
  path: string,
  reader: DocumentReader,
): CupReading[] {
  const readings: CupReading[] = [];
  typed.forEach((row, i) => {
    const time_s = reader.take(
      readDuration_s(row.at, {
        path: `${path}.${i}.at`,
        what: 'time',
        unit: 'min',
        min: 0,
        max: 48 * HOUR_s,
      }),
    );
    const temperature_K = reader.take(
      readTemperature_K(row.temperature, {
        path: `${path}.${i}.temperature`,
        what: 'temperature of the cup',
        min: 273.15,
        max: HOTTEST_CUP_K,
      }),
    );
    if (time_s !== undefined && temperature_K !== undefined) readings.push({ time_s, temperature_K });
  });
  reader.problems.push(...checkReadings(readings, path));
  return readings;
}

/** What is wrong with a series of readings: fewer than three, or times that do not go forward. */
export function checkReadings(readings: readonly CupReading[], path: string): Problem[] {
  if (readings.length < 3) {
    const message = 'At least three readings are needed.';
    return [{ path, code: 'observation.few-readings', message, read: `${readings.length}` }];
  }
  const back = readings.findIndex((each, i) => i > 0 && each.time_s <= readings[i - 1]!.time_s);
  if (back < 0) return [];
  return [
    {
      path: `${path}.${back}.at`,
      code: 'observation.reading-order',
      message: 'Readings go forward in time.',
      read: `${readings[back]!.time_s} s`,
      allowed: `later than ${readings[back - 1]!.time_s} s`,
    },
  ];
}
