/** How long a side is from corner to corner, as a tape reads it before corners are rounded. */
import { outlineCorners } from './corners.ts';
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
