/** Does a top go between three walls, and can it be turned in? */
import type { Point } from '#core/piece/piece.ts';
import { convexHull } from '#core/piece/reach.ts';

export interface AlcoveWidth {
  /** What a square piece that slides straight in may measure. */
  readonly usable_m: number;
  readonly narrowest: 'back' | 'middle' | 'front';
  /** Widest less narrowest: the joint that shows where it is widest. */
  readonly range_m: number;
}

/**
 * An alcove is measured at the back, in the middle and at the front; the smallest decides.
 *
 * @param widths_m all positive.
 * @param clearance_m at each end, 0 or more.
 * @throws RangeError outside those, or when nothing is left.
 */
export function alcoveWidth(
  widths_m: { readonly back: number; readonly middle: number; readonly front: number },
  clearance_m = 0,
): AlcoveWidth {
  const places = ['back', 'middle', 'front'] as const;
  for (const place of places)
    if (!(widths_m[place] > 0))
      throw new RangeError(`width at the ${place} ${widths_m[place]} must be positive`);
  if (!(clearance_m >= 0)) throw new RangeError(`clearance_m ${clearance_m} must be 0 or more`);
  const narrowest = places.reduce((least, place) => (widths_m[place] < widths_m[least] ? place : least));
  const usable_m = widths_m[narrowest] - 2 * clearance_m;
  if (!(usable_m > 0)) throw new RangeError('the clearance leaves nothing of the alcove');
  const range_m = Math.max(...places.map((place) => widths_m[place])) - widths_m[narrowest];
  return { usable_m, narrowest, range_m };
}

export interface Swing {
  /** It can be turned right round with its back at the wall. */
  readonly free: boolean;
  /** Largest turn from its place before it binds, counter-clockwise and clockwise, 0 to pi. */
  readonly left_rad: number;
  readonly right_rad: number;
}

/** Turns are looked at this finely before the one that binds is halved down. */
const LOOK_RAD = Math.PI / 720;

/**
 * How far a piece lying flat, its rearmost point at the back wall, can be turned between the side walls of an alcove. What
 * reaches out beyond the depth of the side walls is free. Of a piece with inside corners the convex hull is turned.
 *
 * For a rectangle L by D in a deep alcove the answer is atan(D / L) - acos(W / sqrt(L^2 + D^2)), free where the diagonal is at
 * most W.
 *
 * @param outline corners of the piece as it will lie, back towards +y, m; three or more. Round edges flattened.
 * @param width_m between the side walls, positive.
 * @param depth_m of the side walls, from the back wall, positive.
 * @returns turns to a microradian; 0 where it does not even go in straight.
 * @throws RangeError outside those.
 */
export function largestSwing(outline: readonly Point[], width_m: number, depth_m: number): Swing {
  checkAlcove(outline, width_m, depth_m);
  const hull = convexHull(outline);
  const goes = (turn: number) => widthWithin_m(hull, turn, depth_m) <= width_m + 1e-9;
  const largest = (way: 1 | -1) => {
    if (!goes(0)) return 0;
    for (let turn = LOOK_RAD; turn < Math.PI + LOOK_RAD / 2; turn += LOOK_RAD) {
      if (goes(way * turn)) continue;
      let low = turn - LOOK_RAD;
      let high = turn;
      while (high - low > 1e-7) {
        const middle = (low + high) / 2;
        if (goes(way * middle)) low = middle;
        else high = middle;
      }
      return low;
    }
    return Math.PI;
  };
  const left_rad = largest(1);
  const right_rad = largest(-1);
  return { free: left_rad === Math.PI && right_rad === Math.PI, left_rad, right_rad };
}

/** Width between the side walls of the part that lies within `depth_m` of the back wall, the piece turned. */
function widthWithin_m(hull: readonly Point[], turn_rad: number, depth_m: number): number {
  const [least, most] = spanWithin_m(turned(hull, turn_rad), depth_m);
  return most - least;
}

function turned(corners: readonly Point[], turn_rad: number): Point[] {
  const cos = Math.cos(turn_rad);
  const sin = Math.sin(turn_rad);
  return corners.map(({ x_m, y_m }) => ({ x_m: x_m * cos - y_m * sin, y_m: x_m * sin + y_m * cos }));
}

/** Least and largest x of the part of a convex outline within `depth_m` of its rearmost point. */
function spanWithin_m(hull: readonly Point[], depth_m: number): readonly [number, number] {
  const front = Math.max(...hull.map(({ y_m }) => y_m)) - depth_m;
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  const take = (x: number) => {
    least = Math.min(least, x);
    most = Math.max(most, x);
  };
  hull.forEach(({ x_m, y_m }, i) => {
    if (y_m >= front) take(x_m);
    const next = hull[(i + 1) % hull.length]!;
    if (y_m < front !== next.y_m < front) take(x_m + ((front - y_m) / (next.y_m - y_m)) * (next.x_m - x_m));
  });
  return [least, most];
}

/**
 * Corners of a piece turned by `turn_rad` (counter-clockwise positive) and laid midway between the side walls, its rearmost point at
 * the back wall: the left wall is x = 0, the back wall y = 0, the front at negative y.
 *
 * @param outline as for `largestSwing`.
 * @throws RangeError for fewer than three corners, or width and depth that are not positive.
 */
export function turnedIn(
  outline: readonly Point[],
  turn_rad: number,
  width_m: number,
  depth_m: number,
): Point[] {
  checkAlcove(outline, width_m, depth_m);
  const placed = turned(outline, turn_rad);
  const back = Math.max(...placed.map(({ y_m }) => y_m));
  const [least, most] = spanWithin_m(convexHull(placed), depth_m);
  const left = (least + most - width_m) / 2;
  return placed.map(({ x_m, y_m }) => ({ x_m: x_m - left, y_m: y_m - back }));
}

function checkAlcove(outline: readonly Point[], width_m: number, depth_m: number): void {
  if (outline.length < 3) throw new RangeError(`${outline.length} corners; three at least`);
  if (!(width_m > 0 && depth_m > 0)) throw new RangeError('width and depth of the alcove must be positive');
}

/**
 * Lowered into an alcove one end first, a top needs the diagonal of its length and thickness between the side walls.
 *
 * @returns whether it goes, and the room left at the tightest, m (negative: short of it).
 * @throws RangeError unless all are positive.
 */
export function tiltIn(
  length_m: number,
  thickness_m: number,
  width_m: number,
): { readonly goes: boolean; readonly spare_m: number } {
  if (!(length_m > 0 && thickness_m > 0 && width_m > 0)) throw new RangeError('sizes must be positive');
  const spare_m = width_m - Math.hypot(length_m, thickness_m);
  return { goes: spare_m >= 0, spare_m };
}
