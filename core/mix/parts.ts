/**
 * From the mix ratio on the label, which is by volume, to what the scale shows; and what rounding to the scale does to
 * the ratio.
 */
import type { MixRatio } from '#core/resin/model.ts';

export interface PartShares {
  /** Mass of A and of B per mass of A + B; they sum to 1. */
  readonly shareA: number;
  readonly shareB: number;
  /** Mass of B to 100 of A, as scales are read. */
  readonly bTo100A: number;
  /** Density of A + B before they react, volumes taken as additive, kg/m3. */
  readonly density_kg_m3: number;
}

function above0(name: string, value: number, unit: string): number {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY))
    throw new RangeError(`${name} is ${value}; allowed: more than 0 ${unit}`.trimEnd());
  return value;
}

/**
 * Shares by mass of a ratio by volume: each part times its density. Exact.
 * Worked: 2:1 by volume, 1130 and 980 kg/m3 -> 100 : 43.4 by mass.
 * @throws RangeError unless parts and densities are positive and finite.
 */
export function partShares(mix: MixRatio): PartShares {
  const a = above0('volumeA', mix.volumeA, 'parts');
  const b = above0('volumeB', mix.volumeB, 'parts');
  const massA = a * above0('densityA_kg_m3', mix.densityA_kg_m3, 'kg/m3');
  const massB = b * above0('densityB_kg_m3', mix.densityB_kg_m3, 'kg/m3');
  return {
    shareA: massA / (massA + massB),
    shareB: massB / (massA + massB),
    bTo100A: (100 * massB) / massA,
    density_kg_m3: (massA + massB) / (a + b),
  };
}

/**
 * Parts of A by volume to one part of B, from masses: the way back from {@link partShares}.
 * @throws RangeError unless all four are positive and finite.
 */
export function volumeRatio(
  massA_kg: number,
  massB_kg: number,
  densities: Pick<MixRatio, 'densityA_kg_m3' | 'densityB_kg_m3'>,
): number {
  const volumeA =
    above0('massA_kg', massA_kg, 'kg') / above0('densityA_kg_m3', densities.densityA_kg_m3, 'kg/m3');
  const volumeB =
    above0('massB_kg', massB_kg, 'kg') / above0('densityB_kg_m3', densities.densityB_kg_m3, 'kg/m3');
  return volumeA / volumeB;
}

/** Relative error of B to A against the ratio asked; 0.02 is 2 % too much B. */
export function ratioError(partA_kg: number, partB_kg: number, mix: MixRatio): number {
  const shares = partShares(mix);
  return (
    above0('partB_kg', partB_kg, 'kg') /
      above0('partA_kg', partA_kg, 'kg') /
      (shares.shareB / shares.shareA) -
    1
  );
}

/** The most a scale can add by itself: it shows the nearest step, so each part may be off by half a step. */
export function scaleError(partA_kg: number, partB_kg: number, step_kg: number): number {
  const half = above0('step_kg', step_kg, 'kg') / 2;
  if (!(partA_kg > half)) return Number.MAX_VALUE;
  return (1 + half / above0('partB_kg', partB_kg, 'kg')) / (1 - half / partA_kg) - 1;
}

export interface WeighedParts {
  readonly partA_kg: number;
  readonly partB_kg: number;
  readonly ratioError: number;
  readonly scaleError: number;
}

/** How many steps past the exact figure each part may be rounded up in search of a better ratio. */
const SEARCH_STEPS = 2;

/** A whole number of steps as a decimal a scale shows: 0.317, not 0.31700000000000006. */
function steps(count: number, step_kg: number): number {
  return Number((count * step_kg).toPrecision(12));
}

/**
 * A and B in whole steps of the scale that together make at least the mass asked, with the least error of the ratio among
 * the neighbouring steps (from one below the exact figure to two above it); of two as good, the lighter. Hence
 * |ratioError| is always under step/A + step/B with A and B the exact parts (rounding both up is among the pairs searched).
 * @param mass_kg A + B needed, above 0 @param step_kg of the scale, above 0
 * @throws RangeError outside these.
 */
export function weighParts(mass_kg: number, mix: MixRatio, step_kg: number): WeighedParts {
  const { shareA, shareB } = partShares(mix);
  const needed = above0('mass_kg', mass_kg, 'kg') / above0('step_kg', step_kg, 'kg');
  const least = needed - 1e-9 * Math.max(1, needed);
  const startA = Math.max(1, Math.floor(needed * shareA));
  const startB = Math.max(1, Math.floor(needed * shareB));
  const asked = shareB / shareA;
  let best: { a: number; b: number; error: number } | null = null;
  for (let a = startA; a <= startA + SEARCH_STEPS; a++)
    for (let b = startB; b <= startB + SEARCH_STEPS; b++) {
      if (a + b < least) continue;
      const error = Math.abs(b / a / asked - 1);
      const better = best === null || error < best.error - 1e-12;
      const lighter = best !== null && Math.abs(error - best.error) <= 1e-12 && a + b < best.a + best.b;
      if (better || lighter) best = { a, b, error };
    }
  const { a, b } = best!;
  const partA_kg = steps(a, step_kg);
  const partB_kg = steps(b, step_kg);
  return {
    partA_kg,
    partB_kg,
    ratioError: b / a / asked - 1,
    scaleError: scaleError(partA_kg, partB_kg, step_kg),
  };
}
