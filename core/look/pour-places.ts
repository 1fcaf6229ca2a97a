/** Where to pour so that every puddle lies where it is wanted once the later ones have pushed it. */
import type { Move, Place } from './move.ts';
import { carry } from './moves/carry.ts';

export interface WantedPuddle {
  readonly colour: number;
  readonly at: Place;
  readonly radius_m: number;
}

/**
 * The puddles in the order given, each poured where the later ones push it to its wanted place from. A place inside a later
 * puddle cannot be reached: there it is poured at the wanted place itself and pushed aside. Radii above 0, else RangeError.
 */
export function pouredToLieAt(wanted: readonly WantedPuddle[]): readonly Move[] {
  const poured: Move[] = [];
  const later: ReturnType<typeof carry>[] = [];
  for (let at = wanted.length - 1; at >= 0; at--) {
    const { colour, radius_m } = wanted[at]!;
    const speck = Float64Array.from(wanted[at]!.at);
    let reached = true;
    for (let i = later.length - 1; i >= 0 && reached; i--) reached = later[i]!.back(speck);
    const centre: Place = reached ? [speck[0]!, speck[1]!] : wanted[at]!.at;
    const move: Move = { kind: 'puddle', colour, centre, radius_m };
    later.push(carry(move));
    poured.push(move);
  }
  return poured.reverse();
}

const MOST_PARTS = 24;

/** A ribbon of this area along a path, as round puddles of equal size; one puddle for one place or a path of no length. */
export function ribbon(path: readonly Place[], area_m2: number, colour: number): WantedPuddle[] {
  const lengths = path.slice(1).map((p, at) => Math.hypot(p[0] - path[at]![0], p[1] - path[at]![1]));
  const length = lengths.reduce((sum, part) => sum + part, 0);
  // Middles 1.3 radii apart: close enough to run together, far enough that none lies in the next.
  const parts = Math.min(MOST_PARTS, Math.max(1, Math.round((length ** 2 * Math.PI) / (area_m2 * 1.69))));
  const radius_m = Math.sqrt(area_m2 / (parts * Math.PI));
  return Array.from({ length: parts }, (_, part) => {
    let left = parts === 1 ? length / 2 : (part / (parts - 1)) * length;
    let at = 0;
    while (at < lengths.length - 1 && left > lengths[at]!) left -= lengths[at++]!;
    const from = path[at]!;
    const to = path[at + 1] ?? from;
    const share = lengths[at] ? left / lengths[at]! : 0;
    return {
      colour,
      radius_m,
      at: [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])],
    };
  });
}
