/** The one reader behind all quantities with a unit. */

import { type Ask, refuse, refuseText, type Subject, sayRange, withinBounds } from './ask.ts';
import { good, type Result } from './problem.ts';
import { plain, raisePowers, type Term, takeApart } from './typed.ts';
import type { NamedUnit } from './unit-words.ts';
import { label } from './unit-words.ts';
import { type System, scaleToSI } from './units.ts';

export type Found = NamedUnit | { readonly code: string; readonly about: string };

/** What one dimension adds to the common reader. */
export interface Dimensioned extends Subject {
  /** The unit meant by some words, or why not; undefined when the words mean nothing here. */
  readonly find: (words: string) => Found | undefined;
  /** A unit by its own name: that of `Ask.unit`. */
  readonly byName: (name: string) => NamedUnit | undefined;
  /** The units in which ranges are told. */
  readonly shown: Readonly<Record<System, string>>;
  /** Lowest value whatever is asked, SI; undefined where negative values make sense. */
  readonly floor?: number;
  /** The unit meant by a bare number after another unit: inches after feet. */
  readonly next?: Readonly<Record<string, string>>;
  /** Digits belong to unit words: m2, ft3. */
  readonly powers?: true;
}

function isUnit(found: Found): found is NamedUnit {
  return 'times' in found;
}

type Located =
  | { readonly ok: true; readonly units: readonly NamedUnit[] }
  | { readonly ok: false; readonly code: string; readonly about: string };

function locate(terms: readonly Term[], ask: Ask<string>, subject: Dimensioned): Located {
  const located: NamedUnit[] = [];
  for (const [position, term] of terms.entries()) {
    const before = located[position - 1];
    const last = position === terms.length - 1;
    let found: Found | undefined;
    if (term.words !== '' && term.words !== '°') {
      found = subject.find(term.words);
      if (found === undefined) {
        return { ok: false, code: 'unknown-unit', about: `"${term.words}" was not understood as a unit` };
      }
    } else if (before !== undefined) {
      found = subject.byName(subject.next?.[before.name] ?? '');
    } else if (last && ask.unit !== undefined) {
      found = subject.byName(ask.unit);
      if (found === undefined)
        throw new RangeError(`ask.unit is ${ask.unit}; allowed: a unit of ${subject.name}`);
    }
    if (found === undefined) {
      const about = last
        ? `the unit is missing after ${term.value}`
        : `the text after ${term.value} was not understood`;
      return { ok: false, code: last ? 'no-unit' : 'unreadable', about };
    }
    if (!isUnit(found)) return { ok: false, ...found };
    located.push(found);
  }
  return { ok: true, units: located };
}

/**
 * Why several terms do not make one quantity, or undefined when they do: "2 ft 1 1/2 in" does, "3 in 2 ft"
 * does not.
 */
function clash(terms: readonly Term[], found: readonly NamedUnit[]): string | undefined {
  for (let i = 1; i < terms.length; i++) {
    const [before, after] = [found[i - 1], found[i]];
    if (before === undefined || after === undefined) continue;
    const [large, small] = [before.times / before.per, after.times / after.per];
    const simple = [before, after].every((u) => u.offset === undefined && !u.reciprocal && !u.byMass);
    if (!simple || `${before.name}${after.name}`.includes('/') || before.name === '%')
      return 'one figure with one unit is needed';
    if (!(large > small)) {
      return `${label(after.name)} cannot follow ${label(before.name)}`;
    }
    if (terms[i - 1]?.whole !== true)
      return `a whole number of ${label(before.name)} is needed before ${label(after.name)}`;
  }
  return undefined;
}

function total(
  terms: readonly Term[],
  found: readonly NamedUnit[],
  negative: boolean,
  density_kg_m3: number | undefined,
): number {
  const [first] = found;
  if (first === undefined) return 0;
  const sign = negative ? -1 : 1;
  const signed = (i: number) => sign * (terms[i]?.value ?? 0);
  if (found.length > 1 && found.every((unit) => unit.per === first.per)) {
    return found.reduce((sum, unit, i) => sum + signed(i) * unit.times, 0) / first.per;
  }
  return found.reduce((sum, unit, i) => sum + scaleToSI(signed(i), unit, density_kg_m3), 0);
}

/**
 * Reads one quantity as SI, or says what was not understood and what is allowed. Never throws on what was
 * typed.
 */
export function readQuantity(
  text: string,
  ask: Ask<string>,
  subject: Dimensioned,
  density_kg_m3?: number,
): Result<number> {
  const floor = subject.floor;
  const min = floor === undefined ? ask.min : (ask.min ?? floor);
  const rangeIn = (unit: NamedUnit | undefined): string | undefined => {
    const shown =
      ask.system === undefined
        ? (unit ?? subject.byName(ask.unit ?? subject.shown.metric))
        : subject.byName(subject.shown[ask.system]);
    if (shown === undefined || (shown.byMass === true && density_kg_m3 === undefined)) return undefined;
    return sayRange(min, ask.max, shown, density_kg_m3);
  };
  const bounded = ask.min !== undefined || ask.max !== undefined;
  const range = bounded ? rangeIn(undefined) : undefined;
  const allowed = range === undefined ? subject.example : `${range}, typed as ${subject.example}`;

  const refusal = refuseText(subject, ask, text, allowed);
  if (refusal !== undefined) return refusal;
  const cleaned = plain(text);
  const taken = takeApart(subject.powers === true ? raisePowers(cleaned) : cleaned);
  if (!taken.ok) return refuse(subject, ask, text, taken.code, taken.why, allowed);
  const located = locate(taken.terms, ask, subject);
  if (!located.ok) return refuse(subject, ask, text, located.code, located.about, allowed);
  const fault = clash(taken.terms, located.units);
  if (fault !== undefined) return refuse(subject, ask, text, 'unreadable', fault, allowed);

  const unit = located.units[located.units.length - 1];
  if (unit?.byMass === true && density_kg_m3 === undefined) {
    const about = 'a weight per area needs the density of the resin to become a thickness';
    return refuse(subject, ask, text, 'no-density', about, allowed);
  }
  const single = (taken.terms[0]?.value ?? 0) * (taken.negative ? -1 : 1);
  if (unit?.reciprocal === true && !(single > 0)) {
    return refuse(subject, ask, text, 'range', 'a spreading rate is more than 0', allowed);
  }
  const value = total(taken.terms, located.units, taken.negative, density_kg_m3);
  if (!Number.isFinite(value)) return refuse(subject, ask, text, 'range', 'the figure is too large', allowed);
  const kept = withinBounds(value, min, ask.max);
  if (kept !== undefined) return good(kept + 0);
  const low = min !== undefined && value < min;
  const about = low ? 'the figure is too small' : 'the figure is too large';
  return refuse(subject, ask, text, 'range', about, rangeIn(located.units[0]) ?? subject.example);
}
