/** Rounding and printing of decimals: half away from zero, no exponent, no negative zero, no locale. */

const largest = 1e15;

function inDomain(value: number): number {
  if (!Number.isFinite(value) || Math.abs(value) > largest) {
    throw new RangeError(`value is ${value}; allowed: -1e15 to 1e15`);
  }
  return value + 0;
}

/**
 * The value with the last few bits of a unit conversion taken off (12 significant digits), so that
 * 25.499999999999996 in is 25.5. Throws RangeError outside -1e15 to 1e15.
 */
export function settle(value: number): number {
  return Number(inDomain(value).toPrecision(12)) + 0;
}

function shift(value: number, places: number): number {
  const [digits = '0', exponent = '0'] = String(value).split('e');
  return Number(`${digits}e${Number(exponent) + places}`);
}

/**
 * Rounds to a number of decimals (0 to 12; negative for tens, hundreds), half away from zero, by the decimal
 * digits a person sees: 1.005 to two decimals is 1.01. Never -0. Throws RangeError outside -1e15 to 1e15.
 */
export function roundTo(value: number, decimals: number): number {
  if (!Number.isInteger(decimals) || decimals < -15 || decimals > 12) {
    throw new RangeError(`decimals is ${decimals}; allowed: a whole number from -15 to 12`);
  }
  const settled = settle(value);
  const magnitude = shift(Math.round(shift(Math.abs(settled), decimals)), -decimals);
  return (settled < 0 ? -magnitude : magnitude) + 0;
}

/** Rounds to a multiple of a step (more than 0), half away from zero; never -0. */
export function roundToStep(value: number, step: number): number {
  if (!(step > 0) || !Number.isFinite(step)) throw new RangeError(`step is ${step}; allowed: more than 0`);
  const settled = settle(value);
  const magnitude = settle(Math.round(settle(Math.abs(settled) / step)) * step);
  return (settled < 0 ? -magnitude : magnitude) + 0;
}

/** Rounded and printed with exactly that many decimals (0 to 12): fixed(4, 1) is "4.0". */
export function fixed(value: number, decimals: number): string {
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > 12) {
    throw new RangeError(`decimals is ${decimals}; allowed: a whole number from 0 to 12`);
  }
  return roundTo(value, decimals).toFixed(decimals);
}

/** Rounded and printed with at most that many decimals, no zeros at the end: trimmed(25.5, 3) is "25.5". */
export function trimmed(value: number, decimals: number): string {
  const text = fixed(value, decimals);
  return text.includes('.') ? text.replace(/0+$/, '').replace(/\.$/, '') : text;
}

/**
 * The decimals that show a value with so many significant digits: 0 for 1234 with 3, 2 for 1.234 with 3. At
 * most 12.
 */
export function decimalsFor(value: number, significant: number): number {
  const settled = Math.abs(settle(value));
  if (settled === 0) return 0;
  return Math.min(12, significant - 1 - Math.floor(Math.log10(settled)));
}
