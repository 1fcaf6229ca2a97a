/** Where a composed look puts its puddles: spread over the work, at its edges, and clear of locked areas. */
import type { RandomStream } from '#core/numeric/random.ts';
import type { LookBrief } from './brief.ts';
import type { Look, Panel } from './look.ts';
import type { Place } from './move.ts';

export interface Ground {
  readonly tops: readonly Panel[];
  /** Places that may not be used: locked areas. */
  readonly taken: (p: Place) => boolean;
  /** The same place on the side that is designed, where a look is the same on both. */
  readonly fold: (p: Place) => Place;
}

/** Whether a place lies in a polygon of places. */
export function inCorners([x, y]: Place, corners: readonly Place[]): boolean {
  let inside = false;
  for (let i = 0, j = corners.length - 1; i < corners.length; j = i++) {
    const [xi, yi] = corners[i]!;
    const [xj, yj] = corners[j]!;
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
  }
  return inside;
}

export function topsOf(panels: Look['panels']): readonly Panel[] {
  return panels.filter((panel) => panel.kind === 'top' || panel.kind === 'piece');
}

const TRIES = 200;

/**
 * A place on one of the tops, each as likely as its area, `room_m` from edges and holes on eight sides where it can be (half the
 * tries ask for it); undefined when none was found (all locked).
 */
export function anyPlace({ tops, taken, fold }: Ground, stream: RandomStream, room_m = 0): Place | undefined {
  const all = tops.reduce((sum, top) => sum + top.width_m * top.depth_m, 0);
  for (let attempt = 0; attempt < TRIES; attempt++) {
    let pick = stream.uniform() * all;
    let at = 0;
    while (at < tops.length - 1 && pick > tops[at]!.width_m * tops[at]!.depth_m)
      pick -= tops[at]!.width_m * tops[at++]!.depth_m;
    const top = tops[at]!;
    const u = top.left_m + stream.uniform() * top.width_m;
    const v = top.front_m + stream.uniform() * top.depth_m;
    if (!top.inside(u, v)) continue;
    if (room_m > 0 && attempt < TRIES / 2 && !clear(top, u, v, room_m)) continue;
    const place = fold(top.toPlane(u, v));
    if (!taken(place)) return place;
  }
  return undefined;
}

function clear(top: Panel, u: number, v: number, room_m: number): boolean {
  for (let at = 0; at < 8; at++) {
    const turn = (at * Math.PI) / 4;
    if (!top.inside(u + room_m * Math.cos(turn), v + room_m * Math.sin(turn))) return false;
  }
  return true;
}

/** A place in the strip of this width along the edge the brief means; undefined when none was found. */
export function edgePlace(
  ground: Ground,
  edge: Exclude<LookBrief['edge'], 'none'>,
  strip_m: number,
  stream: RandomStream,
): Place | undefined {
  for (let attempt = 0; attempt < TRIES; attempt++) {
    const top = ground.tops[stream.below(ground.tops.length)]!;
    const long = 2 * (top.width_m + top.depth_m);
    const along = stream.uniform();
    const side =
      edge === 'all round'
        ? (['front', 'back', 'left', 'right'] as const)[
            along * long < 2 * top.width_m ? (along * long < top.width_m ? 0 : 1) : stream.below(2) + 2
          ]!
        : edge;
    const inwards = stream.uniform() * strip_m;
    const run = stream.uniform();
    const u =
      top.left_m + (side === 'left' ? inwards : side === 'right' ? top.width_m - inwards : run * top.width_m);
    const v =
      top.front_m +
      (side === 'front' ? inwards : side === 'back' ? top.depth_m - inwards : run * top.depth_m);
    if (!top.inside(u, v)) continue;
    const place = ground.fold(top.toPlane(u, v));
    if (!ground.taken(place)) return place;
  }
  return undefined;
}

/**
 * The best of some candidates: the one furthest from what is there, each distance taken over the room the two puddles need
 * (best-candidate sampling, Mitchell 1991, Computer Graphics 25(4), 157; from memory). More candidates: calmer, more even.
 */
export function spaced(
  there: readonly { readonly at: Place; readonly radius_m: number }[],
  radius_m: number,
  candidates: number,
  next: () => Place | undefined,
): Place | undefined {
  let best: Place | undefined;
  let room = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < candidates; i++) {
    const place = next();
    if (place === undefined) return best;
    let nearest = Number.POSITIVE_INFINITY;
    for (const { at, radius_m: other } of there)
      nearest = Math.min(nearest, Math.hypot(at[0] - place[0], at[1] - place[1]) / (radius_m + other));
    if (nearest > room) [best, room] = [place, nearest];
  }
  return best;
}
