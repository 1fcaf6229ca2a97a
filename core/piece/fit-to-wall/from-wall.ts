/** From the outline of the walls to the outline of the piece: each side moved in or out. */
import type { Point } from '#core/piece/piece.ts';
import { crossesItself, shoelace_m2 } from '#core/piece/survey/polygon.ts';
import { notNegative } from '#core/quantity/domain.ts';
import { bad, good, type Result } from '#core/quantity/problem.ts';

/** Joint left at a wall to be filled: 1/8 in (common practice, no source). */
export const CLEARANCE_M = 0.003175;
/** Widest joint that caulk fills well and looks right: 1/4 in (common practice, no source). */
export const WIDEST_CAULK_M = 0.00635;
/** Extra left on a side that is scribed: 1/4 in beyond the deepest gap (common practice, no source). */
export const SCRIBE_SPARE_M = 0.00635;

export type SideFit =
  /** Kept off the wall. */
  | { readonly kind: 'clearance'; readonly gap_m: number }
  /** Reaches past the line measured, as past a cabinet front. */
  | { readonly kind: 'overhang'; readonly reach_m: number }
  /** Left long, to be cut to the wall on site. */
  | { readonly kind: 'scribe'; readonly spare_m: number };

/**
 * Corners of the piece: side i, from corner i to the next, moved square to itself by its fit, neighbours met again.
 *
 * @param corners of the walls in order, either way round, m; three or more.
 * @param fits one a side; sizes 0 to 1 m.
 * @returns a problem where two neighbours lie in one line with different fits, or so much is taken away that nothing is left.
 * @throws RangeError when counts differ, a side has no length or a size is outside 0 to 1 m.
 */
export function pieceFromWalls(corners: readonly Point[], fits: readonly SideFit[]): Result<Point[]> {
  const n = corners.length;
  if (n < 3 || fits.length !== n)
    throw new RangeError(`${n} corners and ${fits.length} fits; as many, and three or more`);
  const way = shoelace_m2(flat(corners)) < 0 ? -1 : 1;
  const lines = corners.map((from, i) => {
    const to = corners[(i + 1) % n]!;
    const span = Math.hypot(to.x_m - from.x_m, to.y_m - from.y_m);
    if (!(span > 0)) throw new RangeError(`side ${i} has no length`);
    const ux = (to.x_m - from.x_m) / span;
    const uy = (to.y_m - from.y_m) / span;
    const out = outward_m(fits[i]!);
    return { ux, uy, x: from.x_m + way * out * uy, y: from.y_m - way * out * ux };
  });
  const moved: Point[] = [];
  for (let i = 0; i < n; i++) {
    const a = lines[(i + n - 1) % n]!;
    const b = lines[i]!;
    const cross = a.ux * b.uy - a.uy * b.ux;
    if (Math.abs(cross) < 1e-3) {
      // Two sides in one line: their fits have to agree, or the edge would have a step.
      const step = (b.x - a.x) * -a.uy + (b.y - a.y) * a.ux;
      if (Math.abs(step) > 1e-6)
        return bad({
          path: `sides.${i}`,
          code: 'fit.step',
          message: 'Two sides in one line are kept off by different amounts; that would leave a step.',
        });
      moved.push({ x_m: b.x, y_m: b.y });
      continue;
    }
    const t = ((b.x - a.x) * b.uy - (b.y - a.y) * b.ux) / cross;
    moved.push({ x_m: a.x + t * a.ux, y_m: a.y + t * a.uy });
  }
  const turnedOver = corners.some((_, i) => {
    const from = moved[i]!;
    const to = moved[(i + 1) % n]!;
    return (to.x_m - from.x_m) * lines[i]!.ux + (to.y_m - from.y_m) * lines[i]!.uy <= 0;
  });
  if (turnedOver || crossesItself(flat(moved)))
    return bad({
      path: 'sides',
      code: 'fit.nothing-left',
      message: 'So much is taken off that a side of the piece is gone.',
    });
  return good(moved);
}

function outward_m(fit: SideFit): number {
  const size = fit.kind === 'clearance' ? fit.gap_m : fit.kind === 'overhang' ? fit.reach_m : fit.spare_m;
  if (!(size >= 0 && size <= 1)) throw new RangeError(`a side is moved by ${size} m; 0 to 1`);
  return fit.kind === 'clearance' ? -size : size;
}

function flat(corners: readonly Point[]): number[] {
  return corners.flatMap(({ x_m, y_m }) => [x_m, y_m]);
}

export type WallJoint =
  /** The joint is everywhere within what caulk fills. */
  | { readonly way: 'caulk'; readonly widest_m: number }
  /** It would gape: leave this much and cut to the wall. */
  | { readonly way: 'scribe'; readonly widest_m: number; readonly spare_m: number };

/**
 * Caulk or scribe: a straight edge kept off a wall by `clearance_m` at its nearest point leaves that plus the whole range of
 * the wall's gaps at the farthest.
 *
 * @param gaps_m gaps under a straightedge, positive where the wall stands back, negative where it bulges; none: a flat wall.
 * @param clearance_m 0 or more.
 * @throws RangeError on a clearance below 0.
 */
export function wallJoint(
  gaps_m: readonly number[],
  clearance_m = CLEARANCE_M,
  caulk_m = WIDEST_CAULK_M,
  scribeSpare_m = SCRIBE_SPARE_M,
): WallJoint {
  notNegative('clearance_m', clearance_m, 'm');
  const range = Math.max(0, ...gaps_m) - Math.min(0, ...gaps_m);
  const widest_m = clearance_m + range;
  if (widest_m <= caulk_m) return { way: 'caulk', widest_m };
  return { way: 'scribe', widest_m, spare_m: range + scribeSpare_m };
}
