/** Where an axis is marked: round numbers, decades, minutes, and times after a pour. */

/**
 * Round values (1, 2 or 5 times a power of ten) from low to high, both ends included where they are round; at most
 * `most` of them. Throws RangeError unless low < high, both finite, and most is 2 or more.
 */
export function niceTicks(low: number, high: number, most: number): number[] {
  needRange('niceTicks', low, high, most);
  const rough = (high - low) / (most - 1);
  const power = 10 ** Math.floor(Math.log10(rough));
  for (const times of [1, 2, 5, 10, 20]) {
    const ticks = multiples(low, high, times * power);
    if (ticks.length <= most) return ticks;
  }
  return multiples(low, high, 50 * power);
}

/** Minutes after the pour, in steps a clock face knows. Same domain as niceTicks; steps 1, 2, 5, 10, 15, 20, 30, 60 ... min. */
export function minuteTicks(low: number, high: number, most: number): number[] {
  needRange('minuteTicks', low, high, most);
  for (const step of [1, 2, 5, 10, 15, 20, 30, 60, 120, 180, 240, 360, 720, 1440]) {
    const ticks = multiples(low, high, step);
    if (ticks.length <= most) return ticks;
  }
  return niceTicks(low, high, most);
}

export interface LogTick {
  readonly value: number;
  /** A power of ten: long mark and figure. */
  readonly major: boolean;
}

/** Every 1 to 9 of each decade inside low..high. Throws RangeError unless 0 < low < high, both finite. */
export function logTicks(low: number, high: number): LogTick[] {
  needRange('logTicks', low, high, 2);
  if (!(low > 0)) throw new RangeError(`logTicks: low is ${low}; allowed: more than 0`);
  const ticks: LogTick[] = [];
  const first = Math.floor(Math.log10(low) + 1e-9);
  const last = Math.ceil(Math.log10(high) - 1e-9);
  for (let decade = first; decade <= last; decade += 1) {
    for (let times = 1; times <= 9; times += 1) {
      // A negative power as a quotient: 10 ** -3 times 3 is not quite 0.003.
      const value = decade < 0 ? times / 10 ** -decade : times * 10 ** decade;
      if (value >= low * (1 - 1e-9) && value <= high * (1 + 1e-9)) ticks.push({ value, major: times === 1 });
    }
  }
  return ticks;
}

const HOUR_S = 3600;
const DAY_S = 24 * HOUR_S;

/** Times a maker says after a pour: 1 h, 2 h ... 12 h, 1 d, 2 d ... 28 d, inside low_s..high_s. */
export function afterPourTicks(
  low_s: number,
  high_s: number,
): { readonly at_s: number; readonly text: string }[] {
  needRange('afterPourTicks', low_s, high_s, 2);
  const hours = [1, 2, 4, 8, 12].map((n) => ({ at_s: n * HOUR_S, text: `${n} h` }));
  const days = [1, 2, 4, 7, 14, 28, 56].map((n) => ({ at_s: n * DAY_S, text: `${n} d` }));
  const minutes = [10, 30].map((n) => ({ at_s: n * 60, text: `${n} min` }));
  return [...minutes, ...hours, ...days].filter((t) => t.at_s >= low_s && t.at_s <= high_s);
}

/** Every other one is dropped until neighbours are at least `apart` px away from each other. */
export function thinned<T>(ticks: readonly T[], at: (tick: T) => number, apart: number): T[] {
  const kept: T[] = [];
  for (const tick of ticks) {
    const last = kept.at(-1);
    if (last === undefined || Math.abs(at(tick) - at(last)) >= apart) kept.push(tick);
  }
  return kept;
}

function multiples(low: number, high: number, step: number): number[] {
  const ticks: number[] = [];
  const slack = step * 1e-9;
  const first = Math.ceil((low - slack) / step);
  const last = Math.floor((high + slack) / step);
  // Past a thousand marks nobody is reading; the caller asks again with a longer step.
  for (let n = first; n <= last && ticks.length <= 1000; n += 1)
    ticks.push(Number((n * step).toPrecision(12)) + 0);
  return ticks;
}

function needRange(name: string, low: number, high: number, most: number): void {
  if (!(Number.isFinite(low) && Number.isFinite(high) && low < high))
    throw new RangeError(`${name}: ${low} to ${high}; allowed: finite, low below high`);
  if (!(most >= 2)) throw new RangeError(`${name}: most is ${most}; allowed: 2 or more`);
}
