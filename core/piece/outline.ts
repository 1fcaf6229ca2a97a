/** From what the shop types (a rectangle, an L, an oval ...) to the closed path with its named edges. */

import type { Problem } from '#core/quantity/problem.ts';
import { checkOutline } from './check-outline.ts';
import { ellCorners, outlineCorners, rectangleCorners } from './corners.ts';
import { ellipsePath } from './ellipse.ts';
import { filletPath } from './fillet.ts';
import { counterClockwise, movePath } from './path.ts';
import type { CutOut, Outline, Path, PathOutline, Point, Segment } from './piece.ts';

/**
 * The outline as a closed counter-clockwise path of exact lines and arcs (an ellipse to ELLIPSE_TOLERANCE_M).
 * Throws RangeError with the first finding of `checkOutline` when the sizes cannot be built; ask that first for
 * anything a person typed.
 */
export function outlinePath(outline: Outline): Path {
  const problem: Problem | undefined = checkOutline(outline)[0];
  if (problem !== undefined)
    throw new RangeError(
      `outlinePath: ${problem.path} ${problem.read ?? ''}: ${problem.message}; allowed: ${problem.allowed ?? ''}`,
    );
  switch (outline.shape) {
    case 'rectangle':
    case 'ell':
      return filletPath(outlineCorners(outline));
    case 'polygon':
      return counterClockwise(filletPath(outlineCorners(outline)));
    case 'round':
      return roundPath(outline.diameter_m, 'rim', {
        x_m: outline.diameter_m / 2,
        y_m: outline.diameter_m / 2,
      });
    case 'ellipse':
      return movePath(ellipsePath(outline.length_m, outline.width_m, 'rim'), 0, {
        x_m: outline.length_m / 2,
        y_m: outline.width_m / 2,
      });
    case 'path':
      return counterClockwise(stepsPath(outline));
  }
}

/** The edge names a piece with this outline needs a spec for, in order, each once. Never throws, whatever the sizes. */
export function edgeNames(outline: Outline): string[] {
  switch (outline.shape) {
    case 'rectangle':
      return ['front', 'right', 'back', 'left'];
    case 'ell':
      return [...new Set(ellCorners(outline).map((c) => c.edge))];
    case 'round':
    case 'ellipse':
      return ['rim'];
    case 'polygon':
      return outline.corners.map((_, i) => `edge ${i + 1}`);
    case 'path':
      return [...new Set(outline.segments.map((step, i) => step.edge ?? `edge ${i + 1}`))];
  }
}

/** Four quarter arcs from the front, counter-clockwise. */
function roundPath(diameter_m: number, edge: string, centre: Point): Segment[] {
  const r = diameter_m / 2;
  const at = (x: number, y: number): Point => ({ x_m: centre.x_m + x * r, y_m: centre.y_m + y * r });
  const stops = [at(0, -1), at(1, 0), at(0, 1), at(-1, 0)];
  const bulge = Math.SQRT2 - 1; // tan(90 degrees / 4)
  return stops.map((from, i) => ({ kind: 'arc', from, to: stops[(i + 1) % 4]!, bulge, edge }));
}

/** An arc flatter than this strays under a micrometre from its chord over 10 m: it is a line. */
const FLAT_BULGE = 1e-7;

function stepsPath(outline: PathOutline): Segment[] {
  const segments: Segment[] = [];
  let from = outline.start;
  outline.segments.forEach((step, i) => {
    const last = i === outline.segments.length - 1;
    // A last step that ends within the closing gap is brought onto the start.
    const to = last ? outline.start : step.to;
    const bulge = step.kind === 'arc' && Math.abs(step.bulge) >= FLAT_BULGE ? step.bulge : 0;
    const edge = step.edge ?? `edge ${i + 1}`;
    segments.push({ kind: bulge === 0 ? 'line' : 'arc', from, to, bulge, edge });
    from = to;
  });
  return segments;
}

/**
 * The rim of a cut-out as a closed counter-clockwise path, every segment named after the cut-out. Throws RangeError
 * when a size is not positive, the corner radius is over half the short side, or the outline of a template cannot be built.
 */
export function cutOutPath(cutOut: CutOut): Path {
  const { centre, name, rotation_rad = 0 } = cutOut;
  if (cutOut.shape === 'round') {
    needPositive('diameter_m', cutOut.diameter_m);
    return roundPath(cutOut.diameter_m, name, centre);
  }
  if (cutOut.shape === 'template')
    return movePath(outlinePath(cutOut.outline), rotation_rad, centre).map((s) => ({ ...s, edge: name }));
  const { length_m, width_m } = cutOut;
  needPositive('length_m', length_m);
  needPositive('width_m', width_m);
  if (cutOut.shape === 'oval') return movePath(ellipsePath(length_m, width_m, name), rotation_rad, centre);
  const most = Math.min(length_m, width_m) / 2;
  const radius = cutOut.cornerRadius_m;
  if (!(radius >= 0 && radius <= most + 1e-9))
    throw new RangeError(`cutOutPath: cornerRadius_m ${radius}; allowed: 0 to ${most} m`);
  const corners = rectangleCorners(length_m, width_m, Math.min(radius, most)).map((c) => ({
    ...c,
    x_m: c.x_m - length_m / 2,
    y_m: c.y_m - width_m / 2,
    edge: name,
  }));
  return movePath(filletPath(corners), rotation_rad, centre);
}

function needPositive(argument: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value)))
    throw new RangeError(`cutOutPath: ${argument} ${value}; allowed: above 0 m, finite`);
}
