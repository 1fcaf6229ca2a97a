/** Which unit a quantity is shown in, and how finely: the one table behind the formatters and the ranges. */

import { label } from './unit-words.ts';
import { fromSI, type System, type UnitName } from './units.ts';

export type Kind =
  | 'length'
  | 'area'
  | 'volume'
  | 'mass'
  | 'weight'
  | 'temperature'
  | 'temperatureDifference'
  | 'film'
  | 'filmThickness'
  | 'duration'
  | 'viscosity'
  | 'density'
  | 'percent';

interface Shown {
  readonly unit: UnitName;
  /** Used from this value on, in this unit; the choices go from the largest unit to the smallest. */
  readonly from: number;
  readonly decimals: number;
}

const always = Number.NEGATIVE_INFINITY;
const one = (unit: UnitName, decimals: number): readonly Shown[] => [{ unit, from: always, decimals }];

/** Resin is weighed on a scale in grams whatever the shop measures lengths in. */
const mass: readonly Shown[] = [
  { unit: 'kg', from: 10, decimals: 2 },
  { unit: 'g', from: 100, decimals: 0 },
  { unit: 'g', from: 10, decimals: 1 },
  { unit: 'g', from: always, decimals: 2 },
];

const time: readonly Shown[] = [
  { unit: 'd', from: 2, decimals: 1 },
  { unit: 'h', from: 2, decimals: 1 },
  { unit: 'min', from: 2, decimals: 0 },
  { unit: 's', from: always, decimals: 0 },
];

const table: Readonly<Record<Kind, Readonly<Record<System, readonly Shown[]>>>> = {
  length: { us: one('in', 2), metric: one('mm', 0) },
  area: {
    us: [
      { unit: 'sq ft', from: 1, decimals: 1 },
      { unit: 'sq ft', from: always, decimals: 2 },
    ],
    metric: [
      { unit: 'm2', from: 0.1, decimals: 2 },
      { unit: 'm2', from: always, decimals: 3 },
    ],
  },
  volume: {
    us: [
      { unit: 'gal', from: 1, decimals: 2 },
      { unit: 'fl oz', from: 1, decimals: 1 },
      { unit: 'fl oz', from: always, decimals: 2 },
    ],
    metric: [
      { unit: 'L', from: 1, decimals: 2 },
      { unit: 'mL', from: 10, decimals: 0 },
      { unit: 'mL', from: always, decimals: 1 },
    ],
  },
  mass: { us: mass, metric: mass },
  weight: {
    us: [
      { unit: 'lb', from: 10, decimals: 0 },
      { unit: 'lb', from: always, decimals: 1 },
    ],
    metric: [
      { unit: 'kg', from: 10, decimals: 0 },
      { unit: 'kg', from: always, decimals: 1 },
    ],
  },
  temperature: { us: one('F', 0), metric: one('C', 0) },
  temperatureDifference: { us: one('delta F', 1), metric: one('delta C', 1) },
  film: {
    us: [
      { unit: 'fl oz/sq ft', from: 1, decimals: 1 },
      { unit: 'fl oz/sq ft', from: always, decimals: 2 },
    ],
    metric: [
      { unit: 'mm', from: 0.1, decimals: 2 },
      { unit: 'mm', from: always, decimals: 3 },
    ],
  },
  filmThickness: {
    us: [
      { unit: 'mil', from: 10, decimals: 0 },
      { unit: 'mil', from: always, decimals: 1 },
    ],
    metric: [
      { unit: 'mm', from: 0.1, decimals: 2 },
      { unit: 'um', from: always, decimals: 0 },
    ],
  },
  duration: { us: time, metric: time },
  viscosity: {
    us: one('cP', 0),
    metric: [
      { unit: 'Pa s', from: 10, decimals: 1 },
      { unit: 'mPa s', from: always, decimals: 0 },
    ],
  },
  density: { us: one('lb/gal', 2), metric: one('g/mL', 2) },
  percent: { us: one('%', 0), metric: one('%', 0) },
};

/**
 * How a magnitude (SI) of a kind is shown. A value a hair under a limit, as a conversion leaves it, counts as
 * on it.
 */
export function shownFor(kind: Kind, system: System, si: number): Shown {
  const choices = table[kind][system];
  const found = choices.find(
    ({ unit, from }) => from === always || Math.abs(fromSI(si, unit)) >= from * (1 - 1e-9),
  );
  const last = choices[choices.length - 1];
  if (found !== undefined) return found;
  if (last !== undefined) return last;
  throw new RangeError(`kind is ${kind}; allowed: a kind listed in core/quantity/display.ts`);
}

/** A printed figure and its unit: "4.0 fl oz/sq ft", "35%". */
export function withUnit(figure: string, unit: UnitName): string {
  return unit === '%' ? `${figure}%` : `${figure} ${label(unit)}`;
}
