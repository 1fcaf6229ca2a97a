/** Local dates and times as text, without a clock: which there are, and how far apart two are. */

const DAY = /^(\d{4})-(\d{2})-(\d{2})$/;
const MOMENT = /^(\d{4}-\d{2}-\d{2})T(\d{2}):(\d{2})$/;

export const FIRST_YEAR = 2000;
export const LAST_YEAR = 2199;

const leap = (year: number) => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

function daysIn(year: number, month: number): number {
  if (month === 2) return leap(year) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/** Days since 1 January 2000 of a day written 2026-05-30; null where there is no such day from 2000 to 2199. */
export function dayNumber(text: string): number | null {
  const [year, month, day] = (DAY.exec(text) ?? []).slice(1).map(Number);
  if (year === undefined || month === undefined || day === undefined) return null;
  if (year < FIRST_YEAR || year > LAST_YEAR || month < 1 || month > 12) return null;
  if (day < 1 || day > daysIn(year, month)) return null;
  let days = day - 1;
  for (let past = FIRST_YEAR; past < year; past++) days += leap(past) ? 366 : 365;
  for (let past = 1; past < month; past++) days += daysIn(year, past);
  return days;
}

/**
 * Seconds of local time since the start of 2000 of a moment written 2026-05-14T09:00; null where there is none. Two of them may be
 * subtracted; a change to or from summer time between them is not counted, an hour at most.
 */
export function moment_s(text: string): number | null {
  const [, day = '', hour = '', minute = ''] = MOMENT.exec(text) ?? [];
  const days = dayNumber(day);
  if (days === null || Number(hour) > 23 || Number(minute) > 59) return null;
  return days * 86_400 + Number(hour) * 3600 + Number(minute) * 60;
}
