/** Times of day and dates on a chart, in the reader's own time zone, without Intl so that print and screen agree. */
import type { System } from '#core/quantity/units.ts';

const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** Epoch ms of a local ISO time such as 2026-03-04T09:30; null when it is no time. */
export function clockStart_ms(text: string | undefined): number | null {
  if (text === undefined || !/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}/.test(text)) return null;
  const at = new Date(text).getTime();
  return Number.isFinite(at) ? at : null;
}

/** "9:05 am" (US) or "09:05" (metric). */
export function timeOfDay(at_ms: number, system: System): string {
  const at = new Date(Math.round(at_ms / 60_000) * 60_000);
  const hour = at.getHours();
  const minute = String(at.getMinutes()).padStart(2, '0');
  if (system === 'metric') return `${String(hour).padStart(2, '0')}:${minute}`;
  return `${hour % 12 === 0 ? 12 : hour % 12}:${minute} ${hour < 12 ? 'am' : 'pm'}`;
}

/** "9 am" or "09:00", for the hours of a strip. */
export function hourOfDay(at_ms: number, system: System): string {
  const hour = new Date(at_ms).getHours();
  if (system === 'metric') return `${String(hour).padStart(2, '0')}:00`;
  if (hour === 0) return 'midnight';
  return hour === 12 ? 'noon' : `${hour % 12} ${hour < 12 ? 'am' : 'pm'}`;
}

/** "Wed 4 Mar" (metric) or "Wed Mar 4" (US). */
export function dayText(at_ms: number, system: System): string {
  const at = new Date(at_ms);
  const day = DAYS[at.getDay()]!;
  const month = MONTHS[at.getMonth()]!;
  return system === 'metric' ? `${day} ${at.getDate()} ${month}` : `${day} ${month} ${at.getDate()}`;
}

/** "Wed Mar 4, 9:30 am". */
export function dayAndTime(at_ms: number, system: System): string {
  return `${dayText(at_ms, system)}, ${timeOfDay(at_ms, system)}`;
}

/** Local midnights and the hours between them, every `everyHours` (a divisor of 24), from..to. Follows summer time. */
export function hourMarks(
  from_ms: number,
  to_ms: number,
  everyHours: number,
): { at_ms: number; midnight: boolean }[] {
  if (
    !(
      Number.isFinite(from_ms) &&
      Number.isFinite(to_ms) &&
      from_ms <= to_ms &&
      to_ms - from_ms <= 400 * 86_400_000
    )
  )
    throw new RangeError(`hourMarks: ${from_ms} to ${to_ms}; allowed: finite, in order, up to 400 days`);
  if (!(Number.isInteger(everyHours) && everyHours > 0 && 24 % everyHours === 0))
    throw new RangeError(`hourMarks: everyHours is ${everyHours}; allowed: 1, 2, 3, 4, 6, 8, 12, 24`);
  const marks: { at_ms: number; midnight: boolean }[] = [];
  const first = new Date(from_ms);
  for (let day = 0; ; day += 1) {
    for (let hour = 0; hour < 24; hour += everyHours) {
      const at = new Date(first.getFullYear(), first.getMonth(), first.getDate() + day, hour).getTime();
      if (at > to_ms) return marks;
      // An hour that summer time skips is read as the next one; it is marked once.
      if (at >= from_ms && at !== marks.at(-1)?.at_ms) marks.push({ at_ms: at, midnight: hour === 0 });
    }
  }
}
