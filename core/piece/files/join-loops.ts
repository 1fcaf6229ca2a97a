/** From loose lines and arcs to closed loops: ends that lie within the joining distance are brought together. */

import { reversePath } from '../path.ts';
import type { Path, Point, Segment } from '../piece.ts';
import type { Chain } from './chain.ts';
import { refuse } from './imported-drawing.ts';

export interface Gap {
  readonly at: Point;
  /** To the nearest other loose end. */
  readonly gap_m: number;
  readonly layer: string;
}

export interface Joined {
  readonly loops: readonly { readonly path: Path; readonly layer: string }[];
  readonly open: readonly Gap[];
  readonly count: number;
  readonly largestGap_m: number;
  /** Lines drawn twice, of which one was left out. */
  readonly doubled: number;
}

interface End {
  readonly chain: number;
  readonly last: boolean;
  readonly p: Point;
}

/** More ends than this in one place cannot be told apart. */
const MOST_IN_ONE_PLACE = 16;
/** Ends closer than this are one point even when nothing is to be joined, m. */
const EXACT_M = 1e-7;

export function joinLoops(chains: readonly Chain[], join_m: number): Joined {
  const loops = chains.filter((c) => c.closed).map((c) => ({ path: c.segments, layer: c.layer }));
  const { kept, doubled } = onceOnly(chains.filter((c) => !c.closed));
  const ends: End[] = kept.flatMap((c, chain) => [
    { chain, last: false, p: c.segments[0]!.from },
    { chain, last: true, p: c.segments[c.segments.length - 1]!.to },
  ]);
  const partner = matchEnds(ends, Math.max(join_m, EXACT_M));
  const done = new Array<boolean>(kept.length).fill(false);
  const open: End[] = [];
  let count = 0;
  let largestGap_m = 0;
  const walk = (first: number, closed: boolean): void => {
    const made: Segment[] = [];
    let at = first;
    do {
      const { chain, last } = ends[at]!;
      done[chain] = true;
      const run = last ? reversePath(kept[chain]!.segments) : kept[chain]!.segments;
      made.push(...bridge(made, run));
      const far = at ^ 1;
      const next = partner[far]!;
      if (next < 0) {
        open.push(ends[first]!, ends[far]!);
        return;
      }
      const gap = distance(ends[far]!.p, ends[next]!.p);
      if (gap > EXACT_M) {
        count += 1;
        largestGap_m = Math.max(largestGap_m, gap);
      }
      at = next;
    } while (at !== first);
    if (!closed || made.length === 0) return;
    made[made.length - 1] = { ...made[made.length - 1]!, to: made[0]!.from };
    loops.push({ path: made, layer: kept[ends[first]!.chain]!.layer });
  };
  // Open runs first, from their loose ends; what is left goes round.
  ends.forEach((end, i) => {
    if (partner[i]! < 0 && !done[end.chain]) walk(i, false);
  });
  ends.forEach((end, i) => {
    if (!end.last && !done[end.chain]) walk(i, true);
  });
  return { loops, open: gaps(open, kept), count, largestGap_m, doubled };
}

/** The next run, starting exactly where the last one ended. */
function bridge(made: readonly Segment[], run: readonly Segment[]): Segment[] {
  const before = made[made.length - 1];
  return before === undefined ? [...run] : [{ ...run[0]!, from: before.to }, ...run.slice(1)];
}

/** For each end the one it joins, nearest pairs first; -1 for none. */
function matchEnds(ends: readonly End[], reach_m: number): Int32Array {
  const cell = 2 * reach_m;
  const cells = new Map<string, number[]>();
  const key = (x: number, y: number): string => `${x}:${y}`;
  ends.forEach((end, i) => {
    const at = key(Math.floor(end.p.x_m / cell), Math.floor(end.p.y_m / cell));
    const list = cells.get(at);
    if (list === undefined) cells.set(at, [i]);
    else {
      list.push(i);
      if (list.length > MOST_IN_ONE_PLACE)
        refuse(
          'file.knot',
          'Too many lines end in one place to tell which goes on to which.',
          where(end.p),
          `up to ${MOST_IN_ONE_PLACE} ends`,
        );
    }
  });
  const pairs: { readonly a: number; readonly b: number; readonly gap: number }[] = [];
  ends.forEach((end, a) => {
    const x = Math.floor(end.p.x_m / cell);
    const y = Math.floor(end.p.y_m / cell);
    for (let i = x - 1; i <= x + 1; i += 1)
      for (let k = y - 1; k <= y + 1; k += 1)
        for (const b of cells.get(key(i, k)) ?? []) {
          if (b <= a) continue;
          const gap = distance(end.p, ends[b]!.p);
          if (gap <= reach_m) pairs.push({ a, b, gap });
        }
  });
  pairs.sort((p, q) => p.gap - q.gap || p.a - q.a || p.b - q.b);
  const partner = new Int32Array(ends.length).fill(-1);
  for (const { a, b } of pairs)
    if (partner[a]! < 0 && partner[b]! < 0) {
      partner[a] = b;
      partner[b] = a;
    }
  return partner;
}

/** Chains of one segment that repeat another, either way round, are dropped. */
function onceOnly(chains: readonly Chain[]): { readonly kept: Chain[]; readonly doubled: number } {
  const seen = new Set<string>();
  const kept = chains.filter((c) => {
    if (c.segments.length > 1) return true;
    const s = c.segments[0]!;
    const ends = [round(s.from), round(s.to)];
    const turned = ends[0]! > ends[1]!;
    const bulge = (turned ? -s.bulge : s.bulge).toFixed(6).replace('-0.000000', '0.000000');
    const name = `${turned ? ends.reverse().join() : ends.join()},${bulge}`;
    if (seen.has(name)) return false;
    seen.add(name);
    return true;
  });
  return { kept, doubled: chains.length - kept.length };
}

function round(p: Point): string {
  return `${Math.round(p.x_m * 1e7)} ${Math.round(p.y_m * 1e7)}`;
}

/** Loose ends with the way to the nearest other one; looked for among the first thousand. */
function gaps(open: readonly End[], chains: readonly Chain[]): Gap[] {
  const looked = open.slice(0, 1000);
  return looked.map((end, i) => ({
    at: end.p,
    layer: chains[end.chain]!.layer,
    gap_m: Math.min(...looked.map((other, k) => (k === i ? Infinity : distance(end.p, other.p)))),
  }));
}

function distance(p: Point, q: Point): number {
  return Math.hypot(p.x_m - q.x_m, p.y_m - q.y_m);
}

/** Where in the drawing, in its own axes. */
export function where(p: Point): string {
  return `at x ${(p.x_m * 1000).toFixed(2)} mm, y ${(p.y_m * 1000).toFixed(2)} mm`;
}
