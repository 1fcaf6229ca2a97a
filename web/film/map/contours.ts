/** Lines of equal film on a thickness map: marching squares between the middles of cells (Lorensen and Cline 1987, in the plane). */
import type { FilmMapResult } from '#core/film/map-result.ts';
import type { Point } from '#core/piece/piece.ts';

type Map2 = Pick<
  FilmMapResult,
  'columns' | 'rows' | 'cellX_m' | 'cellY_m' | 'originX_m' | 'originY_m' | 'thickness_m' | 'inside'
>;

/**
 * All lines of one level, as runs of points; a closed one ends where it began. Only squares of four cells on the top are crossed, so lines
 * end half a cell before a border. Saddles are cut by the mean of their corners.
 */
export function contourLines(map: Map2, level_m: number): Point[][] {
  const { columns, rows, thickness_m: h, inside } = map;
  /** Crossed sides of squares: 2 cell for the side to the right of a cell's middle, 2 cell + 1 for the one up; each joins up to two others. */
  const joins = new Map<number, number[]>();
  const join = (a: number, b: number): void => {
    for (const [from, to] of [
      [a, b],
      [b, a],
    ] as const) {
      const list = joins.get(from);
      if (list === undefined) joins.set(from, [to]);
      else list.push(to);
    }
  };
  for (let row = 0; row + 1 < rows; row++)
    for (let column = 0; column + 1 < columns; column++) {
      const at = row * columns + column;
      const up = at + columns;
      const a = h[at]! >= level_m ? 1 : 0;
      const b = h[at + 1]! >= level_m ? 1 : 0;
      const c = h[up + 1]! >= level_m ? 1 : 0;
      const d = h[up]! >= level_m ? 1 : 0;
      const kind = a + 2 * b + 4 * c + 8 * d;
      if (kind === 0 || kind === 15) continue;
      if ((inside[at]! & inside[at + 1]! & inside[up]! & inside[up + 1]!) === 0) continue;
      const bottom = 2 * at;
      const top = 2 * up;
      const left = 2 * at + 1;
      const right = 2 * (at + 1) + 1;
      if (kind === 5 || kind === 10) {
        const middle = (h[at]! + h[at + 1]! + h[up]! + h[up + 1]!) / 4 >= level_m;
        // The two corners that agree with the middle are one region.
        if (middle === (kind === 5)) {
          join(bottom, right);
          join(left, top);
        } else {
          join(bottom, left);
          join(right, top);
        }
        continue;
      }
      const sides: number[] = [];
      if (a !== b) sides.push(bottom);
      if (b !== c) sides.push(right);
      if (c !== d) sides.push(top);
      if (d !== a) sides.push(left);
      join(sides[0]!, sides[1]!);
    }
  return traced(joins).map((line) => line.map((side) => crossing(map, side, level_m)));
}

/** Walks the joins: open lines from their ends first, then the closed ones. */
function traced(joins: ReadonlyMap<number, readonly number[]>): number[][] {
  const seen = new Set<number>();
  const lines: number[][] = [];
  const walk = (start: number): void => {
    const line = [start];
    seen.add(start);
    for (let now: number | undefined = start; now !== undefined; ) {
      const next: number | undefined = joins.get(now)!.find((side) => !seen.has(side));
      if (next !== undefined) {
        seen.add(next);
        line.push(next);
      } else if (line.length > 2 && joins.get(now)!.includes(start)) line.push(start);
      now = next;
    }
    lines.push(line);
  };
  for (const [side, to] of joins) if (to.length === 1 && !seen.has(side)) walk(side);
  for (const side of joins.keys()) if (!seen.has(side)) walk(side);
  return lines;
}

function crossing(map: Map2, side: number, level_m: number): Point {
  const cell = side >> 1;
  const upright = (side & 1) === 1;
  const low = map.thickness_m[cell]!;
  const high = map.thickness_m[upright ? cell + map.columns : cell + 1]!;
  const part = high === low ? 0.5 : (level_m - low) / (high - low);
  const column = (cell % map.columns) + 0.5 + (upright ? 0 : part);
  const row = Math.floor(cell / map.columns) + 0.5 + (upright ? part : 0);
  return { x_m: map.originX_m + column * map.cellX_m, y_m: map.originY_m + row * map.cellY_m };
}

/** Film at a place; undefined beside the top. */
export function filmAt_m(map: Map2, at: Point): number | undefined {
  const column = Math.floor((at.x_m - map.originX_m) / map.cellX_m);
  const row = Math.floor((at.y_m - map.originY_m) / map.cellY_m);
  if (column < 0 || row < 0 || column >= map.columns || row >= map.rows) return undefined;
  const cell = row * map.columns + column;
  return map.inside[cell] === 1 ? map.thickness_m[cell] : undefined;
}
