/** Days and times of day as said in each system. Documents keep local dates (`2026-05-30`) and times (`2026-05-14T09:00`). */
import type { System } from '#core/quantity/units.ts';

const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** Milliseconds since 1970 of a local date or date and time, or null when the text is neither. */
export function localTime_ms(text: string): number | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2}))?$/.exec(text);
  if (match === null) return null;
  const [, year, month, day, hour = '0', minute = '0'] = match;
  const date = new Date(Number(year), Number(month) - 1, Number(day), Number(hour), Number(minute));
  return date.getMonth() === Number(month) - 1 ? date.getTime() : null;
}

/** "Sat 30 May" or "Sat May 30"; with the year when it is not this one. */
export function dayText(at: string | number, system: System, thisYear = new Date().getFullYear()): string {
  const ms = typeof at === 'number' ? at : localTime_ms(at);
  if (ms === null) return String(at);
  const date = new Date(ms);
  const month = MONTHS[date.getMonth()]!;
  const day = system === 'us' ? `${month} ${date.getDate()}` : `${date.getDate()} ${month}`;
  return `${DAYS[date.getDay()]!} ${day}${date.getFullYear() === thisYear ? '' : ` ${date.getFullYear()}`}`;
}

/** "9:05 am" or "09:05", to the nearest minute. */
export function clockText(at_ms: number, system: System): string {
  const date = new Date(Math.round(at_ms / 60_000) * 60_000);
  const minutes = String(date.getMinutes()).padStart(2, '0');
  if (system === 'metric') return `${String(date.getHours()).padStart(2, '0')}:${minutes}`;
  return `${date.getHours() % 12 || 12}:${minutes} ${date.getHours() < 12 ? 'am' : 'pm'}`;
}

/** "Thu May 14, 9:00 am". */
export function dayAndClock(at_ms: number, system: System): string {
  return `${dayText(at_ms, system)}, ${clockText(at_ms, system)}`;
}

/** Minutes and seconds on the pour's own clock: "4:30", "1:04:30". Negative before the first mix. */
export function pourClock(time_s: number): string {
  const total = Math.round(Math.abs(time_s));
  const sign = time_s < 0 && total > 0 ? '-' : '';
  const hours = Math.floor(total / 3600);
  const minutes = Math.floor((total % 3600) / 60);
  const seconds = String(total % 60).padStart(2, '0');
  return hours === 0
    ? `${sign}${minutes}:${seconds}`
    : `${sign}${hours}:${String(minutes).padStart(2, '0')}:${seconds}`;
}
