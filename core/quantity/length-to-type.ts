/** A computed length as the text a document holds: as a person would type it, and no less exact than it was. */

import { formatLength } from './format-length.ts';
import { trimmed } from './rounding.ts';
import { fromSI, type System } from './units.ts';

/** A hundredth of a micrometre in inches: what lies this near a 64th is that 64th. */
const ON_IT_IN = 4e-7;

/**
 * "25 1/2 in" where the length lies on 64ths, else "25.4961 in" or "647.6 mm"; reads back to within 0.0013 mm.
 * Throws RangeError unless -1e10 to 1e10 m.
 */
export function lengthToType(length_m: number, system: System): string {
  if (!(Math.abs(length_m) <= 1e10)) throw new RangeError(`length_m is ${length_m}; allowed: -1e10 to 1e10`);
  if (system === 'metric') return `${trimmed(fromSI(length_m, 'mm'), 3)} mm`;
  const inches = fromSI(length_m, 'in');
  if (Math.abs(inches * 64 - Math.round(inches * 64)) < 64 * ON_IT_IN)
    return formatLength(length_m, 'us', { fraction: 64 });
  return `${trimmed(inches, 4)} in`;
}
