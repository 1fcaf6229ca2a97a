/** Readers of figures without a dimension: percentages, humidity, mix ratios, counts. */

import { type Ask, refuse, refuseText, type Subject, sayRange, withinBounds } from './ask.ts';
import { good, type Result } from './problem.ts';
import { type Dimensioned, readQuantity } from './reader.ts';
import { plain, readDecimal, takeApart } from './typed.ts';
import { named, unitFor } from './unit-words.ts';
import type { UnitOf } from './units.ts';

/** Parts of A to parts of B; both more than 0. */
export interface MixRatio {
  readonly a: number;
  readonly b: number;
  readonly basis: 'volume' | 'weight';
}

const percent: Dimensioned = {
  name: 'percent',
  what: 'share',
  example: '35% or 2.5 percent',
  find: (words) => unitFor('fraction', words),
  byName: (name) => named('fraction', name),
  shown: { us: '%', metric: '%' },
  floor: 0,
};

/**
 * A percentage as a fraction: 35% is 0.35. Not below 0 unless the question allows it; no upper bound unless
 * asked.
 */
export function readPercent(text: string, ask: Ask<UnitOf<'fraction'>> = {}): Result<number> {
  return readQuantity(text, ask, percent);
}

const humidity: Dimensioned = {
  ...percent,
  name: 'humidity',
  what: 'relative humidity',
  example: '55% or 55 % RH',
  find: (words) =>
    unitFor('fraction', words.replace(/ ?\b(?:rh|r\.h\.|relative humidity)$/i, '').trim() || '%'),
};

/**
 * Relative humidity as a fraction from 0 to 1: 55%, 55 % RH, 55. A bare figure is a percentage, but a bare
 * figure between 0 and 1 is refused, because 0.55 may be meant as 55 %.
 */
export function readRelativeHumidity(text: string, ask: Ask<UnitOf<'fraction'>> = {}): Result<number> {
  const question = { ...ask, unit: ask.unit ?? '%', min: ask.min ?? 0, max: ask.max ?? 1 } as const;
  const result = readQuantity(text, question, humidity);
  if (
    result.ok &&
    ask.unit === undefined &&
    result.value > 0 &&
    result.value < 0.01 &&
    !/[%a-z]/i.test(text)
  ) {
    const about = 'a figure below 1 can be a percentage or a fraction: type the % sign';
    return refuse(humidity, ask, text, 'ambiguous', about, humidity.example);
  }
  return result;
}

const ratio: Subject = {
  name: 'ratio',
  what: 'mix ratio',
  example: '2:1, 100:45 by weight or 3 to 1 by volume',
};

const parts = '([\\d.,]+)(?: ?(?:parts?|pts?))?';
const ratioPattern = new RegExp(
  `^${parts}(?: ?a(?![a-z]))?(?: ?: ?| to )${parts}(?: ?b(?![a-z]))?(?: ?,)?(?: ?([a-z(].*))?$`,
  'i',
);
const volumeWords = /^(?:by )?(?:volume|vol|v|pbv)$/;
const weightWords = /^(?:by )?(?:weight|wt|w|mass|pbw)$/;

function basisOf(words: string): 'volume' | 'weight' | undefined {
  const word = words.toLowerCase().replace(/[().]/g, '').trim();
  if (word === '' || volumeWords.test(word)) return 'volume';
  return weightWords.test(word) ? 'weight' : undefined;
}

/**
 * A mix ratio of part A to part B: 2:1, 100:45 by weight, 100 : 45 w, 3 to 1 by volume. By volume when
 * nothing is said. Both parts must be more than 0; `min` and `max` of the question bound A/B.
 */
export function readRatio(text: string, ask: Ask<never> = {}): Result<MixRatio> {
  const refusal = refuseText(ratio, ask, text, ratio.example);
  if (refusal !== undefined) return refusal;
  const match = ratioPattern.exec(plain(text));
  if (match === null) {
    return refuse(
      ratio,
      ask,
      text,
      'unreadable',
      'two figures with a colon between them are needed',
      ratio.example,
    );
  }
  const [, textA = '', textB = '', words = ''] = match;
  const [a, b] = [readDecimal(textA), readDecimal(textB)];
  if ('why' in a)
    return refuse(ratio, ask, text, a.ambiguous ? 'ambiguous' : 'unreadable', a.why, ratio.example);
  if ('why' in b)
    return refuse(ratio, ask, text, b.ambiguous ? 'ambiguous' : 'unreadable', b.why, ratio.example);
  const basis = basisOf(words);
  if (basis === undefined) {
    const about = `"${words}" was not understood: say by volume or by weight`;
    return refuse(ratio, ask, text, 'unknown-unit', about, ratio.example);
  }
  const quotient = a.value / b.value;
  if (!(a.value > 0 && b.value > 0 && quotient > 0 && Number.isFinite(quotient))) {
    return refuse(ratio, ask, text, 'range', 'both parts must be more than 0', ratio.example);
  }
  if (withinBounds(quotient, ask.min, ask.max) === undefined) {
    const allowed = `${ask.min ?? 0}:1 to ${ask.max === undefined ? 'any' : `${ask.max}:1`}`;
    return refuse(ratio, ask, text, 'range', 'the ratio is out of range', allowed);
  }
  return good({ a: a.value, b: b.value, basis });
}

const count: Subject = { name: 'count', what: 'number', example: 'a whole number, as 3' };

/** A whole number, 0 or more unless the question allows less: 3, 12. Neither units nor fractions. */
export function readCount(text: string, ask: Ask<never> = {}): Result<number> {
  const min = ask.min ?? 0;
  const range = sayRange(min, ask.max, { name: '', times: 1, per: 1 });
  const allowed = `a whole number, ${range}`;
  const refusal = refuseText(count, ask, text, allowed);
  if (refusal !== undefined) return refusal;
  const match = /^([+-]?)(\d+)$/.exec(plain(text));
  if (match === null) {
    const read = readDecimal(plain(text));
    const ambiguous = 'why' in read && read.ambiguous === true;
    const about = ambiguous ? read.why : 'a whole number without a unit is needed';
    return refuse(count, ask, text, ambiguous ? 'ambiguous' : 'unreadable', about, allowed);
  }
  const value = Number(match[2]) * (match[1] === '-' ? -1 : 1) + 0;
  if (!Number.isSafeInteger(value) || value < min || (ask.max !== undefined && value > ask.max)) {
    return refuse(count, ask, text, 'range', 'the number is out of range', allowed);
  }
  return good(value);
}

const figure: Subject = {
  name: 'factor',
  what: 'factor',
  example: 'a figure without a unit, as 1.5 or 1 1/2',
};

/** A figure without a unit, 0 or more unless the question allows less: 1.5, 1 1/2, 1,5. */
export function readFactor(text: string, ask: Ask<never> = {}): Result<number> {
  const min = ask.min ?? 0;
  const allowed = `${figure.example}, ${sayRange(min, ask.max, { name: '', times: 1, per: 1 })}`;
  const refusal = refuseText(figure, ask, text, allowed);
  if (refusal !== undefined) return refusal;
  const taken = takeApart(plain(text));
  if (!taken.ok) return refuse(figure, ask, text, taken.code, taken.why, allowed);
  const [term] = taken.terms;
  if (term === undefined || taken.terms.length > 1 || term.words !== '') {
    return refuse(figure, ask, text, 'unreadable', 'one figure without a unit is needed', allowed);
  }
  const value = withinBounds((taken.negative ? -term.value : term.value) + 0, min, ask.max);
  if (value === undefined) return refuse(figure, ask, text, 'range', 'the figure is out of range', allowed);
  return good(value);
}
