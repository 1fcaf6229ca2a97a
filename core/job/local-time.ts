/**
 * Local dates and times as people write them, "2026-05-14T09:00", told apart without a clock or a time zone: days are counted
 * in the Gregorian calendar. A change of the clocks between two times is not known here and shifts the span by its hour.
 */

const shape = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2})$/;

const isLeap = (year: number) => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

function daysIn(month: number, year: number): number {
  if (month === 2) return isLeap(year) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/**
 * Days from 1 January 1970 to a day of the Gregorian calendar; negative before. Throws RangeError unless the day exists and the
 * year is a whole number from 0 to 9999.
 *
 * Counted in years that begin in March, so that the leap day comes last: 365 days a year, one more every 4 years, less one every
 * 100, plus one every 400; the months from March on run 31, 30, 31, 30, 31 days over and over, which (153 m + 2) / 5 counts.
 * Example: civilDays(2026, 5, 14) is 20587.
 */
export function civilDays(year: number, month: number, day: number): number {
  if (!(Number.isInteger(year) && year >= 0 && year <= 9999))
    throw new RangeError(`year is ${year}; allowed: a whole number from 0 to 9999`);
  if (!(Number.isInteger(month) && month >= 1 && month <= 12))
    throw new RangeError(`month is ${month}; allowed: a whole number from 1 to 12`);
  if (!(Number.isInteger(day) && day >= 1 && day <= daysIn(month, year)))
    throw new RangeError(`day is ${day}; allowed: a whole number from 1 to ${daysIn(month, year)}`);
  const marchYear = month > 2 ? year : year - 1;
  const marchMonth = (month + 9) % 12;
  const leapDays = Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400);
  const dayOfYear = Math.floor((153 * marchMonth + 2) / 5) + day - 1;
  return 365 * marchYear + leapDays + dayOfYear - 719_468;
}

/** Minutes from 1970-01-01T00:00 on the same wall clock; null for a text that is no such time ("", "2026-02-30T09:00"). */
export function localMinutes(text: string): number | null {
  const found = shape.exec(text);
  if (found === null) return null;
  const [year, month, day, hour, minute] = found.slice(1).map(Number) as [
    number,
    number,
    number,
    number,
    number,
  ];
  if (month < 1 || month > 12 || day < 1 || day > daysIn(month, year) || hour > 23 || minute > 59)
    return null;
  return civilDays(year, month, day) * 1440 + hour * 60 + minute;
}

/** Seconds from one local time to another, negative when it is earlier; null unless both are times. */
export function secondsBetween(from: string, to: string): number | null {
  const [start, end] = [localMinutes(from), localMinutes(to)];
  return start === null || end === null ? null : (end - start) * 60;
}
