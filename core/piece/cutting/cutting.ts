/**
 * Cutting boards out of sheets with straight cuts that go right through (guillotine cuts), as a panel saw, a track saw or
 * a table saw makes them. Plain data, SI units. Every sheet lies with its length along x, its grain along x.
 */

export interface CutPart {
  readonly name: string;
  /** Along the grain when the grain is fixed. */
  readonly length_m: number;
  readonly width_m: number;
  /** 1 when left out. */
  readonly count?: number;
  /** fixed: the length lies along the sheet's length; free: may be turned. */
  readonly grain: 'fixed' | 'free';
}

export interface StockSheet {
  readonly name: string;
  /** Along the grain. */
  readonly length_m: number;
  readonly width_m: number;
  /** How many there are; without limit when left out. */
  readonly count?: number;
  /** Of one, in any one currency; when left out 0 for an offcut and the area in m2 for a bought sheet. */
  readonly price?: number;
  /** Already on the shelf. */
  readonly offcut?: boolean;
  /** Taken off every side before cutting parts; when left out 0 for an offcut, the option's trim for a bought sheet. */
  readonly trim_m?: number;
}

export interface CuttingOptions {
  /** Width of the saw cut; 1/8 in (3.175 mm) when left out (common practice, no source). */
  readonly kerf_m?: number;
  /** Off each side of a bought sheet; 6 mm when left out (common practice, no source). */
  readonly trim_m?: number;
  /** What is kept on the shelf: both sides at least these, either way round; 600 mm x 100 mm when left out (no source). */
  readonly keep?: { readonly length_m: number; readonly width_m: number };
  /** Rounds of search for a cheaper plan; 20 000 when left out. */
  readonly rounds?: number;
  /** Rounds spent on larger offcuts once the price is settled; 1 000 when left out. */
  readonly tidyRounds?: number;
  /** Of the random streams; the same seed gives the same plan. */
  readonly seed?: number;
}

export interface PlacedPart {
  /** Place in the list of parts. */
  readonly part: number;
  readonly name: string;
  /** Corner nearest the sheet's corner, from the untrimmed sheet's corner. */
  readonly x_m: number;
  readonly y_m: number;
  /** As it lies on the sheet. */
  readonly alongX_m: number;
  readonly alongY_m: number;
  readonly turned: boolean;
}

export interface Rest {
  readonly x_m: number;
  readonly y_m: number;
  readonly alongX_m: number;
  readonly alongY_m: number;
}

export interface Cut {
  /** From 1 in the order they are made. */
  readonly number: number;
  /** rip: along the length of the sheet; crosscut: across it; the trims come first. */
  readonly kind: 'trim rip' | 'trim crosscut' | 'rip' | 'crosscut';
  /** The panel that is put on the saw: `sheet`, or the letter an earlier cut gave it. */
  readonly panel: string;
  /** Between fence and blade: the size of what is cut off to keep, or for a trim of what stays. */
  readonly fence_m: number;
  /** What lies between fence and blade afterwards: a panel's letter, a part's name, or `sheet` for a trim. */
  readonly gives: string;
  /** What is left on the other side of the blade: the panel for its next cut, its last piece by letter or name, `offcut`, `scrap` or `nothing`. */
  readonly leaves: string;
  readonly from: { readonly x_m: number; readonly y_m: number };
  readonly to: { readonly x_m: number; readonly y_m: number };
}

/** A panel divided by parallel cuts, a part, or a rest. `divided` says in which direction its pieces lie side by side. */
export type CutTree =
  | {
      readonly kind: 'panel';
      readonly label: string;
      readonly divided: 'x' | 'y';
      readonly pieces: readonly CutTree[];
    }
  | { readonly kind: 'part'; readonly placed: number }
  | { readonly kind: 'rest'; readonly rest: Rest; readonly kept: boolean };

export interface CutSheet {
  /** Place in the list of stock. */
  readonly stock: number;
  readonly name: string;
  readonly length_m: number;
  readonly width_m: number;
  readonly trim_m: number;
  readonly price: number;
  readonly parts: readonly PlacedPart[];
  readonly tree: CutTree;
  readonly cuts: readonly Cut[];
  /** Large enough to keep. */
  readonly offcuts: readonly Rest[];
  /** Too small to keep. */
  readonly scraps: readonly Rest[];
  readonly partsArea_m2: number;
  /** Turned to dust inside the trimmed sheet. */
  readonly kerfArea_m2: number;
  readonly trimArea_m2: number;
}

export interface CuttingPlan {
  readonly sheets: readonly CutSheet[];
  /** Sum of the prices of the sheets used. */
  readonly price: number;
  /** No plan can be cheaper. */
  readonly lowerBound: number;
  /** (price - lowerBound) / price: 0 when the plan is proven cheapest. */
  readonly gap: number;
  /** By the bound, by looking at every plan, or not proven. */
  readonly proof: 'bound' | 'every plan' | 'none';
  readonly partsArea_m2: number;
  readonly offcutArea_m2: number;
  /** Everything else of the sheets used: scraps, kerf and trim. */
  readonly wasteArea_m2: number;
}
