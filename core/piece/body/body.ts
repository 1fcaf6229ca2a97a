/** What the body under a poured top is built from: one board, strips under its edges, rims round its holes, splashes. */
import { within } from '#core/quantity/domain.ts';
import type { CutPart } from '../cutting/cutting.ts';

export type PartKind = 'field' | 'strip' | 'rim' | 'splash';

export interface BodyPart extends CutPart {
  readonly count: number;
  readonly kind: PartKind;
  /** Of the board it is cut from. */
  readonly thickness_m: number;
  /** One sentence for the bench; '' for none. */
  readonly note: string;
}

export interface Splash {
  /** As it is called in the parts list. */
  readonly name: string;
  /** Along the side it stands on, 0.01 to 20. */
  readonly length_m: number;
  /** 4 in (102 mm) is usual (common practice, no source). */
  readonly height_m: number;
  /** Of its board; that of the body when left out. */
  readonly thickness_m?: number;
}

/** Every default is common practice, no source, and the shop's to change. */
export interface BodyOptions {
  /** Of the board all parts are cut from; 3/4 in (19.05 mm) when left out. 0.003 to 0.1. */
  readonly boardThickness_m?: number;
  /** Of the strips under edges and round holes; 3 in (76.2 mm) when left out. 0.01 to 0.5. */
  readonly stripWidth_m?: number;
  /** Added to each side of the field and trimmed flush after gluing; 5 mm when left out. 0 to 0.05. */
  readonly oversize_m?: number;
  /** true for plywood: field and splashes keep their grain along their length. MDF has none. */
  readonly grained?: boolean;
  /** Another grain for parts of a kind; left out, as the board says: strips and rims may always be turned. */
  readonly grain?: Partial<Readonly<Record<PartKind, CutPart['grain']>>>;
  /** Longer parts are made of equal lengths with a joint; 2.4 m when left out. 0.3 to 20. */
  readonly longest_m?: number;
  readonly splashes?: readonly Splash[];
}

export const BOARD_THICKNESS_M = 0.01905;
export const STRIP_WIDTH_M = 0.0762;
export const OVERSIZE_M = 0.005;
export const LONGEST_PART_M = 2.4;

/** Holes whose short side is no more than this are tap holes: no rim unless the resin runs down them. */
export const TAP_HOLE_M = 0.06;

/** A gap thinner than this is glue and sanding, not another layer. */
const NO_LAYER_M = 0.0005;

/** The options with every default filled in. Throws RangeError with the range when one is outside it. */
export function bodyOptions(
  options: BodyOptions,
): Required<BodyOptions> & { readonly grain: Readonly<Record<PartKind, CutPart['grain']>> } {
  const {
    boardThickness_m = BOARD_THICKNESS_M,
    stripWidth_m = STRIP_WIDTH_M,
    oversize_m = OVERSIZE_M,
    longest_m = LONGEST_PART_M,
  } = options;
  within('boardThickness_m', boardThickness_m, 0.003, 0.1, 'm');
  within('stripWidth_m', stripWidth_m, 0.01, 0.5, 'm');
  within('oversize_m', oversize_m, 0, 0.05, 'm');
  within('longest_m', longest_m, 0.3, 20, 'm');
  const splashes = options.splashes ?? [];
  for (const splash of splashes) {
    within(`length_m of the ${splash.name}`, splash.length_m, 0.01, 20, 'm');
    within(`height_m of the ${splash.name}`, splash.height_m, 0.003, 2, 'm');
    within(`thickness_m of the ${splash.name}`, splash.thickness_m ?? boardThickness_m, 0.003, 0.15, 'm');
  }
  const grained = options.grained ?? false;
  const usual = grained ? 'fixed' : 'free';
  return {
    boardThickness_m,
    stripWidth_m,
    oversize_m,
    grained,
    grain: { field: usual, strip: 'free', rim: 'free', splash: usual, ...options.grain },
    longest_m,
    splashes,
  };
}

/**
 * Layers of board under the field that bring an edge to its face height, the last one planed when it is not a whole board.
 * Example: a 38.1 mm face on 19.05 mm board takes 1; 50 mm takes 2, the second planed to 11.9 mm.
 */
export function layersUnder(
  faceHeight_m: number,
  boardThickness_m: number,
): { count: number; last_m: number } {
  const under = faceHeight_m - boardThickness_m;
  if (under <= NO_LAYER_M) return { count: 0, last_m: 0 };
  const count = Math.ceil((under - NO_LAYER_M) / boardThickness_m);
  return { count, last_m: Math.min(boardThickness_m, under - (count - 1) * boardThickness_m) };
}
