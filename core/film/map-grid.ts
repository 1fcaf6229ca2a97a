/** The piece as cells: which lie on the top, the lines they form, and to which edge each border face belongs. */
import { distanceToSegment_m } from '#core/piece/arc.ts';
import { cutOutPath, outlinePath } from '#core/piece/outline.ts';
import { bounds, pointInside } from '#core/piece/path.ts';
import type { Path, Piece, Segment } from '#core/piece/piece.ts';
import { positive, within } from '#core/quantity/domain.ts';
import type { Lines } from './map-sweep.ts';

/** Most cells a grid may have: far above any top at 1 mm that a browser should be asked for. */
export const MOST_CELLS = 4_000_000;

export interface FilmGrid {
  readonly columns: number;
  readonly rows: number;
  /** Cells from one row to the next in arrays of this grid: an odd number of cache lines, so that columns do not collide. */
  readonly stride: number;
  readonly cellX_m: number;
  readonly cellY_m: number;
  /** Corner of the cell in column 0, row 0. */
  readonly originX_m: number;
  readonly originY_m: number;
  /** 1 where the middle of the cell lies on the top; row by row with the stride. */
  readonly inside: Uint8Array;
  readonly cells: number;
  readonly alongX: Lines;
  readonly alongY: Lines;
  /** Edge names and names of cut-outs, as counted by faceEdge. */
  readonly edges: readonly string[];
  /** Edge of each border face. */
  readonly faceEdge: Uint16Array;
  readonly longestLine: number;
}

/**
 * Cuts a piece into cells of about the size asked for (whole numbers of cells fill its bounds). A cell belongs to the top when its
 * middle does; the area is right to about a cell along the curved part of the outline and exact for upright rectangles.
 * @param cell_m above 0, small enough for 4 cells and large enough for at most 4 million cells in the bounds
 * @throws RangeError outside this, or when the piece cannot be built.
 */
export function filmGrid(piece: Pick<Piece, 'outline' | 'cutOuts'>, cell_m: number): FilmGrid {
  positive('cell_m', cell_m, 'm');
  const outline = outlinePath(piece.outline);
  const holes = piece.cutOuts.map(cutOutPath);
  const box = bounds(outline);
  const columns = Math.max(1, Math.round((box.maxX_m - box.minX_m) / cell_m));
  const rows = Math.max(1, Math.round((box.maxY_m - box.minY_m) / cell_m));
  within('cells', columns * rows, 4, MOST_CELLS, `in the bounds (cell_m = ${cell_m} m)`);
  const cellX_m = (box.maxX_m - box.minX_m) / columns;
  const cellY_m = (box.maxY_m - box.minY_m) / rows;
  const stride = 8 * (Math.ceil(columns / 8) | 1);
  const inside = new Uint8Array(stride * rows);
  let cells = 0;
  for (let row = 0; row < rows; row++) {
    const y_m = box.minY_m + (row + 0.5) * cellY_m;
    for (let column = 0; column < columns; column++) {
      const at = { x_m: box.minX_m + (column + 0.5) * cellX_m, y_m };
      if (!pointInside(outline, at) || holes.some((hole) => pointInside(hole, at))) continue;
      inside[row * stride + column] = 1;
      cells++;
    }
  }
  if (cells === 0) throw new RangeError(`cell_m = ${cell_m}: allowed cells small enough to find the top`);
  const paths: readonly Path[] = [outline, ...holes];
  const segments = paths.flat();
  const edges = [...new Set(segments.map((segment) => segment.edge))];
  const faceEdge: number[] = [];
  /** A new border face at a place counted in half cells. */
  const face = (twiceColumn: number, twiceRow: number): number => {
    const at = {
      x_m: box.minX_m + (twiceColumn / 2) * cellX_m,
      y_m: box.minY_m + (twiceRow / 2) * cellY_m,
    };
    faceEdge.push(edges.indexOf(nearest(segments, at).edge));
    return faceEdge.length - 1;
  };
  const alongX = lines(inside, rows, columns, stride, 1, (line, cell) => face(2 * cell, 2 * line + 1));
  const alongY = lines(inside, columns, rows, 1, stride, (line, cell) => face(2 * line + 1, 2 * cell));
  return {
    columns,
    rows,
    stride,
    cellX_m,
    cellY_m,
    originX_m: box.minX_m,
    originY_m: box.minY_m,
    inside,
    cells,
    alongX,
    alongY,
    edges,
    faceEdge: Uint16Array.from(faceEdge),
    longestLine: Math.max(...alongX.count, ...alongY.count),
  };
}

function nearest(segments: readonly Segment[], at: { readonly x_m: number; readonly y_m: number }): Segment {
  let best = segments[0]!;
  let least_m = Number.POSITIVE_INFINITY;
  for (const segment of segments) {
    const away_m = distanceToSegment_m(segment, at);
    if (away_m < least_m) {
      least_m = away_m;
      best = segment;
    }
  }
  return best;
}

/** Runs of inside cells along one direction; `face(line, cell)` makes the border face in front of a cell. */
function lines(
  inside: Uint8Array,
  lineCount: number,
  length: number,
  lineStep: number,
  step: number,
  face: (line: number, cell: number) => number,
): Lines {
  const start: number[] = [];
  const count: number[] = [];
  const before: number[] = [];
  const after: number[] = [];
  for (let line = 0; line < lineCount; line++) {
    let from = -1;
    for (let cell = 0; cell <= length; cell++) {
      const on = cell < length && inside[line * lineStep + cell * step] === 1;
      if (on && from < 0) {
        from = cell;
        before.push(face(line, cell));
      }
      if (!on && from >= 0) {
        start.push(line * lineStep + from * step);
        count.push(cell - from);
        after.push(face(line, cell));
        from = -1;
      }
    }
  }
  return {
    start: Int32Array.from(start),
    count: Int32Array.from(count),
    step,
    before: Int32Array.from(before),
    after: Int32Array.from(after),
  };
}
