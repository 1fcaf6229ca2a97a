/** How far a top reaches: its longest diagonal, and the largest circle that fits in it. */

import { bounds, distanceToPath_m, flattenPath, pointInside } from './path.ts';
import type { Path, Point } from './piece.ts';

const FLAT_M = 0.00005;

/** Largest distance between two points of the path, m; arcs to 0.05 mm. */
export function longestDiagonal_m(path: Path): number {
  const hull = convexHull(flattenPath(path, FLAT_M));
  const n = hull.length;
  if (n < 2) return 0;
  // Rotating calipers: the far corner only ever moves on. Its neighbours are tried too, for parallel sides.
  let far = 1;
  let longest = 0;
  for (let i = 0; i < n; i += 1) {
    const a = hull[i]!;
    const b = hull[(i + 1) % n]!;
    while (cross(a, b, hull[(far + 1) % n]!) > cross(a, b, hull[far]!)) far = (far + 1) % n;
    for (const p of [hull[far]!, hull[(far + 1) % n]!])
      longest = Math.max(
        longest,
        Math.hypot(a.x_m - p.x_m, a.y_m - p.y_m),
        Math.hypot(b.x_m - p.x_m, b.y_m - p.y_m),
      );
  }
  return longest;
}

/** Corners of the smallest convex polygon round the points, counter-clockwise (Andrew 1979, monotone chain). */
export function convexHull(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((p, q) => p.x_m - q.x_m || p.y_m - q.y_m);
  const half = (run: readonly Point[]): Point[] => {
    const kept: Point[] = [];
    for (const p of run) {
      while (kept.length > 1 && cross(kept[kept.length - 2]!, kept[kept.length - 1]!, p) <= 0) kept.pop();
      kept.push(p);
    }
    kept.pop();
    return kept;
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

function cross(a: Point, b: Point, c: Point): number {
  return (b.x_m - a.x_m) * (c.y_m - a.y_m) - (b.y_m - a.y_m) * (c.x_m - a.x_m);
}

interface Cell {
  readonly x_m: number;
  readonly y_m: number;
  readonly half_m: number;
  /** Distance of its centre inside the path; negative outside. */
  readonly inside_m: number;
}

/**
 * Radius of the largest circle inside the path, m, no more than precision_m too small and never too big. Squares that
 * cannot hold a better centre are dropped, the rest are quartered (branch and bound on the distance function).
 * Throws RangeError unless precision_m is at least 1e-5 m.
 */
export function inscribedRadius_m(path: Path, precision_m = 0.0005): number {
  if (!(precision_m >= 1e-5))
    throw new RangeError(`inscribedRadius_m: precision_m ${precision_m}; allowed: 1e-5 m or more`);
  const box = bounds(path);
  const side = Math.min(box.maxX_m - box.minX_m, box.maxY_m - box.minY_m);
  if (!(side > 0)) return 0;
  const cell = (x_m: number, y_m: number, half_m: number): Cell => {
    const away = distanceToPath_m(path, { x_m, y_m });
    return { x_m, y_m, half_m, inside_m: pointInside(path, { x_m, y_m }) ? away : -away };
  };
  let open: Cell[] = [];
  const half = side / 2;
  for (let x = box.minX_m + half; x < box.maxX_m + half; x += side)
    for (let y = box.minY_m + half; y < box.maxY_m + half; y += side) open.push(cell(x, y, half));
  let best = Math.max(0, ...open.map((c) => c.inside_m));
  // Level by level: a square's best possible centre is half a diagonal better than its middle.
  while (open.length > 0) {
    const next: Cell[] = [];
    for (const c of open) {
      if (c.inside_m + c.half_m * Math.SQRT2 <= best + precision_m) continue;
      const h = c.half_m / 2;
      for (const [sx, sy] of [
        [-1, -1],
        [1, -1],
        [-1, 1],
        [1, 1],
      ] as const) {
        const quarter = cell(c.x_m + sx * h, c.y_m + sy * h, h);
        best = Math.max(best, quarter.inside_m);
        next.push(quarter);
      }
    }
    open = next;
  }
  return best;
}
