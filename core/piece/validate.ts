/** Whether a piece can be built and measured, and what the shop would not do although it could. */

import type { Problem } from '#core/quantity/problem.ts';
import { checkCorners } from './check-corners.ts';
import { checkCutOuts } from './check-cut-outs.ts';
import { checkEdges } from './check-edges.ts';
import { checkOutline, LARGEST_M, SMALLEST_M, sizeProblems } from './check-outline.ts';
import { selfMeeting } from './crossing.ts';
import { lengthText, pointText, rangeText } from './length-text.ts';
import { outlinePath } from './outline.ts';
import { bounds, pathArea_m2 } from './path.ts';
import type { Path, Piece } from './piece.ts';
import { PIECE_RULES, type PieceRules } from './piece-rules.ts';

export interface PieceReview {
  /** The piece cannot be measured until these are gone. */
  readonly problems: readonly Problem[];
  /** It can be measured, but the shop should know. */
  readonly warnings: readonly Problem[];
}

/** Least area of a top, m2: half the square of the smallest size. */
const LEAST_AREA_M2 = SMALLEST_M ** 2 / 2;

/** What keeps the piece from being measured; empty for a sound piece. Paths are those of the piece without units. */
export function validatePiece(piece: Piece): readonly Problem[] {
  return reviewPiece(piece).problems;
}

/** Problems and warnings together; what the shop should know by its own `rules`. Never throws. */
export function reviewPiece(piece: Piece, rules: PieceRules = PIECE_RULES): PieceReview {
  const body = sizeProblems('bodyThickness', 'body thickness', piece.bodyThickness_m, 0.003, 0.3);
  const shape = checkOutline(piece.outline);
  if (shape.length > 0) return { problems: [...shape, ...body], warnings: [] };
  const outline = outlinePath(piece.outline);
  const crossing = checkCrossing(piece, outline);
  // The two halves of a figure of eight cancel: its area says nothing.
  const sound = crossing.length > 0 ? crossing : checkExtent(outline);
  const box = bounds(outline);
  const edges = checkEdges(piece, Math.min(box.maxX_m - box.minX_m, box.maxY_m - box.minY_m));
  const corners = checkCorners(piece.outline, outline, rules);
  if (sound.length > 0)
    return { problems: [...sound, ...body, ...edges.problems], warnings: [...edges.warnings, ...corners] };
  const cutOuts = checkCutOuts(piece, outline, rules);
  return {
    problems: [...body, ...edges.problems, ...cutOuts.problems],
    warnings: [...edges.warnings, ...corners, ...cutOuts.warnings],
  };
}

function checkExtent(outline: Path): Problem[] {
  const box = bounds(outline);
  const problems: Problem[] = [];
  for (const [word, size] of [
    ['length', box.maxX_m - box.minX_m],
    ['width', box.maxY_m - box.minY_m],
  ] as const)
    if (!(size >= SMALLEST_M && size <= LARGEST_M * (1 + 1e-9)))
      problems.push({
        path: 'outline',
        code: 'outline.extent',
        message: `The whole ${word} of the outline is out of range.`,
        read: lengthText(size),
        allowed: rangeText(SMALLEST_M, LARGEST_M),
      });
  const area = pathArea_m2(outline);
  if (problems.length === 0 && area < LEAST_AREA_M2)
    problems.push({
      path: 'outline',
      code: 'outline.no-area',
      message: 'The outline encloses no area.',
      read: `${(area * 1e4).toFixed(2)} cm2 (${(area / 0.0254 ** 2).toFixed(3)} sq in)`,
      allowed: `${(LEAST_AREA_M2 * 1e4).toFixed(1)} cm2 or more`,
    });
  return problems;
}

function checkCrossing(piece: Piece, outline: Path): Problem[] {
  // The named shapes cannot cross themselves once their sizes fit.
  if (piece.outline.shape !== 'polygon' && piece.outline.shape !== 'path') return [];
  const met = selfMeeting(outline);
  if (met === undefined) return [];
  const first = outline[met.first]!.edge;
  const second = outline[met.second]!.edge;
  return [
    {
      path: 'outline',
      code: 'outline.crosses',
      message:
        first === second
          ? `The outline meets itself on "${first}".`
          : `The outline meets itself: "${first}" and "${second}" touch or cross.`,
      read: pointText(met.at.x_m, met.at.y_m),
      allowed: 'an outline that goes round once without touching itself',
    },
  ];
}
