/**
 * The cutting problem in whole numbers, so that what fits exactly fits exactly. The step is 1/8 um: 1 mm is 8000 steps and
 * 1/64 in is 3175. Every part and every trimmed sheet is made one kerf larger both ways; then cuts have no width.
 */

export const STEP_M = 1.25e-7;

export const toSteps = (length_m: number): number => Math.round(length_m / STEP_M);

/** One single part; x along the sheet. */
export interface Item {
  /** Place in the list of parts. */
  readonly part: number;
  readonly x: number;
  readonly y: number;
  readonly turns: boolean;
}

export interface Sheet {
  /** Place in the list of stock. */
  readonly stock: number;
  readonly x: number;
  readonly y: number;
  readonly price: number;
  /** Infinity for as many as wanted. */
  readonly count: number;
}

export interface Task {
  readonly items: readonly Item[];
  readonly sheets: readonly Sheet[];
}

export const fits = (item: Item, sheet: { readonly x: number; readonly y: number }): boolean =>
  (item.x <= sheet.x && item.y <= sheet.y) || (item.turns && item.y <= sheet.x && item.x <= sheet.y);
