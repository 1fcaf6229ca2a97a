/** Lines of a cure history on a chart: readings at a minute, and as few points as the eye needs. */
import type { CureHistory } from '#core/resin/model.ts';

export interface CurvePoint {
  readonly time_s: number;
  readonly value: number;
}

export type Series = 'viscosity_Pa_s' | 'temperature_K';

/**
 * The series of a history on the plan's clock (shifted by `shift_s`) from its start to `until_s`, both ends
 * interpolated. Points that are not finite and above 0 are left out: past gel there is no viscosity.
 */
export function curveOf(
  history: CureHistory,
  series: Series,
  shift_s: number,
  until_s: number,
): CurvePoint[] {
  const times = history.time_s;
  const points: CurvePoint[] = [];
  for (let i = 0; i < times.length; i += 1) {
    const time_s = times[i]! + shift_s;
    if (!(time_s <= until_s)) break;
    const value = history[series][i] ?? Number.NaN;
    if (usable(time_s, value, series)) points.push({ time_s, value });
  }
  const end = readingAt(history, series, until_s - shift_s);
  if (end !== null && points.length > 0 && points.at(-1)!.time_s < until_s)
    points.push({ time_s: until_s, value: end });
  return points;
}

/**
 * Reading at a time on the history's own clock: straight between steps, on the logarithm for a viscosity. null before
 * its start, after its end, or where the history has no usable figure.
 */
export function readingAt(history: CureHistory, series: Series, time_s: number): number | null {
  const times = history.time_s;
  const n = times.length;
  if (n === 0 || !(time_s >= times[0]! && time_s <= times[n - 1]!)) return null;
  let low = 0;
  let high = n - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (times[middle]! <= time_s) low = middle;
    else high = middle;
  }
  const a = history[series][low] ?? Number.NaN;
  const b = history[series][high] ?? Number.NaN;
  if (!usable(times[low]!, a, series) || !usable(times[high]!, b, series)) return null;
  const step = times[high]! - times[low]!;
  const f = step > 0 ? (time_s - times[low]!) / step : 0;
  return series === 'viscosity_Pa_s' ? a * (b / a) ** f : a + (b - a) * f;
}

function usable(time_s: number, value: number, series: Series): boolean {
  return Number.isFinite(time_s) && value > 0 && value < (series === 'temperature_K' ? 5000 : Infinity);
}

/** First time on the plan's clock at which the series reaches `level` going up; null when it does not. */
export function reaches(points: readonly CurvePoint[], level: number): number | null {
  return points.find((p) => p.value >= level)?.time_s ?? null;
}

/** SVG path data through points in pixels, thinned to those at least `apart` px from the last kept; ends are kept. */
export function pathData(points: readonly { readonly x: number; readonly y: number }[], apart = 1): string {
  const kept: string[] = [];
  let lastX = Number.NEGATIVE_INFINITY;
  let lastY = Number.NEGATIVE_INFINITY;
  points.forEach(({ x, y }, i) => {
    const end = i === points.length - 1;
    if (!end && Math.abs(x - lastX) < apart && Math.abs(y - lastY) < apart) return;
    kept.push(`${kept.length === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`);
    lastX = x;
    lastY = y;
  });
  return kept.join('');
}

/** A pixel to a tenth, as text. */
export function px(value: number): string {
  return String(Math.round(value * 10) / 10 + 0);
}
