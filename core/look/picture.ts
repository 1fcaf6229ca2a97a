/**
 * Which colour lies at a place of a finished pour, and what share of a piece each colour takes. A place is followed back
 * through the moves, the last first; the first puddle it falls into is its colour, else the colour poured all over. Exact at
 * every resolution: a thumbnail and a full-size print show the same pour.
 */

import type { Move } from './move.ts';
import { type Follow, follower } from './render/follow.ts';

/** The colour all over before the first move, then the moves in their order. Colours are numbers, 0 or more. */
export interface Pattern {
  readonly ground: number;
  readonly moves: readonly Move[];
}

/** A function that answers with the colour (0 to 255) at (x, y) in metres. Throws RangeError where `moveFigures` does. */
export function colourAt(pattern: Pattern): (x_m: number, y_m: number) => number {
  const follow = follower(pattern, 1);
  return (x_m, y_m) => {
    follow.x[0] = x_m;
    follow.y[0] = y_m;
    return follow.colours(1)[0]!;
  };
}

/** The samples of a picture: so many across and up a rectangle, each in the middle of its cell. */
export interface Raster {
  readonly left_m: number;
  readonly front_m: number;
  readonly width_m: number;
  readonly depth_m: number;
  readonly columns: number;
  readonly rows: number;
}

/** Specks followed at a time: few enough to stay near the processor and close enough together for far moves to be skipped. */
const BLOCK = 32;

/** Colours at all samples, row by row from the back (the top of a picture) to the front. Colours up to 255. */
export function paint(pattern: Pattern, raster: Raster): Uint8Array {
  const { left_m, front_m, width_m, depth_m, columns, rows } = checkRaster(raster);
  const follow: Follow = follower(pattern, BLOCK * BLOCK);
  const out = new Uint8Array(columns * rows);
  for (let top = 0; top < rows; top += BLOCK)
    for (let left = 0; left < columns; left += BLOCK) {
      const right = Math.min(columns, left + BLOCK);
      const bottom = Math.min(rows, top + BLOCK);
      let count = 0;
      for (let row = top; row < bottom; row++)
        for (let column = left; column < right; column++) {
          follow.x[count] = left_m + ((column + 0.5) / columns) * width_m;
          follow.y[count] = front_m + ((rows - row - 0.5) / rows) * depth_m;
          count++;
        }
      const colours = follow.colours(count);
      count = 0;
      for (let row = top; row < bottom; row++)
        for (let column = left; column < right; column++) out[row * columns + column] = colours[count++]!;
    }
  return out;
}

/**
 * Share of the samples each colour takes, of those for which `inside` holds (the piece without its holes); the shares add up
 * to 1. At 512 samples along the longer side the error was below 0.01 % of the piece for 60 moves. RangeError when none is inside.
 */
export function colourShares(
  pattern: Pattern,
  raster: Raster,
  inside: (x_m: number, y_m: number) => boolean = () => true,
): ReadonlyMap<number, number> {
  const { left_m, front_m, width_m, depth_m, columns, rows } = raster;
  const painted = paint(pattern, raster);
  const counts = new Map<number, number>();
  let all = 0;
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const x = left_m + ((column + 0.5) / columns) * width_m;
      const y = front_m + ((rows - row - 0.5) / rows) * depth_m;
      if (!inside(x, y)) continue;
      const colour = painted[row * columns + column]!;
      counts.set(colour, (counts.get(colour) ?? 0) + 1);
      all++;
    }
  if (all === 0) throw new RangeError('no sample of the picture lies on the piece');
  return new Map([...counts].map(([colour, count]) => [colour, count / all]));
}

function checkRaster(raster: Raster): Raster {
  for (const name of ['columns', 'rows'] as const)
    if (!(Number.isInteger(raster[name]) && raster[name] > 0 && raster[name] <= 65_535))
      throw new RangeError(`${name} must be a whole number from 1 to 65535, not ${raster[name]}`);
  for (const name of ['width_m', 'depth_m'] as const)
    if (!(raster[name] > 0 && Number.isFinite(raster[name])))
      throw new RangeError(`${name} must be above 0, not ${raster[name]}`);
  return raster;
}
