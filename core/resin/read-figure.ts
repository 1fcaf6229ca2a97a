import { bad, good, type Result } from '#core/quantity/problem.ts';
import {
  readDuration_s,
  readFilm_m,
  readLength_m,
  readMass_kg,
  readViscosity_Pa_s,
} from '#core/quantity/read.ts';
import type { FigureDocument } from './card-document.ts';
import { DocumentReader, readShopTemperature_K } from './document-reader.ts';
import type { Figure } from './label.ts';

const MINUTE_s = 60;
const HOUR_s = 3600;
const DAY_s = 86_400;

/** What each figure can be, SI. Wide: what no label of such a resin says. */
const ALLOWED: Readonly<Record<Figure['kind'], readonly [number, number]>> = {
  'working time': [MINUTE_s, 2 * DAY_s],
  'pot life': [MINUTE_s, 2 * DAY_s],
  'recoat opens': [10 * MINUTE_s, 30 * DAY_s],
  'recoat closes': [10 * MINUTE_s, 60 * DAY_s],
  'dry hard': [10 * MINUTE_s, 30 * DAY_s],
  handle: [10 * MINUTE_s, 30 * DAY_s],
  'full cure': [HOUR_s, 60 * DAY_s],
  viscosity: [0.02, 50],
  'largest film': [2e-4, 0.1],
};

/** Film and cup mass that a figure can be measured on. */
const FILM_m = [1e-4, 0.05] as const;
const MASS_kg = [1e-3, 20] as const;

/** One typed figure of a label as data. `path` is that of the figure in its document. */
export function readFigure(document: FigureDocument, path: string): Result<Figure> {
  const reader = new DocumentReader();
  const { kind } = document;
  const [min, max] = ALLOWED[kind];
  const readOne = (text: string, at: string): Result<number> => {
    const ask = { path: at, what: kind, min, max };
    if (kind === 'viscosity') return readViscosity_Pa_s(text, ask);
    if (kind === 'largest film') return readFilm_m(text, ask);
    return readDuration_s(text, ask);
  };
  const range = reader.take(readFigureRange(document.value, `${path}.value`, kind, readOne));
  const temperature_K = reader.maybe(document.temperature, (text) =>
    readShopTemperature_K(text, `${path}.temperature`, `temperature of the ${kind}`),
  );
  const mass_kg = reader.maybe(document.mass, (text) =>
    readMass_kg(text, { path: `${path}.mass`, what: 'mass in the cup', min: MASS_kg[0], max: MASS_kg[1] }),
  );
  const film_m = reader.maybe(document.film, (text) =>
    readLength_m(text, { path: `${path}.film`, what: 'film', min: FILM_m[0], max: FILM_m[1] }),
  );
  if (document.end !== 'unknown' && kind !== 'pot life' && kind !== 'working time') {
    reader.doubt(`${path}.end`, 'label.end-unused', `What it ends at is not used for ${kind}.`, document.end);
  }
  if (range === undefined || reader.problems.length > 0) return bad(...reader.problems);
  return good(
    {
      kind,
      ...range,
      ...(mass_kg === undefined ? {} : { mass_kg }),
      ...(film_m === undefined ? {} : { film_m }),
      ...(temperature_K === undefined ? {} : { temperature_K }),
      ...(document.end === 'unknown' ? {} : { end: document.end }),
    },
    reader.warnings,
  );
}

const HEDGE = /^(?:up to|at most|max\.?|about|approx\.?|ca\.?|~|<)\s*/i;
const BETWEEN = /^(.+?)\s*(?:\bto\b|–|—|-|\.\.\.?)\s*(\S.*)$/;
const LAST_UNIT = /[\d.,/½¼¾]\s*([a-zµ°"'][^\d]*)$/i;

/** "20 min", "4 to 6 h", "90 min - 2 h", "about 1 day": a figure or its range; the first part borrows the unit of the second. */
export function readFigureRange(
  text: string,
  path: string,
  what: string,
  readOne: (text: string, path: string) => Result<number>,
): Result<{ readonly low: number; readonly high: number }> {
  const plain = text.trim().replace(HEDGE, '');
  const single = readOne(plain, path);
  if (single.ok) return good({ low: single.value, high: single.value }, single.warnings);
  const match = BETWEEN.exec(plain);
  if (match === null) return bad(...single.problems);
  const [, from = '', to = ''] = match;
  const unit = LAST_UNIT.exec(to)?.[1] ?? '';
  const low = readOne(/[a-zµ"']/i.test(from) ? from : `${from} ${unit}`, path);
  const high = readOne(to, path);
  if (!low.ok) return low;
  if (!high.ok) return high;
  if (low.value > high.value) {
    return bad({
      path,
      code: 'label.range-backwards',
      message: `${what.charAt(0).toUpperCase()}${what.slice(1)}: the range runs backwards.`,
      read: text,
      allowed: 'the smaller figure first, as "4 to 6 h"',
    });
  }
  return good({ low: low.value, high: high.value });
}
