/** What a form asks for, and how a refusal is worded. */

import type { Problem, Result } from './problem.ts';
import { bad } from './problem.ts';
import { roundTo, settle, trimmed } from './rounding.ts';
import { label, type NamedUnit } from './unit-words.ts';
import { type System, scaleFromSI, type UnitName } from './units.ts';

/** One question of a form. Everything may be left out. */
export interface Ask<U extends string = UnitName> {
  /** Where in the document, as `edges.0.face`. */
  readonly path?: string | undefined;
  /** The trade word for the message: "face height". */
  readonly what?: string | undefined;
  /** The unit meant when none is typed. Without it a bare number is refused. */
  readonly unit?: U | undefined;
  /** Smallest allowed, SI, inclusive. */
  readonly min?: number | undefined;
  /** Largest allowed, SI, inclusive. */
  readonly max?: number | undefined;
  /** The units in which the allowed range is told; without it, those that were typed. */
  readonly system?: System | undefined;
}

/** Longest text a reader looks at. */
export const longestText = 100;

/** What a reader knows about its own dimension. */
export interface Subject {
  /** First half of every problem code: `length`. */
  readonly name: string;
  /** Used when the question gives no trade word. */
  readonly what: string;
  /** What could have been typed. */
  readonly example: string;
}

/** A refusal in one sentence; `about` follows the trade word. */
export function refuse(
  subject: Subject,
  ask: Ask<string>,
  text: string,
  code: string,
  about: string,
  allowed: string,
): Result<never> {
  const what = ask.what ?? subject.what;
  const problem: Problem = {
    path: ask.path ?? '',
    code: `${subject.name}.${code}`,
    message: `${what.charAt(0).toUpperCase()}${what.slice(1)}: ${about}.`,
    read: text.length > longestText ? `${text.slice(0, 40)}...` : text,
    allowed,
  };
  return bad(problem);
}

/** Refuses what no reader looks at: not a text, empty, or too long. Undefined when the text may be read. */
export function refuseText(
  subject: Subject,
  ask: Ask<string>,
  text: unknown,
  allowed: string,
): Result<never> | undefined {
  if (typeof text !== 'string') {
    return refuse(
      subject,
      ask,
      String(JSON.stringify(text) ?? typeof text),
      'unreadable',
      'a text is needed',
      allowed,
    );
  }
  if (text.trim() === '') return refuse(subject, ask, text, 'empty', 'nothing was typed', allowed);
  if (text.length > longestText) {
    return refuse(
      subject,
      ask,
      text,
      'too-long',
      `the text is longer than ${longestText} characters`,
      allowed,
    );
  }
  return undefined;
}

/** An SI bound in a unit with four digits, rounded towards the allowed side. */
function sayBound(
  si: number,
  unit: NamedUnit,
  density_kg_m3: number | undefined,
  side: 'up' | 'down',
): string {
  const value = settle(scaleFromSI(si, unit, density_kg_m3));
  const mark = unit.name === '' || unit.name === '%' ? unit.name : ` ${label(unit.name)}`;
  if (value === 0) return `0${mark}`;
  const decimals = Math.max(-12, Math.min(9, 3 - Math.floor(Math.log10(Math.abs(value)))));
  const nearest = roundTo(value, decimals);
  const step = 10 ** -decimals;
  let told = nearest;
  if (side === 'up' && nearest < value) told = nearest + step;
  if (side === 'down' && nearest > value) told = nearest - step;
  return `${trimmed(told, Math.max(0, decimals))}${mark}`;
}

/**
 * "1 in to 240 in", "0 °C or more", "up to 3 mm"; undefined when there is no bound. SI bounds, told in the
 * unit.
 */
export function sayRange(
  min: number | undefined,
  max: number | undefined,
  unit: NamedUnit,
  density_kg_m3?: number,
): string | undefined {
  const falls = unit.reciprocal === true;
  let low = falls ? max : min;
  let high = falls ? min : max;
  if (falls && low !== undefined && !(low > 0)) low = undefined;
  if (falls && high !== undefined && !(high > 0)) high = undefined;
  if (low === undefined && high === undefined) return undefined;
  if (low === undefined && high !== undefined) return `up to ${sayBound(high, unit, density_kg_m3, 'down')}`;
  if (low !== undefined && high === undefined) return `${sayBound(low, unit, density_kg_m3, 'up')} or more`;
  return `${sayBound(low ?? 0, unit, density_kg_m3, 'up')} to ${sayBound(high ?? 0, unit, density_kg_m3, 'down')}`;
}

/**
 * A value against inclusive bounds, with a billionth of slack for the conversion between the unit typed and
 * the unit of the bound; a value within the slack becomes the bound. Undefined when it lies outside.
 */
export function withinBounds(
  value: number,
  min: number | undefined,
  max: number | undefined,
): number | undefined {
  const slack = 1e-9;
  if (min !== undefined && value < min) return value >= min - slack * Math.abs(min) ? min : undefined;
  if (max !== undefined && value > max) return value <= max + slack * Math.abs(max) ? max : undefined;
  return value;
}
