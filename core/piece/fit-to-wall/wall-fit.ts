/** What the walls leave for the piece: joints, alcove, length and depth to make it. */
import type { Point } from '#core/piece/piece.ts';
import { good, type Result } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { type AlcoveWidth, alcoveWidth } from './alcove.ts';
import { pieceFromWalls, type SideFit, type WallJoint, wallJoint } from './from-wall.ts';
import { squareLimit_m } from './wall-tolerances.ts';

/** Front overhang past the cabinet box: 1 in (25 to 38 mm is common practice, no source). */
export const FRONT_OVERHANG_M = 0.0254;
/** Past the cabinet at an open end: 1/2 in (13 to 25 mm is common practice, no source). */
export const END_OVERHANG_M = 0.0127;

export type AlcovePlace = 'back' | 'middle' | 'front';

export interface WallFit {
  /** Ends that stand at a wall, seen from the front; both: an alcove. */
  readonly ends: 'both' | 'left' | 'right' | 'neither';
  readonly joint: 'as the wall asks' | 'caulk' | 'scribe';
  readonly clearance_m: number;
  readonly widestCaulk_m: number;
  readonly scribeSpare_m: number;
  /** Largest gap under a straightedge along the back wall; null: not measured. */
  readonly backGap_m: number | null;
  /** Back wall to the front of the cabinet. */
  readonly depth_m: number | null;
  /** Of the cabinet, where an end is open. */
  readonly length_m: number | null;
  readonly overhang_m: number;
  readonly endOverhang_m: number;
  readonly alcove: Readonly<
    Record<AlcovePlace, { readonly width_m: number | null; readonly at_m: number | null }>
  > & {
    /** Depth of the side walls from the back wall. */
    readonly reach_m: number | null;
  };
}

export interface JointAnswer {
  readonly joint: WallJoint;
  /** Caulk was asked for, and the joint gapes wider than it fills. */
  readonly tooWide: boolean;
}

/**
 * The joint along a wall whose gaps range over `range_m`: as asked, or what the wall asks for.
 *
 * @param range_m 0 or more.
 * @throws RangeError outside that.
 */
export function jointAt(fit: WallFit, range_m: number): JointAnswer {
  const limit =
    fit.joint === 'caulk' ? Number.POSITIVE_INFINITY : fit.joint === 'scribe' ? -1 : fit.widestCaulk_m;
  const joint = wallJoint([range_m], fit.clearance_m, limit, fit.scribeSpare_m);
  return { joint, tooWide: joint.way === 'caulk' && joint.widest_m > fit.widestCaulk_m + 1e-9 };
}

export interface Taper {
  /** Front width less back width: negative where the walls close towards the front. */
  readonly opens_m: number;
  /** Between the two places. */
  readonly over_m: number;
  /** Both walls out of square by the most that is allowed to one of them (wall-tolerances.ts) would be twice this. */
  readonly limit_m: number;
}

/**
 * How the side walls run, from the widths at the back and at the front; null unless both and their places are known, the front one
 * farther from the back wall.
 */
export function taperOf({ alcove: { back, front } }: WallFit): Taper | null {
  if (back.width_m === null || front.width_m === null || back.at_m === null || front.at_m === null)
    return null;
  const over_m = front.at_m - back.at_m;
  if (!(over_m > 0.01)) return null;
  return { opens_m: front.width_m - back.width_m, over_m, limit_m: squareLimit_m(over_m) };
}

export interface PieceForWalls {
  readonly back: JointAnswer;
  /** null where no end stands at a wall, or in an alcove until all three widths are known. */
  readonly end: JointAnswer | null;
  /** Smallest of the three; null until they are known. */
  readonly width: AlcoveWidth | null;
  /** What to make it; null until what it hangs on is measured. */
  readonly length_m: number | null;
  readonly depth_m: number | null;
  /** Corners seen from above, front left first, the back at the wall; null until length and depth are known. */
  readonly corners: readonly Point[] | null;
}

/**
 * The rectangle to make for these walls. In an alcove the smallest width counts, less a clearance at each end; where the ends are
 * scribed it is made as long as the widest place plus the spare, to be cut to the walls.
 *
 * @returns a problem where the clearances leave nothing.
 */
export function pieceForWalls(fit: WallFit): Result<PieceForWalls> {
  const back = jointAt(fit, fit.backGap_m ?? 0);
  const { back: rear, middle, front } = fit.alcove;
  const widths =
    rear.width_m === null || middle.width_m === null || front.width_m === null
      ? null
      : { back: rear.width_m, middle: middle.width_m, front: front.width_m };
  const inAlcove = fit.ends === 'both';
  const bare = inAlcove && widths !== null ? alcoveWidth(widths) : null;
  const end = fit.ends === 'neither' || (inAlcove && bare === null) ? null : jointAt(fit, bare?.range_m ?? 0);
  const walls_m = inAlcove ? (bare?.usable_m ?? null) : fit.length_m;
  const part = { back, end, width: bare };
  if (walls_m === null && fit.depth_m === null)
    return good({ ...part, length_m: null, depth_m: null, corners: null });
  const open: SideFit = { kind: 'overhang', reach_m: fit.endOverhang_m };
  const atWall = (answer: JointAnswer, ends: number): SideFit =>
    answer.joint.way === 'scribe'
      ? { kind: 'scribe', spare_m: answer.joint.spare_m / ends }
      : { kind: 'clearance', gap_m: fit.clearance_m };
  const side = (name: 'left' | 'right') =>
    end !== null && (inAlcove || fit.ends === name) ? atWall(end, inAlcove ? 2 : 1) : open;
  // A size not measured yet stands in as a metre; only the other one is told.
  const [long, deep] = [walls_m ?? 1, fit.depth_m ?? 1];
  const made = pieceFromWalls(
    [
      { x_m: 0, y_m: 0 },
      { x_m: long, y_m: 0 },
      { x_m: long, y_m: deep },
      { x_m: 0, y_m: deep },
    ],
    [{ kind: 'overhang', reach_m: fit.overhang_m }, side('right'), atWall(back, 1), side('left')],
  );
  if (!made.ok) return made;
  const [a, b, c] = made.value as [Point, Point, Point];
  return good({
    ...part,
    length_m: walls_m === null ? null : b.x_m - a.x_m,
    depth_m: fit.depth_m === null ? null : c.y_m - b.y_m,
    corners: walls_m === null || fit.depth_m === null ? null : made.value,
  });
}

/** A size as it is cut, on the step of a tape: rounded down where the piece must go in, up where it is left to be cut. */
export function sizeToMake_m(size_m: number, left: boolean, system: System): number {
  const step_m = system === 'us' ? 0.0254 / 16 : 0.001;
  const steps = size_m / step_m;
  return (left ? Math.ceil(steps - 1e-6) : Math.floor(steps + 1e-6)) * step_m;
}
