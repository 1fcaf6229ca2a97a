/** Times on the plan's clock, as a work order writes them. */
import { formatDuration } from '#core/quantity/format.ts';

const HOUR_s = 3600;
const TWO_DAYS_s = 172_800;

/** "12:30" (minutes and seconds) below an hour, "2 h 18" from an hour on, "3 d 4 h" from two days on; negative with a minus. */
export function clockText(time_s: number): string {
  const whole = Math.round(Math.abs(time_s));
  const sign = time_s < 0 && whole > 0 ? '-' : '';
  if (whole < HOUR_s) return `${sign}${Math.floor(whole / 60)}:${twoDigits(whole % 60)}`;
  const minutes = Math.round(whole / 60);
  if (minutes * 60 >= TWO_DAYS_s) return sign + formatDuration(whole);
  return `${sign}${Math.floor(minutes / 60)} h ${twoDigits(minutes % 60)}`;
}

/** Slack with its sign: "+5:10", "-0:40". */
export function signedText(time_s: number): string {
  return `${time_s < 0 ? '-' : '+'}${clockText(Math.abs(time_s))}`;
}

function twoDigits(value: number): string {
  return String(value).padStart(2, '0');
}
