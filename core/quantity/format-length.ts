/** Lengths for people: inches in reduced fractions, or millimetres. */

import { fixed, roundTo, settle } from './rounding.ts';
import { fromSI, type System } from './units.ts';

export interface LengthStyle {
  /** Parts of an inch to round to; 16 when left out. */
  readonly fraction?: 2 | 4 | 8 | 16 | 32 | 64 | undefined;
  /** Decimals instead of fractions (inches) or instead of whole millimetres; 0 to 12. */
  readonly decimals?: number | undefined;
  /** Feet and inches from 1 ft on. */
  readonly feet?: boolean | undefined;
}

/** Whole inches and a reduced fraction: 12.5 in in 16ths is "12 1/2". Not negative. */
function mixed(parts: number, fraction: number): string {
  const whole = Math.floor(parts / fraction);
  let above = parts - whole * fraction;
  let below = fraction;
  while (above > 0 && above % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  if (above === 0) return String(whole);
  return whole === 0 ? `${above}/${below}` : `${whole} ${above}/${below}`;
}

/**
 * A length in metres as "25 1/2 in" (nearest 1/16 unless another fraction is asked) or "648 mm"; rounded half
 * away from zero. Example: formatLength(0.6477, 'us', { feet: true }) is "2 ft 1 1/2 in". Throws RangeError
 * unless -1e10 to 1e10 m.
 */
export function formatLength(length_m: number, system: System, style: LengthStyle = {}): string {
  if (!(Math.abs(length_m) <= 1e10)) throw new RangeError(`length_m is ${length_m}; allowed: -1e10 to 1e10`);
  if (system === 'metric') return `${fixed(fromSI(length_m, 'mm'), style.decimals ?? 0)} mm`;
  const inches = settle(fromSI(length_m, 'in'));
  if (style.decimals !== undefined && style.feet !== true) return `${fixed(inches, style.decimals)} in`;
  const fraction = style.fraction ?? 16;
  const scale = style.decimals === undefined ? fraction : 10 ** style.decimals;
  const parts = roundTo(Math.abs(inches) * scale, 0);
  const sign = inches < 0 && parts > 0 ? '-' : '';
  const say = (n: number) =>
    style.decimals === undefined ? mixed(n, scale) : fixed(n / scale, style.decimals);
  const feet = style.feet === true ? Math.floor(parts / (12 * scale)) : 0;
  const rest = parts - feet * 12 * scale;
  if (feet === 0) return `${sign}${say(rest)} in`;
  return rest === 0 ? `${sign}${feet} ft` : `${sign}${feet} ft ${say(rest)} in`;
}
