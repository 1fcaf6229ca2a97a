/** How large a cut-out is along its own axes, whichever way it is turned on the piece. */
import { outlinePath } from './outline.ts';
import { bounds } from './path.ts';
import type { CutOutShape } from './piece.ts';

/**
 * Length and width of the box round the hole before it is turned, m; the diameter twice for a round one.
 *
 * @throws RangeError for a template whose outline cannot be built (`checkOutline` says why).
 */
export function cutOutSize(hole: CutOutShape): { readonly length_m: number; readonly width_m: number } {
  switch (hole.shape) {
    case 'round':
      return { length_m: hole.diameter_m, width_m: hole.diameter_m };
    case 'template': {
      const box = bounds(outlinePath(hole.outline));
      return { length_m: box.maxX_m - box.minX_m, width_m: box.maxY_m - box.minY_m };
    }
    default:
      return { length_m: hole.length_m, width_m: hole.width_m };
  }
}
