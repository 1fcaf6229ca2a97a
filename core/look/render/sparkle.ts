/**
 * The glitter of mica and metal: how much brighter or darker than their mean the flakes of one spot are. A spot is a flake,
 * or as many flakes as a pixel holds; the more, the less their mean glitters (as one over the square root of their number).
 */

/** How rare a bright flake is: brightness (n + 1) h^n of an even draw h, its mean 1. n = 15: one in sixteen outshines five. */
export const RARE = 15;

/** Side of a spot for a pixel, m, and how strongly it glitters: flake sizes doubled until they hold a pixel. */
export function spotOf(
  flake_m: number,
  pixel_m: number,
): { readonly side_m: number; readonly strength: number } {
  let side_m = flake_m;
  let strength = 1;
  while (side_m < pixel_m) {
    side_m *= 2;
    strength /= 2;
  }
  return { side_m, strength };
}

/** Brightness of the spot with these whole coordinates over the mean, 1 on average, 0 to RARE + 1. Seeded. */
export function sparkle(column: number, row: number, seed: number, strength: number): number {
  let h = Math.imul(column, 0x27d4eb2d) ^ Math.imul(row, 0x165667b1) ^ seed;
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  h = Math.imul(h ^ (h >>> 12), 0x297a2d39);
  h ^= h >>> 15;
  const draw = (h >>> 8) / 16_777_216;
  const d2 = draw * draw;
  const d4 = d2 * d2;
  return 1 + strength * ((RARE + 1) * d4 * d4 * d4 * d2 * draw - 1);
}
