/** The grid corners and holes are moved on, and lengths as the text a document holds. */
import { formatLength } from '#core/quantity/format.ts';
import { fromSI, type System, toSI } from '#core/quantity/units.ts';

/** What is moved by: the grid of a tape, or without it a much finer one. */
export interface Grid {
  readonly system: System;
  /** False: not held to 1/16 in or 1 mm. */
  readonly snaps: boolean;
  /** On no grid at all: for what was typed. */
  readonly exact?: boolean;
}

/** 1/16 in or 1 mm; without snapping 1/64 in or 0.1 mm. */
export function step_m({ system, snaps }: Grid): number {
  if (system === 'us') return toSI(1, 'in') / (snaps ? 16 : 64);
  return snaps ? 0.001 : 0.0001;
}

/** How far a big step goes: 1 in or 10 mm. */
export function bigStep_m(system: System): number {
  return system === 'us' ? toSI(1, 'in') : 0.01;
}

/** The nearest line of the grid. Throws RangeError on a value that is not finite. */
export function snapped_m(value_m: number, grid: Grid): number {
  if (!Number.isFinite(value_m)) throw new RangeError(`value_m is ${value_m}; allowed: a finite number`);
  if (grid.exact === true) return value_m;
  const step = step_m(grid);
  return Math.round(value_m / step) * step + 0;
}

/**
 * A length as text that reads back to within 0.02 mm: sixteenths or whole millimetres where it lies on them, else 64ths, else
 * thousandths of an inch or hundredths of a millimetre. Example: lengthWords(0.6477, 'us') is "25 1/2 in".
 */
export function lengthWords(length_m: number, system: System): string {
  if (system === 'metric') {
    const mm = fromSI(length_m, 'mm');
    const decimals = near(mm, 1) ? 0 : near(mm, 10) ? 1 : 2;
    return formatLength(length_m, 'metric', { decimals });
  }
  const inches = fromSI(length_m, 'in');
  if (near(inches, 16)) return formatLength(length_m, 'us');
  if (near(inches, 64)) return formatLength(length_m, 'us', { fraction: 64 });
  return formatLength(length_m, 'us', { decimals: 3 });
}

function near(value: number, parts: number): boolean {
  return Math.abs(value * parts - Math.round(value * parts)) < 1e-6 * parts;
}
