/** The piece as it is carried in: its outline, its size and what it weighs. */
import { bodyWeight, type WeightOptions } from '#core/piece/body/body-weight.ts';
import { measurePiece } from '#core/piece/measure.ts';
import { outlinePath } from '#core/piece/outline.ts';
import { flattenPath } from '#core/piece/path.ts';
import type { Piece } from '#core/piece/piece.ts';
import type { FitTop } from '#web/fit/fit-picture.ts';

/** Round edges are followed by chords this close, m. */
const FLAT_M = 0.0005;

/**
 * `body`: how the body is built, null where that cannot be told; then it counts as solid board. Splashes are carried by themselves
 * and not counted. null for a piece that cannot be measured.
 */
export function fitTop(piece: Piece, body: WeightOptions | null, resin_kg: number): FitTop | null {
  const measured = measurePiece(piece);
  if (!measured.ok) return null;
  const { longestDiagonal_m, halfShortSide_m, bodyMass_kg } = measured.value;
  return {
    corners: flattenPath(outlinePath(piece.outline), FLAT_M),
    load: {
      longest_m: longestDiagonal_m,
      short_m: 2 * halfShortSide_m,
      thickness_m: piece.bodyThickness_m,
      mass_kg:
        body === null
          ? bodyMass_kg + resin_kg
          : bodyWeight(piece, { ...body, splashes: [], resin_kg }).total_kg,
    },
    withResin: resin_kg > 0,
  };
}
