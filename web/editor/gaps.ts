/** What is left of the top on the four sides of a cut-out: straight left, right, front and back of its centre, from rim to edge. */
import { cutOutPath, outlinePath } from '#core/piece/outline.ts';
import { bounds, flattenPath } from '#core/piece/path.ts';
import type { CutOut, Outline, Point } from '#core/piece/piece.ts';

export interface Gap {
  readonly side: 'left' | 'right' | 'front' | 'back';
  /** On the rim (its furthest reach that way, in line with the centre) and on the edge. */
  readonly from: Point;
  readonly to: Point;
  readonly left_m: number;
}

/** How far arcs may stray from the chords they are followed by. */
const FLAT_M = 0.00005;

/** Sides on which no edge is met (a centre outside the piece) are left out. Sizes as core/piece accepts them. */
export function gapsOf(cutOut: CutOut, outline: Outline): Gap[] {
  const edges = flattenPath(outlinePath(outline), FLAT_M);
  const hole = bounds(cutOutPath(cutOut));
  const { x_m, y_m } = cutOut.centre;
  const level = crossings(
    edges,
    y_m,
    (p) => p.y_m,
    (p) => p.x_m,
  );
  const upright = crossings(
    edges,
    x_m,
    (p) => p.x_m,
    (p) => p.y_m,
  );
  const below = (list: readonly number[], v: number) => list.filter((c) => c <= v).at(-1);
  const above = (list: readonly number[], v: number) => list.find((c) => c > v);
  const gaps: Gap[] = [];
  const left = below(level, x_m);
  const right = above(level, x_m);
  const front = below(upright, y_m);
  const back = above(upright, y_m);
  const across = (side: Gap['side'], rim_m: number, edge_m: number, sign: number): void => {
    gaps.push({ side, from: { x_m: rim_m, y_m }, to: { x_m: edge_m, y_m }, left_m: sign * (rim_m - edge_m) });
  };
  const along = (side: Gap['side'], rim_m: number, edge_m: number, sign: number): void => {
    gaps.push({ side, from: { x_m, y_m: rim_m }, to: { x_m, y_m: edge_m }, left_m: sign * (rim_m - edge_m) });
  };
  if (left !== undefined) across('left', hole.minX_m, left, 1);
  if (right !== undefined) across('right', hole.maxX_m, right, -1);
  if (front !== undefined) along('front', hole.minY_m, front, 1);
  if (back !== undefined) along('back', hole.maxY_m, back, -1);
  return gaps;
}

/** Where the closed line of points crosses a level, sorted. A point on the level counts as above it. */
function crossings(
  points: readonly Point[],
  level: number,
  height: (p: Point) => number,
  place: (p: Point) => number,
): number[] {
  const found: number[] = [];
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length]!;
    if (height(a) >= level === height(b) >= level) return;
    const share = (level - height(a)) / (height(b) - height(a));
    found.push(place(a) + (place(b) - place(a)) * share);
  });
  return found.sort((a, b) => a - b);
}
