/**
 * Local time of a shop as an instant, by the rules of its IANA time zone as the runtime knows them. A local time that does not
 * occur because the clocks go forward is read with the offset before the gap, and one that occurs twice is its first occurrence
 * (RFC 5545, section 3.3.5).
 */
import { civilDays, localMinutes } from '../local-time.ts';

const MINUTE_ms = 60_000;
const DAY_ms = 86_400_000;

/** Whether the runtime knows the zone. */
export function isTimeZone(zone: string): boolean {
  try {
    formatFor(zone);
    return true;
  } catch {
    return false;
  }
}

/**
 * The instant of a local time like "2026-05-14T09:00", ms since 1970-01-01T00:00Z; null for a text that is no local time.
 *
 * @throws RangeError for a zone the runtime does not know.
 */
export function instantOf(local: string, zone: string): number | null {
  const minutes = localMinutes(local);
  const format = formatFor(zone);
  if (minutes === null) return null;
  // as if the shop stood in Greenwich; a day earlier and later lie safely on either side of a change of the clocks
  const wall_ms = minutes * MINUTE_ms;
  const before_ms = offset_ms(format, wall_ms - DAY_ms);
  const after_ms = offset_ms(format, wall_ms + DAY_ms);
  const first_ms = wall_ms - before_ms;
  if (offset_ms(format, first_ms) === before_ms) return first_ms;
  const second_ms = wall_ms - after_ms;
  return offset_ms(format, second_ms) === after_ms ? second_ms : first_ms;
}

function formatFor(timeZone: string): Intl.DateTimeFormat {
  try {
    return new Intl.DateTimeFormat('en-GB', {
      timeZone,
      calendar: 'gregory',
      numberingSystem: 'latn',
      hourCycle: 'h23',
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      second: '2-digit',
    });
  } catch {
    throw new RangeError(`zone is "${timeZone}"; allowed: a name of the IANA data base, as America/Chicago`);
  }
}

/** How far the clocks of the zone are ahead of Greenwich at an instant on a whole minute. */
function offset_ms(format: Intl.DateTimeFormat, instant_ms: number): number {
  const { year, month, day, hour, minute, second } = wallAt(format, instant_ms);
  const wall_s =
    civilDays(Number(year), Number(month), Number(day)) * 86_400 +
    Number(hour) * 3600 +
    Number(minute) * 60 +
    Number(second);
  return 1000 * wall_s - instant_ms;
}

type Wall = Record<'year' | 'month' | 'day' | 'hour' | 'minute' | 'second', string>;

function wallAt(format: Intl.DateTimeFormat, instant_ms: number): Wall {
  return Object.fromEntries(
    format.formatToParts(instant_ms).map(({ type, value }) => [type, value]),
  ) as unknown as Wall;
}

/** An instant as ISO 8601 in UTC to the second, "2026-05-14T14:00:00Z". */
export function utcText(instant_ms: number): string {
  const { year, month, day, hour, minute, second } = wallAt(formatFor('UTC'), instant_ms);
  return `${year.padStart(4, '0')}-${month}-${day}T${hour}:${minute}:${second}Z`;
}
