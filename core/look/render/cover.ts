/** How much of each pixel a panel covers, in sixteenths, from its `inside`. */
import type { PlacedPanel } from './drawing.ts';
import type { Sheet } from './grid.ts';

/** From a pixel of the grid, whole or fractional, to own coordinates: u = m0 + m1 column + m2 row, v likewise in m3 to m5. */
export type ToOwn = readonly [number, number, number, number, number, number];

export function toOwn(
  { panel, at, turn_rad }: PlacedPanel,
  { left_m, back_m, pixel_m }: Sheet['grid'],
): ToOwn {
  const [c, s] = [Math.cos(turn_rad), Math.sin(turn_rad)];
  const [x, y] = [left_m - at[0], back_m - at[1]];
  return [
    panel.left_m + c * x + s * y,
    c * pixel_m,
    -s * pixel_m,
    panel.front_m - s * x + c * y,
    -s * pixel_m,
    -c * pixel_m,
  ];
}

/** Nothing narrower than this is looked for between two places that are alike. A tap hole is 30 mm at least. */
const FINE_M = 0.008;
export const FULL = 16;

/** Calls `put` with each pixel of the window that is covered, and by how many sixteenths. Windows of one grid agree. */
export function eachCovered(
  placed: PlacedPanel,
  sheet: Sheet,
  put: (index: number, sixteenths: number) => void,
): void {
  const { panel } = placed;
  const { grid, window } = sheet;
  const m = toOwn(placed, grid);
  const [right_m, back_m] = [panel.left_m + panel.width_m, panel.front_m + panel.depth_m];
  const inside = (column: number, row: number): boolean => {
    const u = m[0] + m[1] * column + m[2] * row;
    const v = m[3] + m[4] * column + m[5] * row;
    return u >= panel.left_m && u <= right_m && v >= panel.front_m && v <= back_m && panel.inside(u, v);
  };
  // Blocks and their corners are counted from the corner of the grid, not of the window.
  const block = Math.max(1, Math.floor(FINE_M / grid.pixel_m));
  const [endColumn, endRow] = [window.column + window.columns, window.row + window.rows];
  const [c0, c1] = [Math.floor(window.column / block), Math.ceil(endColumn / block)];
  const [r0, r1] = [Math.floor(window.row / block), Math.ceil(endRow / block)];
  // Corners of the blocks, with one more block round about.
  const wide = c1 - c0 + 3;
  const corners = new Uint8Array(wide * (r1 - r0 + 3));
  for (let r = 0; r < r1 - r0 + 3; r++)
    for (let c = 0; c < wide; c++)
      corners[r * wide + c] = inside((c0 + c - 1) * block, (r0 + r - 1) * block) ? 1 : 0;
  const alike = (c: number, r: number): number => {
    let sum = 0;
    for (let y = 0; y < 4; y++) for (let x = 0; x < 4; x++) sum += corners[(r + y) * wide + c + x]!;
    return sum;
  };
  for (let r = 0; r < r1 - r0; r++)
    for (let c = 0; c < c1 - c0; c++) {
      const sum = alike(c, r);
      if (sum === 0) continue;
      const left = Math.max(window.column, (c0 + c) * block);
      const right = Math.min(endColumn, (c0 + c + 1) * block);
      const top = Math.max(window.row, (r0 + r) * block);
      const bottom = Math.min(endRow, (r0 + r + 1) * block);
      for (let row = top; row < bottom; row++)
        for (let column = left; column < right; column++) {
          const sixteenths = sum === 16 ? FULL : count(inside, column, row);
          if (sixteenths > 0) put((row - window.row) * window.columns + column - window.column, sixteenths);
        }
    }
}

function count(inside: (column: number, row: number) => boolean, column: number, row: number): number {
  let sum = inside(column + 0.5, row + 0.5) ? 1 : 0;
  for (let i = 0; i < 4; i++) if (inside(column + (i & 1), row + (i >> 1))) sum++;
  // Five places alike: the rim does not cross this pixel.
  if (sum === 0 || sum === 5) return sum === 0 ? 0 : FULL;
  sum = 0;
  for (let i = 0; i < 16; i++) if (inside(column + ((i & 3) + 0.5) / 4, row + ((i >> 2) + 0.5) / 4)) sum++;
  return sum;
}
