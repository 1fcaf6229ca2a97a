/** Where splashes stand on a top, seen from above. */
import { outlineCorners } from './corners.ts';
import { outlinePath } from './outline.ts';
import type { Outline, Point } from './piece.ts';
import { sideEdges } from './side-length.ts';

export interface StandingSplash {
  readonly side: 'back' | 'left' | 'right';
  /** Along the side. */
  readonly length_m: number;
  readonly height_m: number;
  readonly thickness_m: number;
}

export interface SplashStrip extends StandingSplash {
  readonly name: string;
  /** What it covers of the top, counter-clockwise: the first two lie on the side. */
  readonly corners: readonly [Point, Point, Point, Point];
}

export const SPLASH_NAMES = {
  back: 'backsplash',
  left: 'left side splash',
  right: 'right side splash',
} as const;

/** Which way the outline runs along a side, counter-clockwise. */
const RUNS = { back: { x: -1, y: 0 }, left: { x: 0, y: -1 }, right: { x: 0, y: 1 } } as const;

/**
 * The strip each splash covers: along its side from corner to corner, as deep as the splash is thick; a side splash ends at the face
 * of the backsplash. Of a bowed side it follows the straight line between its ends. None where the outline has no such side. The
 * outline must be one that can be drawn (`checkOutline` is empty).
 */
export function splashStrips(outline: Outline, splashes: readonly StandingSplash[]): SplashStrip[] {
  const back_m = splashes.find(({ side }) => side === 'back')?.thickness_m ?? 0;
  return splashes.flatMap((splash): SplashStrip[] => {
    const { side, thickness_m } = splash;
    const ends = sideEnds(outline, side);
    if (ends === null) return [];
    const run_m = Math.hypot(ends.to.x_m - ends.from.x_m, ends.to.y_m - ends.from.y_m);
    const along = { x: (ends.to.x_m - ends.from.x_m) / run_m, y: (ends.to.y_m - ends.from.y_m) / run_m };
    const at = (along_m: number, in_m: number): Point => ({
      x_m: ends.from.x_m + along.x * along_m - along.y * in_m,
      y_m: ends.from.y_m + along.y * along_m + along.x * in_m,
    });
    const start_m = side === 'left' ? back_m : 0;
    const end_m = run_m - (side === 'right' ? back_m : 0);
    if (!(end_m > start_m)) return [];
    const corners = [at(start_m, 0), at(end_m, 0), at(end_m, thickness_m), at(start_m, thickness_m)] as const;
    return [{ ...splash, name: SPLASH_NAMES[side], corners }];
  });
}

/** Its two outermost corners, before they are rounded, in the order the outline runs. */
function sideEnds(
  outline: Outline,
  side: StandingSplash['side'],
): { readonly from: Point; readonly to: Point } | null {
  const edges = new Set(sideEdges(outline, side));
  const points = endsOf(outline, edges);
  const run = RUNS[side];
  const along = (p: Point): number => p.x_m * run.x + p.y_m * run.y;
  const sorted = points.toSorted((a, b) => along(a) - along(b));
  const [from, to] = [sorted[0], sorted.at(-1)];
  return from === undefined || to === undefined || along(to) - along(from) < 1e-6 ? null : { from, to };
}

function endsOf(outline: Outline, edges: ReadonlySet<string>): Point[] {
  if (outline.shape === 'rectangle' || outline.shape === 'ell' || outline.shape === 'polygon') {
    const corners = outlineCorners(outline);
    return corners.flatMap((corner, i) =>
      edges.has(corner.edge) ? [corner, corners[(i + 1) % corners.length]!] : [],
    );
  }
  return outlinePath(outline).flatMap((s) => (edges.has(s.edge) ? [s.from, s.to] : []));
}
