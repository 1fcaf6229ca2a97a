/** Durations for people. */

import { roundToStep } from './rounding.ts';

const minute = 60;
const hour = 3600;
const day = 86400;

/** The step a duration is rounded to: the longer it is, the coarser. */
function stepFor(time_s: number): number {
  if (time_s < 2 * minute) return 1;
  if (time_s < 10 * minute) return 10;
  if (time_s < 12 * hour) return minute;
  if (time_s < 2 * day) return 5 * minute;
  if (time_s < 7 * day) return hour;
  return day / 2;
}

function pair(first: number, firstUnit: string, second: number, secondUnit: string): string {
  return second === 0 ? `${first} ${firstUnit}` : `${first} ${firstUnit} ${second} ${secondUnit}`;
}

/**
 * A duration in seconds as "90 s", "2 min 30 s", "18 min", "5 h 20 min", "3 d", "3 d 4 h". Rounded half away
 * from zero to a second below 2 min, 10 s below 10 min, a minute below 12 h, 5 min below 2 d, an hour below a
 * week, half a day above. Negative durations carry a minus. Throws RangeError unless -1e12 to 1e12.
 */
export function formatDuration(time_s: number): string {
  if (!(Math.abs(time_s) <= 1e12)) throw new RangeError(`time_s is ${time_s}; allowed: -1e12 to 1e12`);
  const length = Math.abs(time_s);
  const rounded = roundToStep(length, stepFor(length));
  const sign = time_s < 0 && rounded > 0 ? '-' : '';
  if (rounded < 2 * minute) return `${sign}${rounded} s`;
  if (rounded < hour) return sign + pair(Math.floor(rounded / minute), 'min', rounded % minute, 's');
  if (rounded < 2 * day)
    return sign + pair(Math.floor(rounded / hour), 'h', (rounded % hour) / minute, 'min');
  return sign + pair(Math.floor(rounded / day), 'd', (rounded % day) / hour, 'h');
}
