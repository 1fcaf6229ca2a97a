/** Which way the edges of a free shape look, where that is unmistakable. */
import { outlinePath } from './outline.ts';
import type { Outline } from './piece.ts';

export type Facing = 'front' | 'right' | 'back' | 'left';

/** An edge turned further than this from square, 15 degrees, looks to no side. */
const SQUARE_RAD = (15 * Math.PI) / 180;
const AROUND: readonly Facing[] = ['right', 'back', 'left', 'front'];

/**
 * The side each edge of a polygon or a path looks to, from the line between its two ends; edges that run aslant are left out, and so
 * are all edges of the shapes whose edges are named by their side already. Several may look the same way. The outline must be one
 * that can be drawn (`checkOutline` is empty).
 */
export function facings(outline: Outline): ReadonlyMap<string, Facing> {
  const found = new Map<string, Facing>();
  if (outline.shape !== 'polygon' && outline.shape !== 'path') return found;
  const runs = new Map<string, { x: number; y: number }>();
  for (const { edge, from, to } of outlinePath(outline)) {
    const run = runs.get(edge) ?? { x: 0, y: 0 };
    runs.set(edge, { x: run.x + to.x_m - from.x_m, y: run.y + to.y_m - from.y_m });
  }
  for (const [edge, { x, y }] of runs) {
    if (Math.hypot(x, y) < 1e-9) continue;
    // The top lies to the left of the path: out is a quarter turn to the right.
    const quarters = Math.atan2(-x, y) / (Math.PI / 2);
    const nearest = Math.round(quarters);
    if (Math.abs(quarters - nearest) * (Math.PI / 2) <= SQUARE_RAD)
      found.set(edge, AROUND[(nearest + 4) % 4]!);
  }
  return found;
}
