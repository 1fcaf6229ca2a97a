/**
 * Domain check of a numeric argument.
 *
 * @throws RangeError naming the argument, its value and the allowed range.
 */
export function requireRange(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`${name} is ${value}; allowed ${low} to ${high}`);
  }
}

/** Same, for a strictly positive finite number. */
export function requirePositive(name: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value))) {
    throw new RangeError(`${name} is ${value}; it must be positive and finite`);
  }
}

/** Coldest and hottest body the model answers for, K (-50 to 600 C; above about 180 C it is a warning, not a prediction). */
export const COLDEST_K = 223.15;
export const HOTTEST_K = 873.15;
