/**
 * May a coat be poured in this air, on this surface? Amine at a damp cool surface takes up water and carbon dioxide
 * before it can react and leaves a greasy film (blush) that the next coat does not stick to (O'Malley, Simser and Pravlik 2005, AMPP
 * 41205-190, read in its abstract). The 3 K rule is that of ISO 8502-4 and ISO 12944-7, written for steel and read in summaries; the
 * humidity limits for clear coats are common practice, no source.
 */
import { dewPoint_K } from './dew-point.ts';

export const BLUSH_LIMITS = {
  /** Least height of the surface above the dew point, K, while pouring and until tack-free. */
  margin_K: 3,
  /** Humidity best for clear coats, share. */
  idealLow: 0.4,
  idealHigh: 0.65,
  /** Humidity above which to take care, share. */
  cautionAbove: 0.7,
  /** Humidity above which not to pour, share. */
  stopAbove: 0.85,
} as const;

export type BlushVerdict = 'go' | 'caution' | 'stop';

/** One thing the gate has to say; `value` and `limit` are K for the dew margin and shares for humidity. */
export interface BlushReason {
  readonly code: 'dew-margin' | 'humidity-stop' | 'humidity-high' | 'humidity-above-ideal' | 'humidity-dry';
  readonly level: BlushVerdict;
  readonly message: string;
  readonly value: number;
  readonly limit: number;
}

export interface BlushInput {
  readonly air_K: number;
  /** Temperature of the board or the film to be coated, K; measure it: a board from a cold night lags behind the air. */
  readonly surface_K: number;
  /** Share, 0.01 to 1. */
  readonly relativeHumidity: number;
}

export interface BlushAnswer {
  readonly verdict: BlushVerdict;
  readonly dewPoint_K: number;
  /** Surface above dew point, K. */
  readonly margin_K: number;
  /** Worst first; empty when all is within the ideal range. */
  readonly reasons: readonly BlushReason[];
}

const rank: Record<BlushVerdict, number> = { stop: 0, caution: 1, go: 2 };

/**
 * Surface against dew point and humidity against the limits: the worst reason decides. 'stop' below 3 K of margin or above 85 %;
 * 'caution' above 70 %; otherwise 'go', with a note outside 40 to 65 %.
 * Worked: air 16 C at 71 %, surface 13 C -> dew point 10.75 C, margin 2.25 K, stop.
 * @throws RangeError if a temperature is outside 228.15 to 333.15 K or the humidity outside 0.01 to 1.
 */
export function blushGate(input: BlushInput): BlushAnswer {
  const { air_K, surface_K, relativeHumidity } = input;
  const dew_K = dewPoint_K(air_K, relativeHumidity);
  if (!(surface_K >= 228.15 && surface_K <= 333.15))
    throw new RangeError(`surface_K = ${surface_K}: allowed 228.15 to 333.15 K`);
  const margin_K = surface_K - dew_K;
  const reasons: BlushReason[] = [];
  const add = (
    code: BlushReason['code'],
    level: BlushVerdict,
    value: number,
    limit: number,
    message: string,
  ): void => {
    reasons.push({ code, level, message, value, limit });
  };
  if (margin_K < BLUSH_LIMITS.margin_K)
    add(
      'dew-margin',
      'stop',
      margin_K,
      BLUSH_LIMITS.margin_K,
      'The surface is too close to the dew point: warm the board or dry the air, and wait until it is tack-free before letting either go.',
    );
  const rh = relativeHumidity;
  if (rh > BLUSH_LIMITS.stopAbove)
    add('humidity-stop', 'stop', rh, BLUSH_LIMITS.stopAbove, 'The air is too damp to pour in.');
  else if (rh > BLUSH_LIMITS.cautionAbove)
    add(
      'humidity-high',
      'caution',
      rh,
      BLUSH_LIMITS.cautionAbove,
      'Damp air: blush is likely on amine-cured resin; dry the air, and wash and abrade before the next coat.',
    );
  else if (rh > BLUSH_LIMITS.idealHigh)
    add(
      'humidity-above-ideal',
      'go',
      rh,
      BLUSH_LIMITS.idealHigh,
      'Air a little damper than is best for a clear coat.',
    );
  else if (rh < BLUSH_LIMITS.idealLow)
    add('humidity-dry', 'go', rh, BLUSH_LIMITS.idealLow, 'Dry air: fine for the resin, but dust clings.');
  reasons.sort((a, b) => rank[a.level] - rank[b.level]);
  return { verdict: reasons[0]?.level ?? 'go', dewPoint_K: dew_K, margin_K, reasons };
}
