/** Puts resin on the cells of a thickness map: an even film, or round puddles. */
import { positive } from '#core/quantity/domain.ts';
import type { FilmGrid } from './map-grid.ts';

export interface MapPuddle {
  readonly x_m: number;
  readonly y_m: number;
  /** Above 0. */
  readonly volume_m3: number;
  /** Of the puddle as it was just poured, above 0. */
  readonly radius_m: number;
  /** Flow budget spent when it is poured, 1/Pa, from 0 (0 when left out). */
  readonly theta_per_Pa?: number;
}

/**
 * Adds an even film to every cell.
 * @returns volume added, m3
 */
export function pourEven(h: Float64Array, grid: FilmGrid, film_m: number): number {
  for (let i = 0; i < h.length; i++) if (grid.inside[i] === 1) h[i]! += film_m;
  return film_m * grid.cells * grid.cellX_m * grid.cellY_m;
}

/**
 * Adds a puddle with the profile (1 - r^2/R^2)^(1/3) of a spreading one, scaled so that its whole volume lies on the top: what would
 * lie beyond an edge or in a cut-out is heaped on the rest. A puddle smaller than a cell fills the cell under its middle.
 * @returns volume added, m3
 * @throws RangeError when volume or radius are not positive, or no cell of the top lies under it.
 */
export function pourPuddle(h: Float64Array, grid: FilmGrid, puddle: MapPuddle): number {
  const { x_m, y_m } = puddle;
  const volume_m3 = positive('volume_m3', puddle.volume_m3, 'm3');
  const radius_m = positive('radius_m', puddle.radius_m, 'm');
  if (!Number.isFinite(x_m + y_m)) throw new RangeError(`puddle at ${x_m}, ${y_m}: allowed finite, m`);
  const { columns, rows, stride, cellX_m, cellY_m, originX_m, originY_m, inside } = grid;
  const span = (at: number, origin: number, cell: number, count: number): readonly [number, number] => [
    Math.max(0, Math.floor((at - radius_m - origin) / cell)),
    Math.min(count - 1, Math.floor((at + radius_m - origin) / cell)),
  ];
  const [c0, c1] = span(x_m, originX_m, cellX_m, columns);
  const [r0, r1] = span(y_m, originY_m, cellY_m, rows);
  const places: number[] = [];
  const shapes: number[] = [];
  let whole = 0;
  for (let row = r0; row <= r1; row++)
    for (let column = c0; column <= c1; column++) {
      const at = row * stride + column;
      if (inside[at] !== 1) continue;
      const dx = originX_m + (column + 0.5) * cellX_m - x_m;
      const dy = originY_m + (row + 0.5) * cellY_m - y_m;
      const left = 1 - (dx * dx + dy * dy) / (radius_m * radius_m);
      const own = Math.abs(dx) <= cellX_m / 2 && Math.abs(dy) <= cellY_m / 2;
      const shape = left > 0 ? Math.cbrt(left) : own ? 1e-3 : 0;
      if (shape === 0) continue;
      places.push(at);
      shapes.push(shape);
      whole += shape;
    }
  if (whole === 0)
    throw new RangeError(`puddle at ${x_m}, ${y_m} m with radius ${radius_m} m: allowed over the top`);
  const scale = volume_m3 / (whole * cellX_m * cellY_m);
  for (const [i, at] of places.entries()) h[at]! += shapes[i]! * scale;
  return volume_m3;
}
