/** Whether loops touch or cross themselves or one another, within a fixed amount of work. */

import { boxesApart, circleOf, segmentBounds, turning_rad } from '../arc.ts';
import { meetings } from '../crossing.ts';
import { cornerTurn_rad } from '../path.ts';
import type { Bounds, Path, Point, Segment } from '../piece.ts';
import { refuse } from './imported-drawing.ts';

export interface Crossing {
  readonly at: Point;
  readonly firstLoop: number;
  readonly secondLoop: number;
}

/** Pairs of segments with boxes that overlap, each of which costs about a microsecond. */
const MOST_PAIRS = 2_000_000;
/** Pairs looked at along the sweep. */
const MOST_LOOKS = 200_000_000;
/** Two neighbours meet at their joint; meetings this close to it say nothing new, m. */
const JOINT_M = 2e-5;

interface Boxed {
  readonly box: Bounds;
  readonly segment: Segment;
  readonly loop: number;
  readonly index: number;
}

/**
 * The first place found where two segments meet other than at the joint of neighbours; undefined when there is none.
 * Refuses a drawing so tangled that looking would take longer than a few seconds.
 */
export function firstCrossing(loops: readonly Path[]): Crossing | undefined {
  const all: Boxed[] = loops.flatMap((path, loop) =>
    path.map((segment, index) => ({ box: segmentBounds(segment), segment, loop, index })),
  );
  // Along the axis on which fewer boxes overlap.
  const low = (axis: 'x' | 'y') => (b: Boxed) => (axis === 'x' ? b.box.minX_m : b.box.minY_m);
  const high = (axis: 'x' | 'y') => (b: Boxed) => (axis === 'x' ? b.box.maxX_m : b.box.maxY_m);
  const axis = overlaps(all, low('x'), high('x')) <= overlaps(all, low('y'), high('y')) ? 'x' : 'y';
  const from = low(axis);
  const to = high(axis);
  const sorted = all.sort((a, b) => from(a) - from(b));
  let looks = 0;
  let pairs = 0;
  for (let i = 0; i < sorted.length; i += 1) {
    const a = sorted[i]!;
    for (let k = i + 1; k < sorted.length; k += 1) {
      const b = sorted[k]!;
      if (from(b) > to(a)) break;
      looks += 1;
      if (boxesApart(a.box, b.box)) continue;
      pairs += 1;
      if (pairs > MOST_PAIRS || looks > MOST_LOOKS)
        refuse(
          'file.tangled',
          'So many lines lie over one another that the drawing cannot be checked.',
          `more than ${pairs.toLocaleString('en-US')} lines close to crossing`,
          'outlines and cut-outs alone, without hatching or engraving',
        );
      const at = meetingOf(a, b, loops);
      if (at !== undefined) return { at, firstLoop: a.loop, secondLoop: b.loop };
    }
  }
  return undefined;
}

/** How many pairs overlap along one axis. */
function overlaps(all: readonly Boxed[], low: (b: Boxed) => number, high: (b: Boxed) => number): number {
  const starts = Float64Array.from(all, low).sort();
  const stops = Float64Array.from(all, high).sort();
  let open = 0;
  let count = 0;
  let k = 0;
  for (const start of starts) {
    while (k < stops.length && stops[k]! < start) {
      open -= 1;
      k += 1;
    }
    count += open;
    open += 1;
  }
  return count;
}

function meetingOf(a: Boxed, b: Boxed, loops: readonly Path[]): Point | undefined {
  if (a.loop !== b.loop) return meetings(a.segment, b.segment)[0];
  const count = loops[a.loop]!.length;
  const joints: Point[] = [];
  if ((a.index + 1) % count === b.index) joints.push(a.segment.to);
  if ((b.index + 1) % count === a.index) joints.push(b.segment.to);
  if (joints.length === 1) {
    const [before, after] = (a.index + 1) % count === b.index ? [a, b] : [b, a];
    if (runsOn(before.segment, after.segment)) return undefined;
  }
  if (joints.length === 2 && (count > 2 || oneCircle(a.segment, b.segment))) return undefined;
  return meetings(a.segment, b.segment).find(
    (p) => !joints.some((j) => Math.hypot(p.x_m - j.x_m, p.y_m - j.y_m) <= JOINT_M),
  );
}

/**
 * Neighbours that turn under a quarter at their joint and under a half each cannot meet again unless they bend towards
 * each other by more than a whole turn in all.
 */
function runsOn(before: Segment, after: Segment): boolean {
  const turn = cornerTurn_rad(before, after);
  const all = Math.abs(turning_rad(before)) + Math.abs(turn) + Math.abs(turning_rad(after));
  return Math.abs(turn) < Math.PI / 2 && all < Math.PI;
}

function oneCircle(a: Segment, b: Segment): boolean {
  const p = circleOf(a);
  const q = circleOf(b);
  if (p === undefined || q === undefined) return false;
  return (
    Math.sign(a.bulge) === Math.sign(b.bulge) &&
    Math.hypot(p.centre.x_m - q.centre.x_m, p.centre.y_m - q.centre.y_m) <= 1e-7
  );
}
