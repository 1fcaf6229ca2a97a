/**
 * What colourant does to a mix beside its colour. Its carrier takes no part in the reaction: it softens the cured resin (Fox 1956,
 * Bull. Am. Phys. Soc. 1, 123: 1/Tg = w1/Tg1 + w2/Tg2; from memory) and thins out the heat. Estimates for deciding, not for
 * promising: a carrier made for epoxy may react after all, and a moist powder does more than either.
 */

import { within } from '#core/quantity/domain.ts';
import { formatTemperatureDifference } from '#core/quantity/format.ts';
import { trimmed } from '#core/quantity/rounding.ts';
import type { System } from '#core/quantity/units.ts';
import type { ColourantKind } from './coat.ts';
import { COLOURANT_LIMITS, TOTAL_COLOURANT_LIMIT } from './colourant-limits.ts';

/** Share of a colourant that is liquid carrier: common practice, no source. Alcohol mostly leaves, a tenth is taken to stay. */
export const CARRIER: Readonly<Record<ColourantKind, number>> = {
  none: 0,
  'pigment paste': 0.5,
  'mica powder': 0,
  'dry pigment': 0,
  'liquid dye': 1,
  'alcohol ink': 0.1,
};
/** Glass transition of a usual carrier, K (from memory). */
const CARRIER_TG_K = 213;

export interface LoadEffect {
  /** Most of this kind, and of everything together, by mass of A + B. */
  readonly limit: number;
  /** Fall of the final glass transition, K, 0 or more. */
  readonly softer_K: number;
  /** Share of the heat of the reaction that is missing. */
  readonly lessHeat: number;
  readonly over: boolean;
  /** For the screen, one sentence each. */
  readonly says: readonly string[];
}

/**
 * @param load mass of colourant per mass of A + B, 0 to 0.5 @param finalTg_K of the resin without it, 250 to 450 K
 * @throws RangeError outside these.
 *
 * 6 % of a paste in a resin of 330 K: 5.2 K softer, 5.7 % less heat.
 */
export function loadEffect(
  kind: ColourantKind,
  load: number,
  finalTg_K: number,
  system: System = 'us',
): LoadEffect {
  within('load', load, 0, 0.5);
  within('finalTg_K', finalTg_K, 250, 450, 'K');
  const carrier = (CARRIER[kind] * load) / (1 + CARRIER[kind] * load);
  const softer_K = finalTg_K - 1 / ((1 - carrier) / finalTg_K + carrier / CARRIER_TG_K);
  const lessHeat = load / (1 + load);
  const limit = Math.min(COLOURANT_LIMITS[kind], TOTAL_COLOURANT_LIMIT);
  const over = load > limit + 1e-12;
  const says: string[] = [];
  if (load > 0 && softer_K >= 0.05)
    says.push(
      `Its carrier leaves the cured film softer: the glass transition falls by about ${formatTemperatureDifference(softer_K, system)}.`,
    );
  if (load > 0)
    says.push(
      `The mix gives ${trimmed(lessHeat * 100, 1)} % less heat for its mass; A and B keep their ratio to each other.`,
    );
  if (over)
    says.push(
      `More than ${trimmed(limit * 100, 1)} % of ${kind} (all colourants together: ${trimmed(TOTAL_COLOURANT_LIMIT * 100, 0)} %) may leave the film soft or tacky for good.`,
    );
  return { limit, softer_K, lessHeat, over, says };
}
