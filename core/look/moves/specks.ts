/**
 * Specks of film that are followed back together, and the figures of a move as they are followed by: a fixed row of numbers
 * a move, the same for the maps here and for a graphics card. Figure 0 is the kind of the move, the rest are named beside
 * the move that uses them.
 */

export interface Specks {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Which sample each speck belongs to: those that were found stand no more in the list. */
  readonly sample: Int32Array;
  /** How many are still followed. */
  count: number;
}

/** A list for so many specks, none in it yet. */
export function specksFor(most: number): Specks {
  return { x: new Float64Array(most), y: new Float64Array(most), sample: new Int32Array(most), count: 0 };
}

/** Figures of one move. */
export const FIGURES = 12;

export const KIND = { puddle: 0, drag: 1, stroke: 2, swirl: 3, waver: 4, tilt: 5 } as const;

/** Where specks lie: the box that holds them all. */
export interface Box {
  left: number;
  right: number;
  front: number;
  back: number;
}
