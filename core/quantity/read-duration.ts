/** How long: the reader of durations. */

import type { Ask } from './ask.ts';
import type { Result } from './problem.ts';
import { type Dimensioned, type Found, readQuantity } from './reader.ts';
import { plain } from './typed.ts';
import { named, unitFor } from './unit-words.ts';
import type { UnitOf } from './units.ts';

function find(words: string): Found | undefined {
  if (words !== ':') return unitFor('time', words);
  return {
    code: 'no-unit',
    about: 'a figure with a colon is hours and minutes (1:30 h) or minutes and seconds (1:30 min), up to 59',
  };
}

const duration: Dimensioned = {
  name: 'duration',
  what: 'time',
  example: '20 min, 1 h 30 min, 1:30 h or 2 d',
  find,
  byName: (name) => named('time', name),
  shown: { us: 'min', metric: 'min' },
  floor: 0,
  next: { h: 'min', min: 's' },
};

const clock = /^(\d+):([0-5]\d)(?::([0-5]\d))?(?: ?([a-z.]+))?$/i;

/**
 * "1:30 h" as "1 h 30 min", "1:30 min" as "1 min 30 s", "1:30:00" as hours; undefined when it is no clock
 * figure.
 */
function spellOut(text: string, assumed: string | undefined): string | undefined {
  const match = clock.exec(text);
  if (match === null) return undefined;
  const [, first, second, third, words] = match;
  const unit = words === undefined ? assumed : unitFor('time', words)?.name;
  if (third !== undefined) {
    return unit === undefined || unit === 'h' ? `${first} h ${second} min ${third} s` : undefined;
  }
  if (unit === 'h') return `${first} h ${second} min`;
  if (unit === 'min') return `${first} min ${second} s`;
  return undefined;
}

/**
 * A duration in seconds: 20 min, 90s, 1 h 30, 1:30 h, 1.5 h, 2 d, 1 wk. "1:30" alone takes the unit of the
 * question (h or min). A day is 24 h. "m" is minutes here.
 */
export function readDuration_s(text: string, ask: Ask<UnitOf<'time'>> = {}): Result<number> {
  const spelled =
    typeof text === 'string' && text.length <= 100 ? spellOut(plain(text), ask.unit) : undefined;
  const result = readQuantity(spelled ?? text, ask, duration);
  if (result.ok || spelled === undefined) return result;
  return { ok: false, problems: result.problems.map((problem) => ({ ...problem, read: text })) };
}
