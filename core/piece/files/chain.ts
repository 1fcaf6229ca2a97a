/** Runs of lines and arcs, each starting where the last ended, as a file gives them. */

import { chord_m } from '../arc.ts';
import type { Point, Segment } from '../piece.ts';
import { MOST_VERTICES, refuse } from './imported-drawing.ts';

export interface Chain {
  readonly segments: readonly Segment[];
  readonly layer: string;
  readonly closed: boolean;
}

/** Shorter parts are taken into their neighbour, m: half the tolerance curves are flattened to. */
const SPECK_M = 2e-6;
/** Gathers segments into chains and counts what they come to. */
export interface ChainMaker {
  /** A chain of segments that follow one another; ends a hair apart are brought together. */
  add(segments: readonly Segment[], layer: string, closed: boolean): void;
  readonly chains: Chain[];
}

export function chainMaker(): ChainMaker {
  const chains: Chain[] = [];
  let count = 0;
  return {
    chains,
    add(segments, layer, closed) {
      count += segments.length;
      if (count > 2 * MOST_VERTICES) tooMany();
      const made = linked(segments, closed);
      if (made.length > 0) chains.push({ segments: made, layer, closed });
    },
  };
}

export function tooMany(): never {
  refuse(
    'file.too-many-points',
    'The drawing has more points than any top.',
    `more than ${MOST_VERTICES.toLocaleString('en-US')}`,
    `up to ${MOST_VERTICES.toLocaleString('en-US')} points`,
  );
}

function linked(segments: readonly Segment[], closed: boolean): Segment[] {
  const made: Segment[] = [];
  let from: Point | undefined;
  for (const s of segments) {
    const next = { ...s, from: from ?? s.from };
    if (chord_m(next) < SPECK_M) continue;
    made.push(next);
    from = next.to;
  }
  if (closed && made.length > 0) {
    const last = made[made.length - 1]!;
    const start = made[0]!.from;
    const gap = Math.hypot(last.to.x_m - start.x_m, last.to.y_m - start.y_m);
    if (gap <= 2 * SPECK_M) made[made.length - 1] = { ...last, to: start };
    else made.push({ kind: 'line', from: last.to, to: start, bulge: 0, edge: '' });
  }
  return made;
}
