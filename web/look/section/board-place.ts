/** Places on the work from places on the picture, and paths drawn by hand made short. Pure. */
import type { LookMoveDocument } from '#core/look/look-document.ts';
import type { Drawing } from '#core/look/render/drawing.ts';
import { fitInto } from '#core/look/render/grid.ts';

export type Spot = [number, number];

export interface BoardPlaces {
  /** From CSS pixels of the picture, to the tenth of a millimetre. */
  readonly toWork: (x_px: number, y_px: number) => Spot;
  readonly toPicture: (place: readonly [number, number]) => Spot;
  readonly pixel_m: number;
}

/** For a picture of the top of this size. */
export function boardPlaces(drawing: Drawing, width: number, height: number): BoardPlaces {
  const { grid } = fitInto(drawing, width, height);
  const fine = (m: number) => Math.round(m * 1e4) / 1e4;
  return {
    pixel_m: grid.pixel_m,
    toWork: (x, y) => [fine(grid.left_m + x * grid.pixel_m), fine(grid.back_m - y * grid.pixel_m)],
    toPicture: ([x, y]) => [(x - grid.left_m) / grid.pixel_m, (grid.back_m - y) / grid.pixel_m],
  };
}

/** The path without places nearer than `tolerance_m` to the line between those that stay (Douglas & Peucker 1973), at most `most`. */
export function thinned(path: readonly Spot[], tolerance_m: number, most: number): Spot[] {
  let tolerance = tolerance_m;
  let made = thin(path, tolerance);
  while (made.length > most) {
    tolerance *= 1.5;
    made = thin(path, tolerance);
  }
  return made;
}

function thin(path: readonly Spot[], tolerance_m: number): Spot[] {
  if (path.length < 3) return path.map(([x, y]) => [x, y]);
  const [a, b] = [path[0]!, path.at(-1)!];
  let [far, at] = [0, 0];
  for (let i = 1; i < path.length - 1; i++) {
    const distance = fromLine(path[i]!, a, b);
    if (distance > far) [far, at] = [distance, i];
  }
  if (far <= tolerance_m) return [[...a], [...b]];
  return [...thin(path.slice(0, at + 1), tolerance_m).slice(0, -1), ...thin(path.slice(at), tolerance_m)];
}

function fromLine([x, y]: Spot, [ax, ay]: Spot, [bx, by]: Spot): number {
  const [dx, dy] = [bx - ax, by - ay];
  const long2 = dx * dx + dy * dy;
  const share = long2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long2));
  return Math.hypot(x - ax - share * dx, y - ay - share * dy);
}

/** Shorter than this a drag is a tap, px. */
const TAP_px = 6;
const MOST_PLACES = 24;

/**
 * The move a tap or a drag makes of what is held in the hand: a tap pours or swirls where it lands, a drag pulls, combs, pours a ribbon or says which
 * way to tilt. null: this tool needs a drag.
 */
export function drawnMove(
  tool: LookMoveDocument,
  drag: readonly Spot[],
  pixel_m: number,
): LookMoveDocument | null {
  const [from, to] = [drag[0]!, drag.at(-1)!];
  const longest = Math.max(...drag.map(([x, y]) => Math.hypot(x - from[0], y - from[1])));
  const tap = longest < TAP_px * pixel_m;
  const path = () => thinned(drag, 2 * pixel_m, MOST_PLACES);
  const long_m = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const heading_rad = Math.atan2(to[1] - from[1], to[0] - from[0]);
  switch (tool.kind) {
    case 'puddle':
      return { ...tool, path: tap ? [from] : path() };
    case 'stroke':
      return tap ? null : { ...tool, path: path() };
    case 'comb':
      return tap
        ? null
        : {
            ...tool,
            through: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2],
            heading_rad,
            pull_m: Math.min(2, long_m),
          };
    case 'swirl':
      return { ...tool, centre: from, ...(tap ? {} : { reach_m: Math.min(2, Math.max(0.001, long_m)) }) };
    case 'tilt':
      return tap ? null : { ...tool, heading_rad };
    case 'waver':
    case 'fogged edge':
    case 'clear buffer':
      return null;
  }
}
