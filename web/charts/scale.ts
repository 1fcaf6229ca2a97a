/** Scales from data to pixels and back. Plain functions; a scale never answers NaN or Infinity. */

export interface Scale {
  /** Pixel of a value; values outside the domain are held at its ends. */
  readonly at: (value: number) => number;
  /** Value at a pixel, held inside the domain. */
  readonly value: (pixel: number) => number;
  readonly low: number;
  readonly high: number;
}

/**
 * Straight scale. `from` and `to` are the pixels of `low` and `high`, either way round.
 * Throws RangeError unless all four are finite and high > low.
 */
export function linearScale(low: number, high: number, from: number, to: number): Scale {
  need(low, high, from, to);
  const perUnit = (to - from) / (high - low);
  return {
    low,
    high,
    at: (value) => from + (within(value, low, high) - low) * perUnit,
    value: (pixel) => (perUnit === 0 ? low : within(low + (pixel - from) / perUnit, low, high)),
  };
}

/** Logarithmic scale. Throws RangeError as linearScale does, and unless low > 0. */
export function logScale(low: number, high: number, from: number, to: number): Scale {
  need(low, high, from, to);
  if (!(low > 0)) throw new RangeError(`logScale: low is ${low}; allowed: more than 0`);
  const straight = linearScale(Math.log(low), Math.log(high), from, to);
  return {
    low,
    high,
    at: (value) => straight.at(Math.log(within(value, low, high))),
    value: (pixel) => within(Math.exp(straight.value(pixel)), low, high),
  };
}

/** The value held between low and high; a value that is no number becomes low. */
export function within(value: number, low: number, high: number): number {
  return value > low ? Math.min(value, high) : low;
}

function need(low: number, high: number, from: number, to: number): void {
  if (![low, high, from, to].every(Number.isFinite) || !(high > low))
    throw new RangeError(
      `scale: low ${low}, high ${high}, pixels ${from} to ${to}; allowed: finite, high above low`,
    );
}
