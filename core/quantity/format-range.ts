/** Forecasts as ranges: "18 to 24 min". */

import { type Kind, shownFor, withUnit } from './display.ts';
import { fixed, roundToStep, settle } from './rounding.ts';
import { finite, fromSI, type System } from './units.ts';

/** 1 or 5 times a power of ten, at most the value (more than 0): steps a person counts in. */
function roundStepBelow(value: number): number {
  const power = powerOf(value);
  return settle(value / power >= 5 ? 5 * power : power);
}

/** The power of ten at or below the value (more than 0). */
function powerOf(value: number): number {
  return settle(10 ** Math.floor(Math.log10(value)));
}

/** Decimals needed to print multiples of a step. */
function decimalsOf(step: number): number {
  return Math.max(0, Math.min(12, -Math.floor(Math.log10(step) + 1e-9)));
}

/**
 * Kinds whose zero is only a mark on a scale, so that their digits say nothing of how finely they are known.
 */
const scaled: readonly Kind[] = ['temperature'];

/**
 * A range in words, rounded to what it can carry: steps of about a fifth of its width, and never three
 * significant digits (temperatures: whole degrees at the finest). The middle chooses the unit, and is told
 * alone as "about 18 min" when both ends round to the same figure. A range from 0 is "up to 4 min".
 *
 * SI values with low <= mid <= high. Throws RangeError otherwise, and on NaN or Infinity.
 * Example: formatRange(1098, 1260, 1422, 'duration', 'us') is "18 to 24 min".
 */
export function formatRange(low: number, mid: number, high: number, kind: Kind, system: System): string {
  finite('low', low);
  finite('mid', mid);
  finite('high', high);
  if (!(low <= mid && mid <= high)) {
    throw new RangeError(`range is ${low}, ${mid}, ${high}; allowed: low <= mid <= high`);
  }
  const { unit } = shownFor(kind, system, mid === 0 ? high : mid);
  const [from, middle, to] = [low, mid, high].map((si) => settle(fromSI(si, unit))) as [
    number,
    number,
    number,
  ];
  const isScaled = scaled.includes(kind);
  const width = to - from;
  if (width === 0 && to === 0) return withUnit('0', unit);

  const ofWidth = width > 0 ? roundStepBelow(width / 5) : 0;
  // Two significant digits at the finest; and an end much smaller than the other keeps its own first digit: 2
  // to 25 h, not 0 to 25 h.
  const stepAt = (end: number): number => {
    if (isScaled) return Math.max(1, ofWidth);
    if (end === 0) return ofWidth;
    const power = powerOf(Math.abs(end));
    return Math.min(Math.max(power / 10, ofWidth), power);
  };
  const round = (end: number) => roundToStep(end, stepAt(end));
  const print = (end: number) => fixed(round(end), decimalsOf(stepAt(end)));
  if (round(from) === round(to)) {
    const alone = isScaled || middle === 0 ? stepAt(middle) : powerOf(Math.abs(middle)) / 10;
    return `about ${withUnit(fixed(roundToStep(middle, alone), decimalsOf(alone)), unit)}`;
  }
  const last = withUnit(print(to), unit);
  return from === 0 && !isScaled ? `up to ${last}` : `${print(from)} to ${last}`;
}
