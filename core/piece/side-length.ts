/** How long a side is from corner to corner, as a tape reads it before corners are rounded. */
import { outlineCorners } from './corners.ts';
import { type Facing, facings } from './facing.ts';
import { outlinePath } from './outline.ts';
import { bounds } from './path.ts';
import type { EllOutline, Outline } from './piece.ts';

/**
 * Length of the side named `edge`, m; null for a rim, a free path and a name the outline does not have. Of an L the two walls are
 * as long as its legs. Example: the back of a rectangle 1.2 m by 0.6 m is 1.2 m long whatever its corner radius.
 */
export function sideLength_m(outline: Outline, edge: string): number | null {
  if (outline.shape === 'ell') return ellSides_m(outline)[edge] ?? null;
  if (outline.shape !== 'rectangle' && outline.shape !== 'polygon') return null;
  const corners = outlineCorners(outline);
  const at = corners.findIndex((corner) => corner.edge === edge);
  const a = corners[at];
  const b = corners[(at + 1) % corners.length];
  return a === undefined || b === undefined ? null : Math.hypot(b.x_m - a.x_m, b.y_m - a.y_m);
}

/** Sides this near to the outermost one are part of it. */
const IN_LINE_M = 0.001;

/**
 * What a tape reads along the whole of one side, m: of an outline with named edges the edge of that name, of a free shape the edges
 * that look that way and lie furthest out (one that was cut in two counts as one), of any other the size over everything. The
 * outline must be one that can be drawn (`checkOutline` is empty).
 */
export function alongSide_m(outline: Outline, side: Facing): number {
  const named = sideLength_m(outline, side);
  if (named !== null) return named;
  const edges = furthest(outline, side);
  if (edges.length > 0)
    return edges.reduce((sum, { edge, run_m }) => sum + (sideLength_m(outline, edge) ?? run_m), 0);
  const box = bounds(outlinePath(outline));
  return isFlat(side) ? box.maxX_m - box.minX_m : box.maxY_m - box.minY_m;
}

/** Names of the edges that make up one side, as `alongSide_m` adds them up; none of a rim, or where no edge looks that way. */
export function sideEdges(outline: Outline, side: Facing): string[] {
  if (sideLength_m(outline, side) !== null) return [side];
  return furthest(outline, side).map(({ edge }) => edge);
}

const isFlat = (side: Facing): boolean => side === 'front' || side === 'back';

function furthest(outline: Outline, side: Facing): { readonly edge: string; readonly run_m: number }[] {
  const sign = side === 'front' || side === 'left' ? -1 : 1;
  const path = outlinePath(outline);
  const edges = [...facings(outline)].flatMap(([edge, looks]) => {
    if (looks !== side) return [];
    const ends = path.filter((s) => s.edge === edge).flatMap((s) => [s.from, s.to]);
    const along = ends.map((p) => (isFlat(side) ? p.x_m : p.y_m));
    const out = Math.max(...ends.map((p) => sign * (isFlat(side) ? p.y_m : p.x_m)));
    return [{ edge, out, run_m: Math.max(...along) - Math.min(...along) }];
  });
  const most = Math.max(...edges.map(({ out }) => out));
  return edges.filter(({ out }) => out > most - IN_LINE_M);
}

/** Said from the sizes, not from the corners: a typed 1.7 m stays 1.7 m to the last digit. */
function ellSides_m(ell: EllOutline): Readonly<Record<string, number>> {
  return {
    back: ell.length_m,
    front: ell.length_m - ell.returnWidth_m,
    'return end': ell.returnWidth_m,
    'return front': ell.returnLength_m - ell.width_m,
    [ell.side]: ell.returnLength_m,
    [ell.side === 'left' ? 'right' : 'left']: ell.width_m,
  };
}
