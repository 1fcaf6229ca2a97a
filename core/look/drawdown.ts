/**
 * A drawdown: one film of known thickness over black and over white, read as internal reflectances; K and S follow in closed
 * form (Kubelka's hyperbolic solution over two general grounds). A film that hides gives K/S only, and says so.
 */
import type { Scatter } from './kubelka-munk.ts';

export interface Drawdown {
  readonly thickness_m: number;
  /** Bare card and film over it, internal reflectance 0 to 1. */
  readonly black: number;
  readonly white: number;
  readonly overBlack: number;
  readonly overWhite: number;
}

/** Read from the films, or why it cannot be. */
export type DrawdownReading =
  | { readonly kind: 'read'; readonly film: Scatter }
  | { readonly kind: 'hides' }
  | { readonly kind: 'no film fits' };

/**
 * K and S of the film, 1/m. `noise` is the error of one reading (0.015 for a phone's picture, from memory): where the films
 * over black and white differ by less than three of it, only K/S is known ("hides": ask for a thinner film or a tint).
 * RangeError when a reflectance is outside 0 to 1, the card is not blacker than white, or the film has no thickness.
 */
export function readDrawdown(drawdown: Drawdown, noise = 0): DrawdownReading {
  const { thickness_m, black: g1, white: g2, overBlack: r1, overWhite: r2 } = drawdown;
  for (const r of [g1, g2, r1, r2])
    if (!(r >= 0 && r <= 1)) throw new RangeError(`a reflectance of 0 to 1 is needed, not ${r}`);
  if (!(g2 > g1)) throw new RangeError('the white card must be brighter than the black one');
  if (!(thickness_m > 0 && Number.isFinite(thickness_m)))
    throw new RangeError(`a film thickness above 0 m is needed, not ${thickness_m}`);
  if (r2 - r1 < -3 * noise) return { kind: 'no film fits' };
  if (r2 - r1 <= 3 * noise) return { kind: 'hides' };
  const a =
    ((1 + r2 * g2) * (r1 - g1) - (1 + r1 * g1) * (r2 - g2)) / ((r2 + g2) * (r1 - g1) - (r1 + g1) * (r2 - g2));
  if (!(a > 1)) return { kind: 'no film fits' };
  const b = Math.sqrt((a - 1) * (a + 1));
  // The ground that the film changes more is the better conditioned.
  const [r, g] = Math.abs(r1 - g1) > Math.abs(r2 - g2) ? [r1, g1] : [r2, g2];
  const c = (1 + r * g - a * (r + g)) / (r - g);
  if (!(c > b)) return { kind: 'no film fits' };
  const scattering_per_m = Math.log((c + b) / (c - b)) / (2 * b * thickness_m);
  return { kind: 'read', film: { scattering_per_m, absorption_per_m: scattering_per_m * (a - 1) } };
}

/**
 * Contrast ratio: luminous reflectance over black against over white, the measure of hiding of ISO 6504-1 and ASTM D2805
 * (0.98 counts as hiding). Both as measured from outside; white above 0 and not darker than black, else RangeError.
 */
export function contrastRatio(overBlack: number, overWhite: number): number {
  if (!(overWhite > 0 && overBlack >= 0 && overBlack <= overWhite))
    throw new RangeError(`0 <= over black <= over white is needed, not ${overBlack} and ${overWhite}`);
  return overBlack / overWhite;
}

/** Contrast ratios outside this give a poor reading of scattering (simulated noise of 0.015 a reading). */
export const READABLE_CONTRAST = { from: 0.3, to: 0.85 } as const;
