/** What a body and the resin on it weigh. */
import { within } from '#core/quantity/domain.ts';
import { cutOutPath, outlinePath } from '../outline.ts';
import { pathArea_m2 } from '../path.ts';
import { BODY_DENSITY_KG_M3, type Piece } from '../piece.ts';
import { type BodyOptions, bodyOptions, layersUnder } from './body.ts';
import { type Blank, edgeBlanks, rimBlanks } from './strips.ts';

export interface WeightOptions extends BodyOptions {
  /** Of the board; 740 kg/m3 when left out (standard MDF 700 to 800, from memory). 100 to 3000. */
  readonly density_kg_m3?: number;
  /** How far the board's density may be off, as a fraction; 0.08 when left out. 0 to 0.5. */
  readonly densitySpread?: number;
  /** Cured resin that stays on the piece, all coats; 0 when left out. */
  readonly resin_kg?: number;
}

export interface BodyWeight {
  readonly field_kg: number;
  readonly strips_kg: number;
  readonly splashes_kg: number;
  readonly resin_kg: number;
  readonly total_kg: number;
  /** With the board at either end of its densities. */
  readonly low_kg: number;
  readonly high_kg: number;
}

/**
 * Weight of the finished piece without oversize: plan area less holes times board, strips and rims, splashes, resin. Strips that
 * meet at a corner are counted to the corner, so where two meet their common square is counted twice.
 * Worked example: MDF 19.05 mm at 721 kg/m3 is 13.7 kg/m2 (2.81 lb/sq ft).
 * @throws RangeError for an option out of range or an outline that cannot be built.
 */
export function bodyWeight(piece: Piece, options: WeightOptions = {}): BodyWeight {
  const body = bodyOptions(options);
  const { density_kg_m3 = BODY_DENSITY_KG_M3, densitySpread = 0.08, resin_kg = 0 } = options;
  within('density_kg_m3', density_kg_m3, 100, 3000, 'kg/m3');
  within('densitySpread', densitySpread, 0, 0.5);
  within('resin_kg', resin_kg, 0, 10_000, 'kg');
  const board = body.boardThickness_m * density_kg_m3;
  const path = outlinePath(piece.outline);
  const holes = piece.cutOuts.reduce((sum, cutOut) => sum + pathArea_m2(cutOutPath(cutOut)), 0);
  const field_kg = (pathArea_m2(path) - holes) * board;
  const under = (blank: Blank) => {
    const { count, last_m } = layersUnder(blank.faceHeight_m, body.boardThickness_m);
    return count === 0 ? 0 : blank.area_m2 * ((count - 1) * body.boardThickness_m + last_m) * density_kg_m3;
  };
  const blanks = [...edgeBlanks(piece, body.stripWidth_m), ...rimBlanks(piece, body.stripWidth_m)];
  const strips_kg = blanks.reduce((sum, blank) => sum + under(blank), 0);
  const splashes_kg = body.splashes.reduce(
    (sum, { length_m, height_m, thickness_m = body.boardThickness_m }) =>
      sum + length_m * height_m * thickness_m * density_kg_m3,
    0,
  );
  const board_kg = field_kg + strips_kg + splashes_kg;
  return {
    field_kg,
    strips_kg,
    splashes_kg,
    resin_kg,
    total_kg: board_kg + resin_kg,
    low_kg: board_kg * (1 - densitySpread) + resin_kg,
    high_kg: board_kg * (1 + densitySpread) + resin_kg,
  };
}
