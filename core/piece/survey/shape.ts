/** What the adjusted corners come to: angles, out of square, area, diagonals. */
import type { Point } from '#core/piece/piece.ts';
import { shoelace_m2, turnCosine, turnSine } from './polygon.ts';
import type { WallBow } from './survey.ts';

export interface CornerShape {
  /** Inside the piece, 0 to 2 pi. */
  readonly angle_rad: number;
  /**
   * How far the end of the shorter side at this corner lies off square, m; positive where the corner is wider than square. null
   * where it is more than 30 degrees from square, and not meant to be.
   */
  readonly outOfSquare_m: number | null;
}

export interface SurveyShape {
  readonly corners: readonly CornerShape[];
  readonly sides_m: readonly number[];
  readonly area_m2: number;
  /** Longer less shorter diagonal of a shape with four corners; null for others. */
  readonly diagonalDifference_m: number | null;
}

/**
 * Shape of corners in order, either way round.
 *
 * @param corners three or more, m.
 * @throws RangeError on fewer.
 */
export function surveyShape(corners: readonly Point[]): SurveyShape {
  const n = corners.length;
  if (n < 3) throw new RangeError(`${n} corners; three at least`);
  const places = corners.flatMap(({ x_m, y_m }) => [x_m, y_m]);
  const area = shoelace_m2(places);
  const way = area < 0 ? -1 : 1;
  const span = (i: number, j: number) =>
    Math.hypot(corners[i]!.x_m - corners[j]!.x_m, corners[i]!.y_m - corners[j]!.y_m);
  const sides_m = corners.map((_, i) => span(i, (i + 1) % n));
  return {
    corners: corners.map((_, i) => {
      const turn = Math.atan2(way * turnSine(places, i), turnCosine(places, i));
      const shorter = Math.min(sides_m[i]!, sides_m[(i + n - 1) % n]!);
      const off = Math.PI / 2 - Math.abs(turn);
      const square = Math.abs(off) <= Math.PI / 6;
      return {
        angle_rad: Math.PI - turn,
        outOfSquare_m: square ? shorter * Math.sin(turn > 0 ? off : -off) : null,
      };
    }),
    sides_m,
    area_m2: Math.abs(area),
    diagonalDifference_m: n === 4 ? Math.abs(span(0, 2) - span(1, 3)) : null,
  };
}

/**
 * The outline with a corner put in wherever a wall bows: on the side, moved out by the gap where the wall stands back, in where
 * it bulges. Bows past the end of their side are left out.
 *
 * @param corners adjusted, m, in the order of the survey.
 */
export function withWallBows(
  corners: readonly Point[],
  bows: readonly WallBow[],
  clockwise: boolean,
): Point[] {
  return corners.flatMap((from, i) => {
    const to = corners[(i + 1) % corners.length]!;
    const span = Math.hypot(to.x_m - from.x_m, to.y_m - from.y_m);
    if (!(span > 0)) return [from];
    const ux = (to.x_m - from.x_m) / span;
    const uy = (to.y_m - from.y_m) / span;
    const out = clockwise ? -1 : 1;
    const between = bows
      .filter((bow) => bow.from === i && bow.along_m > 0 && bow.along_m < span)
      .sort((a, b) => a.along_m - b.along_m)
      .map(({ along_m, gap_m }) => ({
        x_m: from.x_m + along_m * ux + out * gap_m * uy,
        y_m: from.y_m + along_m * uy - out * gap_m * ux,
      }));
    return [from, ...between];
  });
}
