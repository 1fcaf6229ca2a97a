/**
 * A dimensioned drawing of a piece as plain data: segments, edge styles and dimension lines, all in the piece's own axes.
 * Screen, PDF and DXF only put ink to it.
 */

import { bad, good, type Result } from '#core/quantity/problem.ts';
import { checkOutline } from './check-outline.ts';
import { cutOutDimensions, outlineDimensions, radiusLeaders } from './dimension-rules.ts';
import { placeDimensions } from './dimension-stack.ts';
import { cutOutPath, outlinePath } from './outline.ts';
import { bounds } from './path.ts';
import type { Bounds, CutOut, EdgeSpec, Path, Piece, Point, Segment } from './piece.ts';
import { PIECE_RULES, type PieceRules } from './piece-rules.ts';
import { reviewPiece } from './validate.ts';

export type DimensionLabel =
  | 'length'
  | 'width'
  | 'return length'
  | 'return width'
  | 'diameter'
  | 'edge length'
  | 'corner radius'
  | 'inside radius'
  | 'cut-out from left'
  | 'cut-out from front'
  | 'cut-out length'
  | 'cut-out width'
  | 'cut-out diameter';

export interface Dimension {
  readonly label: DimensionLabel;
  /** Cut-out or edge it speaks of; several that share it are listed with commas. */
  readonly of?: string;
  /** Negative only for a cut-out that lies before the left end or the front edge. */
  readonly value_m: number;
  /** The two measured points; extension lines start here. */
  readonly from: Point;
  readonly to: Point;
  /** Unit vector from the measured points towards the dimension line. */
  readonly offsetDirection: { readonly x: number; readonly y: number };
  /** 1 for the line nearest the piece, counting outwards; 0 for one drawn inside a hole. */
  readonly level: number;
  /** The dimension line itself, parallel to the measured direction. */
  readonly line: { readonly from: Point; readonly to: Point };
}

/** A note with an arrow: a radius, or a length with no room for a line of its own. */
export interface Leader {
  readonly label: DimensionLabel;
  readonly of?: string;
  readonly value_m: number;
  /** Tip of the arrow, on the outline. */
  readonly at: Point;
  /** Where the text stands. */
  readonly text: Point;
  /** How many corners it speaks for. */
  readonly count: number;
}

export type EdgeStyle = EdgeSpec['kind'] | 'dammed' | 'unknown';

export interface DrawnSegment extends Segment {
  readonly style: EdgeStyle;
}

export interface DrawnCutOut {
  readonly name: string;
  readonly segments: readonly DrawnSegment[];
  readonly centre: Point;
}

export interface Drawing {
  readonly outline: readonly DrawnSegment[];
  readonly cutOuts: readonly DrawnCutOut[];
  readonly dimensions: readonly Dimension[];
  readonly leaders: readonly Leader[];
  /** Of the outline. */
  readonly bounds: Bounds;
  /** With dimension lines and room for their figures: what the sheet has to show. */
  readonly extent: Bounds;
  /** Distance between neighbouring dimension lines: twice a readable text height at this scale. */
  readonly spacing_m: number;
}

/**
 * Draws the piece; answers with the outline's problems when there is nothing to draw. Faults elsewhere (a cut-out over an
 * edge, a missing edge spec) do not stop it: the drawing is where they are put right. Cut-outs whose own sizes make no
 * shape are left out; all findings come along as warnings, by the shop's own `rules`.
 */
export function dimensionedDrawing(piece: Piece, rules: PieceRules = PIECE_RULES): Result<Drawing> {
  const shape = checkOutline(piece.outline);
  if (shape.length > 0) return bad(...shape);
  const path = outlinePath(piece.outline);
  const review = reviewPiece(piece, rules);
  const box = bounds(path);
  const spacing_m = Math.max(box.maxX_m - box.minX_m, box.maxY_m - box.minY_m) / 18;
  const drawn = piece.cutOuts.flatMap((cutOut, index) => {
    const rim = drawable(cutOut, index, review.problems);
    return rim === undefined ? [] : [{ cutOut, rim }];
  });
  const wanted = [
    ...drawn.flatMap(({ cutOut, rim }) => cutOutDimensions(cutOut, rim, box)),
    ...outlineDimensions(piece.outline, path, box),
  ];
  const placed = placeDimensions(wanted, path, box, spacing_m);
  const leaders = [...radiusLeaders(piece.outline, path, box, spacing_m), ...placed.leaders];
  return good(
    {
      outline: path.map((s) => ({ ...s, style: styleOf(piece, s.edge) })),
      cutOuts: drawn.map(({ cutOut, rim }) => ({
        name: cutOut.name,
        segments: rim.map((s) => ({ ...s, style: cutOut.rim === 'wrapped' ? 'finished' : 'dammed' })),
        centre: cutOut.centre,
      })),
      dimensions: placed.dimensions,
      leaders,
      bounds: box,
      extent: around(
        [
          ...placed.dimensions.flatMap((d) => [d.line.from, d.line.to, d.from, d.to]),
          ...leaders.map((l) => l.text),
        ],
        box,
        spacing_m,
      ),
      spacing_m,
    },
    [...review.problems, ...review.warnings],
  );
}

function drawable(
  cutOut: CutOut,
  index: number,
  problems: readonly { readonly path: string; readonly code: string }[],
): Path | undefined {
  const unbuildable = new Set([
    'length.range',
    'corner.too-big',
    'oval.slender',
    'point.range',
    'angle.range',
  ]);
  const own = problems.filter((p) => p.path.startsWith(`cutOuts.${index}.`) && !p.path.includes('Height'));
  if (own.some((p) => unbuildable.has(p.code)) || problems.some((p) => p.code === 'cut-out.count'))
    return undefined;
  try {
    return cutOutPath(cutOut);
  } catch {
    // Its sizes were not looked at because the outline itself is unsound; then it is not drawn either.
    return undefined;
  }
}

function styleOf(piece: Piece, edge: string): EdgeStyle {
  return Object.hasOwn(piece.edges, edge) ? piece.edges[edge]!.kind : 'unknown';
}

function around(points: readonly Point[], box: Bounds, margin_m: number): Bounds {
  let { minX_m, minY_m, maxX_m, maxY_m } = box;
  for (const p of points) {
    minX_m = Math.min(minX_m, p.x_m);
    minY_m = Math.min(minY_m, p.y_m);
    maxX_m = Math.max(maxX_m, p.x_m);
    maxY_m = Math.max(maxY_m, p.y_m);
  }
  return {
    minX_m: minX_m - margin_m,
    minY_m: minY_m - margin_m,
    maxX_m: maxX_m + margin_m,
    maxY_m: maxY_m + margin_m,
  };
}
