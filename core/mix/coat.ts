/** One coat as agreed, and the quantities that follow from it. Plain data, SI. */
import type { CureState, ResinCard } from '#core/resin/model.ts';

export type CoatKind = 'seal coat' | 'colour coat' | 'clear buffer' | 'flood coat';

export type ColourantKind =
  | 'none'
  | 'pigment paste'
  | 'mica powder'
  | 'dry pigment'
  | 'liquid dye'
  | 'alcohol ink';

export interface Colour {
  readonly name: string;
  /** Share of the coat's poured volume, 0..1; the shares of a coat sum to 1. */
  readonly share: number;
  readonly colourant: ColourantKind;
  /** Mass of colourant per mass of mixed resin, 0..1. */
  readonly load: number;
  /** Colour for drawings and cup labels, `#rrggbb`. Picked by eye, not a match. */
  readonly swatch: string;
}

export interface Coat {
  readonly id: string;
  readonly name: string;
  readonly kind: CoatKind;
  readonly card: ResinCard;
  /** Film wanted on the top. */
  readonly film_m: number;
  /** Film put on the faces, per pass. */
  readonly faceFilm_m: number;
  /** True: the film is worked over the finished edges and runs off; false: every edge is dammed or taped. */
  readonly wrapEdges: boolean;
  readonly colours: readonly Colour[];
  /** Spare for what nobody foresees, as a share of everything else. */
  readonly allowance: number;
  readonly resin: CureState;
  /** Board surface when the first cup lands. */
  readonly board_K: number;
  readonly crew: number;
  /** The maker's own upper limit on a cup's mass, if any. */
  readonly largestCup_kg: number | null;
  /** The maker's own number of cups at the least, if any ("more cups"). */
  readonly fewestCups: number;
}

/** One line of the bill: what it is, how much, and the working in words and figures. */
export interface QuantityLine {
  readonly key: 'top' | 'faces' | 'rims' | 'underside' | 'run-off' | 'cup film' | 'allowance' | 'rounding';
  readonly label: string;
  readonly volume_m3: number;
  readonly mass_kg: number;
  /** Low and high of the line where it comes from the model rather than from geometry. */
  readonly low_m3: number;
  readonly high_m3: number;
  /** What it rests on. */
  readonly basis: 'geometry' | 'model' | 'shop default' | 'scale';
  /** The working, in SI, for the screen to format: e.g. area, film, length. */
  readonly working: Readonly<Record<string, number>>;
}

export interface CoatQuantity {
  readonly lines: readonly QuantityLine[];
  readonly volume_m3: number;
  readonly mass_kg: number;
}

/** What the scale is told to show for one cup. Masses are multiples of the scale's step. */
export interface CupRecipe {
  readonly number: number;
  readonly colour: string;
  readonly swatch: string;
  readonly partA_kg: number;
  readonly partB_kg: number;
  readonly tint_kg: number;
  readonly colourant: ColourantKind;
  /** Everything in the cup. */
  readonly mass_kg: number;
  readonly volume_m3: number;
  /** (B weighed / A weighed) / (B asked / A asked) - 1: the ratio error rounding makes. */
  readonly ratioError: number;
  /** The largest error the scale itself can add (half a step on each part). */
  readonly scaleError: number;
}
