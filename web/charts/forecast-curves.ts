/** The lines of a forecast: the film, and each cup as if it were left standing, until it gels or gets dangerous. */
import type { CoatPlan, CupForecast } from '#core/pour/plan.ts';
import type { CureHistory } from '#core/resin/model.ts';
import { CUP_CRITERIA } from '#core/resin/stage-criteria.ts';
import { type CurvePoint, curveOf, readingAt, type Series } from './curve.ts';

/** A cup is to be poured out now at the first, and is dangerous at the second. */
export const POUR_NOW_K = CUP_CRITERIA.pourNow.temperature_K;
export const DANGER_K = CUP_CRITERIA.danger.temperature_K;

export interface ForecastCurve {
  readonly key: string;
  readonly name: string;
  readonly film: boolean;
  /** null for the film. */
  readonly cup: number | null;
  readonly swatch: string | null;
  readonly history: CureHistory;
  readonly start_s: number;
  readonly end_s: number;
  readonly ends: 'gel' | 'danger' | 'open';
  readonly viscosity: readonly CurvePoint[];
  readonly temperature: readonly CurvePoint[];
}

export function forecastCurves(plan: CoatPlan, end_s: number): ForecastCurve[] {
  const gel = finite(plan.stages.find((s) => s.key === 'gel')?.at?.mid_s);
  const film = curve({
    key: 'film',
    name: 'film on the piece',
    film: true,
    cup: null,
    swatch: null,
    history: plan.film,
    start_s: finite(plan.filmStart_s) ?? 0,
    end_s: Math.min(end_s, gel ?? end_s),
    ends: gel !== null && gel <= end_s ? 'gel' : 'open',
  });
  return [film, ...plan.cupForecasts.map((cup) => cupCurve(cup, end_s))];
}

function cupCurve(cup: CupForecast, end_s: number): ForecastCurve {
  const danger = finite(cup.danger?.mid_s);
  const gel = finite(cup.gel?.mid_s);
  const first = Math.min(danger ?? Infinity, gel ?? Infinity, end_s);
  return curve({
    key: `cup ${cup.number}`,
    name: `cup ${cup.number}`,
    film: false,
    cup: cup.number,
    swatch: cup.swatch,
    history: cup.history,
    start_s: finite(cup.mixed_s) ?? 0,
    end_s: first,
    ends: first === danger ? 'danger' : first === gel ? 'gel' : 'open',
  });
}

function curve(c: Omit<ForecastCurve, 'viscosity' | 'temperature'>): ForecastCurve {
  return {
    ...c,
    viscosity: curveOf(c.history, 'viscosity_Pa_s', c.start_s, c.end_s),
    temperature: curveOf(c.history, 'temperature_K', c.start_s, c.end_s),
  };
}

/** Lowest and highest viscosity to draw, Pa s: all lines, at least a decade, within 0.001 to 1000. */
export function viscosityDomain(curves: readonly ForecastCurve[]): readonly [number, number] {
  let low = Infinity;
  let high = 0;
  for (const { viscosity } of curves)
    for (const { value } of viscosity) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
  if (!(low < Infinity)) return [0.1, 10];
  low = Math.min(30, Math.max(0.001, low / 1.35));
  high = Math.min(1000, Math.max(high * 1.35, low * 14));
  return [low, high];
}

/** Lowest and highest temperature to draw, K: all lines and the danger line, cut at 80 C. */
export function temperatureDomain(curves: readonly ForecastCurve[]): readonly [number, number] {
  let low = 290;
  let high = DANGER_K + 7;
  for (const { temperature } of curves)
    for (const { value } of temperature) {
      low = Math.min(low, value - 1);
      high = Math.max(high, value + 2);
    }
  return [Math.max(250, low), Math.min(353, high)];
}

/** What a line reads at a time on the plan's clock; null where it is not drawn. */
export function readingOf(c: ForecastCurve, series: Series, at_s: number): number | null {
  const inside = at_s >= c.start_s && at_s <= c.end_s;
  return inside ? readingAt(c.history, series, at_s - c.start_s) : null;
}

/** "1.9 Pa s": two digits. */
export function viscosityText(viscosity_Pa_s: number): string {
  if (viscosity_Pa_s >= 1000) return 'over 1000 Pa s';
  const digits = viscosity_Pa_s >= 10 ? 0 : viscosity_Pa_s >= 1 ? 1 : 2;
  return `${viscosity_Pa_s.toFixed(digits)} Pa s`;
}

/** A tick that a maker can picture. Rough comparisons, from memory, at 20 C. */
export function thicknessWord(viscosity_Pa_s: number): string {
  const words: Record<string, string> = {
    '0.01': 'milk',
    '0.1': 'olive oil',
    '1': 'castor oil',
    '10': 'honey',
    '100': 'thick paste',
    '1000': 'putty',
  };
  return words[String(viscosity_Pa_s)] ?? '';
}

function finite(value: number | undefined): number | null {
  return value !== undefined && Number.isFinite(value) ? value : null;
}
