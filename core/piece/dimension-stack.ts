/** Gives every dimension line a place: stacked in levels outside the piece so that no two lie on each other. */

import { meetings } from './crossing.ts';
import type { WantedDimension } from './dimension-rules.ts';
import type { Dimension, Leader } from './drawing.ts';
import type { Bounds, Path, Point, Segment } from './piece.ts';

type Chain = 'front' | 'back' | 'left' | 'right';

const directions: Record<Chain, { readonly x: number; readonly y: number }> = {
  front: { x: 0, y: -1 },
  back: { x: 0, y: 1 },
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
};

/** Levels a slanted edge's line may move out before it becomes a note. */
const MOST_ALONG = 3;

/**
 * Lines beside the piece fill levels outwards, short ones first, each on the first level where its stretch is free;
 * overall sizes come last and so stand outermost. Lines along slanted edges stand beside their edge when they meet
 * neither the piece nor another line; where there is no room the size becomes a note on the edge.
 */
export function placeDimensions(
  wanted: readonly WantedDimension[],
  path: Path,
  box: Bounds,
  spacing_m: number,
): { readonly dimensions: Dimension[]; readonly leaders: Leader[] } {
  const dimensions: Dimension[] = [];
  const leaders: Leader[] = [];
  for (const d of wanted.filter((w) => w.side === 'inside')) dimensions.push(insideHole(d));
  const lines: Segment[] = [];
  for (const d of wanted.filter((w) => w.side === 'along')) {
    const size = Math.hypot(d.to.x_m - d.from.x_m, d.to.y_m - d.from.y_m);
    // The path runs counter-clockwise: outside lies to the right.
    const out = { x: (d.to.y_m - d.from.y_m) / size, y: -(d.to.x_m - d.from.x_m) / size };
    const placed = alongEdge(d, out, path, lines, spacing_m);
    if (placed !== undefined) {
      dimensions.push(placed);
      lines.push(asSegment(placed));
    } else {
      const at = middle(d.from, d.to);
      const text = { x_m: at.x_m - (out.x * spacing_m) / 2, y_m: at.y_m - (out.y * spacing_m) / 2 };
      leaders.push({
        label: d.label,
        ...(d.of === undefined ? {} : { of: d.of }),
        value_m: d.value_m,
        at,
        text,
        count: 1,
      });
    }
  }
  // Chains start outside whatever stands beside the edges.
  const taken = lines.reduce(
    (b, s) => ({
      minX_m: Math.min(b.minX_m, s.from.x_m, s.to.x_m),
      minY_m: Math.min(b.minY_m, s.from.y_m, s.to.y_m),
      maxX_m: Math.max(b.maxX_m, s.from.x_m, s.to.x_m),
      maxY_m: Math.max(b.maxY_m, s.from.y_m, s.to.y_m),
    }),
    box,
  );
  for (const chain of ['front', 'back', 'left', 'right'] as const)
    dimensions.push(...stack(chain, merged(wanted.filter((w) => w.side === chain)), taken, spacing_m));
  return { dimensions, leaders };
}

/** Sizes that say the same (three taps on one line) are drawn once, naming all they speak of. */
function merged(wanted: readonly WantedDimension[]): WantedDimension[] {
  const kept: WantedDimension[] = [];
  for (const d of wanted) {
    const flat = d.side === 'front' || d.side === 'back';
    const ends = (w: WantedDimension): readonly [number, number] =>
      flat ? [w.from.x_m, w.to.x_m] : [w.from.y_m, w.to.y_m];
    const at = kept.findIndex(
      (k) => k.label === d.label && ends(k).every((end, i) => Math.abs(end - ends(d)[i]!) < 1e-6),
    );
    const known = kept[at];
    if (known === undefined) kept.push(d);
    else if (known.of !== undefined && d.of !== undefined)
      kept[at] = { ...known, of: `${known.of}, ${d.of}` };
  }
  return kept;
}

/** Below the middle of the hole for its length, left of it for its width: neither hides the other's figure. */
function insideHole(d: WantedDimension): Dimension {
  const size = Math.hypot(d.to.x_m - d.from.x_m, d.to.y_m - d.from.y_m);
  const side = d.label === 'cut-out length' ? 1 : -1;
  const out = {
    x: (side * (d.to.y_m - d.from.y_m)) / size,
    y: (-side * (d.to.x_m - d.from.x_m)) / size,
  };
  return withLine(d, out, 0, (d.across_m ?? 0) / 6);
}

function stack(
  chain: Chain,
  wanted: readonly WantedDimension[],
  box: Bounds,
  spacing_m: number,
): Dimension[] {
  const flat = chain === 'front' || chain === 'back';
  const span = (d: WantedDimension): readonly [number, number] => {
    const a = flat ? d.from.x_m : d.from.y_m;
    const b = flat ? d.to.x_m : d.to.y_m;
    return [Math.min(a, b), Math.max(a, b)];
  };
  const reach = (d: WantedDimension): number => span(d)[1] - span(d)[0];
  const order = [...wanted].sort((a, b) => Number(a.overall) - Number(b.overall) || reach(a) - reach(b));
  const levels: (readonly [number, number])[][] = [];
  const edge = { front: box.minY_m, back: box.maxY_m, left: box.minX_m, right: box.maxX_m }[chain];
  const out = directions[chain];
  return order.map((d) => {
    const [low, high] = span(d);
    // Room for the figure between two lines on one level.
    const gap = spacing_m / 2;
    const fits = (level: readonly (readonly [number, number])[]): boolean =>
      level.every(([l, h]) => high + gap <= l || low >= h + gap);
    let index = d.overall ? levels.length : levels.findIndex(fits);
    if (index < 0) index = levels.length;
    if (levels[index] === undefined) levels[index] = [];
    levels[index]!.push([low, high]);
    const at = edge + (out.x + out.y) * spacing_m * (index + 1);
    const base = flat ? d.from.y_m : d.from.x_m;
    return withLine(d, out, index + 1, (at - base) * (out.x + out.y));
  });
}

function alongEdge(
  d: WantedDimension,
  out: { readonly x: number; readonly y: number },
  path: Path,
  lines: readonly Segment[],
  spacing_m: number,
): Dimension | undefined {
  for (let level = 1; level <= MOST_ALONG; level += 1) {
    const placed = withLine(d, out, level, spacing_m * level * 0.6);
    const line = asSegment(placed);
    if ([...path, ...lines].every((s) => meetings(line, s).length === 0)) return placed;
  }
  return undefined;
}

/** The line is straight across from both measured points, as far out as the first of them needs. */
function withLine(
  d: WantedDimension,
  out: { readonly x: number; readonly y: number },
  level: number,
  offset_m: number,
): Dimension {
  const first = { x_m: d.from.x_m + out.x * offset_m, y_m: d.from.y_m + out.y * offset_m };
  // The second point may lie at another depth (a centre and an edge): bring it onto the same line.
  const along = (d.to.x_m - d.from.x_m) * out.x + (d.to.y_m - d.from.y_m) * out.y;
  const second = {
    x_m: d.to.x_m + out.x * (offset_m - along),
    y_m: d.to.y_m + out.y * (offset_m - along),
  };
  return {
    label: d.label,
    ...(d.of === undefined ? {} : { of: d.of }),
    value_m: d.value_m,
    from: d.from,
    to: d.to,
    offsetDirection: out,
    level,
    line: { from: first, to: second },
  };
}

function asSegment(d: Dimension): Segment {
  return { kind: 'line', from: d.line.from, to: d.line.to, bulge: 0, edge: '' };
}

function middle(a: Point, b: Point): Point {
  return { x_m: (a.x_m + b.x_m) / 2, y_m: (a.y_m + b.y_m) / 2 };
}
