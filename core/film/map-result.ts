/** What a thickness map tells: films, thinnest places, and where every litre went. */
import type { FilmGrid } from './map-grid.ts';

/** Places nearer to a border than this do not count for the thinnest place inside, m. */
export const INNER_MARGIN_m = 0.025;

/** Thinner than this counts as bare, m: 0.01 mm. */
export const BARE_m = 1e-5;

export interface MapPlace {
  readonly thickness_m: number;
  readonly x_m: number;
  readonly y_m: number;
}

export interface FilmMapResult {
  readonly columns: number;
  readonly rows: number;
  readonly cellX_m: number;
  readonly cellY_m: number;
  /** Corner of column 0, row 0 in the axes of the piece (y to the back). */
  readonly originX_m: number;
  readonly originY_m: number;
  /** Row by row, columns * rows; 0 outside the top. */
  readonly thickness_m: Float32Array;
  /** 1 on the top. */
  readonly inside: Uint8Array;
  readonly area_m2: number;
  readonly mean_m: number;
  readonly thinnest: MapPlace;
  /** Thinnest place at least 25 mm from every border; undefined when the top has none. */
  readonly thinnestInside?: MapPlace;
  readonly thickest: MapPlace;
  /** Share of the top with less than 0.01 mm. */
  readonly bareShare: number;
  readonly poured_m3: number;
  readonly onTop_m3: number;
  readonly lost_m3: number;
  /** By edge and cut-out, every one of the piece. */
  readonly lostOver: readonly { readonly edge: string; readonly volume_m3: number }[];
  /** Dry edges that let go, with the budget spent when the first place did. */
  readonly letGo: readonly { readonly edge: string; readonly theta_per_Pa: number }[];
  /** (on top + lost - poured)/poured: rounding only. */
  readonly balance: number;
  readonly steps: number;
}

export interface MapEnd {
  readonly grid: FilmGrid;
  readonly h: Float64Array;
  readonly poured_m3: number;
  readonly lost_m: Float64Array;
  readonly letGo: FilmMapResult['letGo'];
  readonly steps: number;
}

/** Sums with the error carried along (Kahan 1965), so that the balance shows the scheme and not the adding up. */
function carefulSum(list: Float64Array): number {
  let sum = 0;
  let carry = 0;
  for (const value of list) {
    const next = value - carry;
    const total = sum + next;
    carry = total - sum - next;
    sum = total;
  }
  return sum;
}

export function filmMapResult(end: MapEnd): FilmMapResult {
  const { grid, h, poured_m3, steps, letGo } = end;
  const { columns, rows, stride, cellX_m, cellY_m, originX_m, originY_m, cells } = grid;
  const cell_m2 = cellX_m * cellY_m;
  const thickness_m = new Float32Array(columns * rows);
  const inside = new Uint8Array(columns * rows);
  const away_m = distanceInside_m(grid);
  let thinnest = -1;
  let thinnestInside = -1;
  let thickest = -1;
  let bare = 0;
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const at = row * stride + column;
      if (grid.inside[at] !== 1) continue;
      const film = h[at]!;
      thickness_m[row * columns + column] = film;
      inside[row * columns + column] = 1;
      if (thinnest < 0 || film < h[thinnest]!) thinnest = at;
      if (thickest < 0 || film > h[thickest]!) thickest = at;
      if (away_m[at]! >= INNER_MARGIN_m && (thinnestInside < 0 || film < h[thinnestInside]!))
        thinnestInside = at;
      if (film < BARE_m) bare++;
    }
  const place = (at: number): MapPlace => ({
    thickness_m: h[at]!,
    x_m: originX_m + ((at % stride) + 0.5) * cellX_m,
    y_m: originY_m + (Math.floor(at / stride) + 0.5) * cellY_m,
  });
  const over = new Float64Array(grid.edges.length);
  for (const [face, lost] of end.lost_m.entries()) over[grid.faceEdge[face]!]! += lost * cell_m2;
  const onTop_m3 = carefulSum(h) * cell_m2;
  const lost_m3 = carefulSum(over);
  return {
    columns,
    rows,
    cellX_m,
    cellY_m,
    originX_m,
    originY_m,
    thickness_m,
    inside,
    area_m2: cells * cell_m2,
    mean_m: onTop_m3 / (cells * cell_m2),
    thinnest: place(thinnest),
    ...(thinnestInside < 0 ? {} : { thinnestInside: place(thinnestInside) }),
    thickest: place(thickest),
    bareShare: bare / cells,
    poured_m3,
    onTop_m3,
    lost_m3,
    lostOver: grid.edges.map((edge, i) => ({ edge, volume_m3: over[i]! })),
    letGo,
    balance: (onTop_m3 + lost_m3 - poured_m3) / poured_m3,
    steps,
  };
}

/** Distance of each cell to the nearest border, by two passes over its neighbours (Borgefors 1986; at most 8 % long). */
function distanceInside_m(grid: FilmGrid): Float64Array {
  const { columns, rows, stride, cellX_m, cellY_m, inside } = grid;
  const across_m = Math.hypot(cellX_m, cellY_m);
  const away = new Float64Array(inside.length);
  const from = (row: number, column: number, step: number): number => {
    if (row < 0 || row >= rows || column < 0 || column >= columns) return step / 2;
    const at = row * stride + column;
    return inside[at] === 1 ? away[at]! + step : step / 2;
  };
  const pass = (sign: 1 | -1): void => {
    for (let r = 0; r < rows; r++)
      for (let c = 0; c < columns; c++) {
        const row = sign === 1 ? r : rows - 1 - r;
        const column = sign === 1 ? c : columns - 1 - c;
        const at = row * stride + column;
        if (inside[at] !== 1) continue;
        const before = Math.min(
          from(row, column - sign, cellX_m),
          from(row - sign, column, cellY_m),
          from(row - sign, column - sign, across_m),
          from(row - sign, column + sign, across_m),
        );
        away[at] = sign === 1 ? before : Math.min(away[at]!, before);
      }
  };
  pass(1);
  pass(-1);
  return away;
}
