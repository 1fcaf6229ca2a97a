/** The pixels of a picture: an even grid over a drawing, of which a window is rendered at a time. */
import { positive } from '#core/quantity/domain.ts';
import type { Drawing } from './drawing.ts';

/** Pixel (column, row) covers [left + column pixel, left + (column + 1) pixel] and as much from the back forwards. */
export interface Grid {
  readonly left_m: number;
  readonly back_m: number;
  readonly pixel_m: number;
}

/** A part of a grid in whole pixels. A large print is cut into windows of one grid, so no seam can show. */
export interface Window {
  readonly column: number;
  readonly row: number;
  readonly columns: number;
  readonly rows: number;
}

export interface Sheet {
  readonly grid: Grid;
  readonly window: Window;
}

/** The whole drawing in the middle of so many pixels. RangeError unless both are whole numbers of 1 to 32768. */
export function fitInto(drawing: Drawing, columns: number, rows: number): Sheet {
  for (const [name, value] of [
    ['columns', columns],
    ['rows', rows],
  ] as const)
    if (!(Number.isInteger(value) && value >= 1 && value <= 32_768))
      throw new RangeError(`${name} must be a whole number of 1 to 32768, not ${value}`);
  const pixel_m = Math.max(drawing.width_m / columns, drawing.depth_m / rows);
  const left_m = drawing.left_m + drawing.width_m / 2 - (columns * pixel_m) / 2;
  const back_m = drawing.front_m + drawing.depth_m / 2 + (rows * pixel_m) / 2;
  return { grid: { left_m, back_m, pixel_m }, window: { column: 0, row: 0, columns, rows } };
}

/** The whole drawing at a size of pixel, m, from its back left corner. */
export function atPixel(drawing: Drawing, pixel_m: number): Sheet {
  positive('pixel_m', pixel_m, 'm');
  return {
    grid: { left_m: drawing.left_m, back_m: drawing.front_m + drawing.depth_m, pixel_m },
    window: {
      column: 0,
      row: 0,
      columns: Math.max(1, Math.ceil(drawing.width_m / pixel_m - 1e-9)),
      rows: Math.max(1, Math.ceil(drawing.depth_m / pixel_m - 1e-9)),
    },
  };
}
