/** Film thickness as tone and as levels: light paper where it is thin, ink blue where it is thick. */
import { fromSI, type System, toSI } from '#core/quantity/units.ts';

export interface Scale {
  readonly low_m: number;
  readonly high_m: number;
  /** Thicknesses of the contour lines, round in the unit shown, rising. */
  readonly levels_m: readonly number[];
}

/** Steps of the ramp, sRGB: every channel falls all the way, so the order holds in grey and for every kind of colour sight. */
const STOPS: readonly (readonly [number, number, number])[] = [
  [250, 243, 224],
  [205, 217, 208],
  [143, 178, 189],
  [76, 124, 158],
  [22, 62, 105],
];

/** Tone of a share of the scale; below 0 and above 1 it stays at the ends. */
export function rampColour(share: number): readonly [number, number, number] {
  const along = Math.min(1, Math.max(0, share)) * (STOPS.length - 1);
  const i = Math.min(STOPS.length - 2, Math.floor(along));
  const part = along - i;
  const mix = (channel: 0 | 1 | 2): number =>
    Math.round(STOPS[i]![channel] + (STOPS[i + 1]![channel] - STOPS[i]![channel]) * part);
  return [mix(0), mix(1), mix(2)];
}

export function rampCss(share: number): string {
  return `rgb(${rampColour(share).join(' ')})`;
}

/** Where a thickness stands on a scale, 0 to 1. */
export function shareOf(scale: Scale, film_m: number): number {
  return Math.min(1, Math.max(0, (film_m - scale.low_m) / (scale.high_m - scale.low_m)));
}

/**
 * A scale over the films of a map, with about six round levels between its ends (mm, or mil in US units). A film that differs by less than
 * 1 % gets a scale 5 % wide about it, so that rounding is not drawn as a landscape.
 * @throws RangeError unless 0 <= low_m <= high_m, both finite.
 */
export function scaleOf(low_m: number, high_m: number, system: System): Scale {
  if (!(low_m >= 0 && high_m >= low_m && Number.isFinite(high_m)))
    throw new RangeError(`low_m = ${low_m}, high_m = ${high_m}: allowed 0 <= low <= high`);
  const flat = high_m - low_m < 0.01 * high_m || high_m === 0;
  const low = flat ? Math.max(0, low_m * 0.975) : low_m;
  const high = flat ? Math.max(high_m * 1.025, 1e-5) : high_m;
  const unit = system === 'us' ? 'mil' : 'mm';
  const [from, to] = [fromSI(low, unit), fromSI(high, unit)];
  const step = roundStep((to - from) / 6);
  const levels: number[] = [];
  for (let n = Math.floor(from / step) + 1; n * step < to * (1 - 1e-9); n++)
    levels.push(toSI(Number((n * step).toPrecision(12)), unit));
  return { low_m: low, high_m: high, levels_m: levels };
}

/** The next of 1, 2, 5, 10, ... from a step on. */
function roundStep(step: number): number {
  const ten = 10 ** Math.floor(Math.log10(step));
  return (([1, 2, 5, 10] as const).find((n) => n * ten >= step * (1 - 1e-9)) ?? 10) * ten;
}
