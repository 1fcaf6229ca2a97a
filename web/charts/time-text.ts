/** Spans of time as a maker says them: "9 to 14 min", "closes 18 (16 to 22)", "3 h 10", "2.5 d". */
import type { TimeRange } from '#core/resin/model.ts';

/** Minutes to the half minute under ten, else whole: "2.5", "14", "1 h 25". A value that is no number reads "?". */
export function minutesText(time_s: number): string {
  if (!Number.isFinite(time_s)) return '?';
  const minutes = time_s / 60;
  if (Math.abs(minutes) < 9.75) return String(Math.round(minutes * 2) / 2 + 0);
  const whole = Math.round(minutes);
  if (whole < 120) return String(whole);
  return `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')}`;
}

/** "14 min", "2 h 25": minutesText with its unit. */
export function minutesWithUnit(time_s: number): string {
  const text = minutesText(time_s);
  return text.includes('h') ? text : `${text} min`;
}

/** "9 to 14 min"; "at 9 min" when both ends read the same. */
export function minutesSpan(from_s: number, to_s: number): string {
  const from = minutesText(from_s);
  const to = minutesText(to_s);
  if (from === to) return `at ${minutesWithUnit(to_s)}`;
  return from.includes('h') === to.includes('h')
    ? `${from} to ${minutesWithUnit(to_s)}`
    : `${minutesWithUnit(from_s)} to ${minutesWithUnit(to_s)}`;
}

/** "18 (16 to 22) min": the middle and the 5 to 95 % range. */
export function minutesRange(range: TimeRange): string {
  const mid = minutesText(range.mid_s);
  const low = minutesText(range.low_s);
  const high = minutesText(range.high_s);
  const unit = high.includes('h') ? '' : ' min';
  return low === high ? minutesWithUnit(range.mid_s) : `${mid} (${low} to ${high})${unit}`;
}

/** "40 min", "5.5 h", "36 h", "7 d", "4.5 d": minutes to two hours, hours to two days, then days. */
export function afterPourText(time_s: number): string {
  if (!Number.isFinite(time_s)) return '?';
  if (time_s < 7200) return `${Math.round(time_s / 60)} min`;
  if (time_s < 48 * 3600) return `${halves(time_s / 3600)} h`;
  return `${halves(time_s / 86_400)} d`;
}

/** "26 h (18 to 40 h)". */
export function afterPourRange(range: TimeRange): string {
  const mid = afterPourText(range.mid_s);
  const low = afterPourText(range.low_s);
  const high = afterPourText(range.high_s);
  if (low === high) return mid;
  const [lowFigure, lowUnit] = low.split(' ');
  const shortLow = lowUnit === high.split(' ')[1] ? lowFigure : low;
  return `${mid} (${shortLow} to ${high})`;
}

/** To a half under ten, else whole. */
function halves(value: number): string {
  return value < 9.75 ? String(Math.round(value * 2) / 2) : String(Math.round(value));
}
