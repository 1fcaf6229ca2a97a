/**
 * Everything a maker marks on the board and checks with a tape, as plain data in metres: overall sizes, corners and
 * cut-outs from two datum edges, diagonals for the glue-up, the edges, and sums that must come out. Paper and screen only put
 * words to it.
 */

import { bad, good, type Result } from '#core/quantity/problem.ts';
import { cutOutPath, edgeNames, outlinePath } from '../outline.ts';
import { bounds, pathLength_m } from '../path.ts';
import type { Bounds, CutOut, EdgeProfile, EdgeSpec, Outline, Piece } from '../piece.ts';
import { PIECE_RULES, type PieceRules } from '../piece-rules.ts';
import { reviewPiece } from '../validate.ts';
import { type CheckSum, checkSums } from './check-sums.ts';
import { type Coordinates, chooseDatums, type Datums, fromDatums } from './datum.ts';
import { checkDiagonals, type Diagonal } from './diagonals.ts';
import { markedArcs, markedCorners, type SetOutArc, type SetOutCorner } from './marked-corners.ts';
import { placeCutOut, type SetOutCutOut } from './placed-cut-outs.ts';

export interface LegendEdge {
  readonly name: string;
  readonly kind: EdgeSpec['kind'];
  /** With its share of the rounded corners. */
  readonly length_m: number;
  readonly faceHeight_m: number;
  readonly profile: EdgeProfile;
  readonly undersideReturn_m: number;
}

export interface LegendRim {
  readonly name: string;
  readonly rim: CutOut['rim'];
  readonly length_m: number;
  readonly faceHeight_m: number;
}

/** A round or oval outline, which has no corners: centre, half axes, and for an oval the two nails of a string. */
export interface Oval {
  readonly centre: Coordinates;
  readonly halfLength_m: number;
  readonly halfWidth_m: number;
  /** The two foci; both the centre for a round. */
  readonly nails: readonly [Coordinates, Coordinates];
  /** Once round both nails and the pencil: the long axis plus the distance of the nails. */
  readonly string_m: number;
}

export interface SetOut {
  readonly datums: Datums;
  readonly overall: { readonly length_m: number; readonly width_m: number };
  readonly bounds: Bounds;
  readonly perimeter_m: number;
  readonly bodyThickness_m: number;
  readonly corners: readonly SetOutCorner[];
  readonly arcs: readonly SetOutArc[];
  readonly oval: Oval | null;
  readonly diagonals: readonly Diagonal[];
  readonly cutOuts: readonly SetOutCutOut[];
  readonly edges: readonly LegendEdge[];
  readonly rims: readonly LegendRim[];
  readonly checks: readonly CheckSum[];
}

/**
 * Sets out a piece. Lengths in m, angles in rad; exact for lines and arcs (an oval to ELLIPSE_TOLERANCE_M). Answers with the
 * findings of `validatePiece` when the piece cannot be built as it stands, with its warnings, by the shop's own `rules`, when it can. Throws nothing.
 * Example: a rectangle 0.8 m by 0.6 m has the diagonals 1-3 and 2-4, 1 m each.
 */
export function setOut(piece: Piece, rules: PieceRules = PIECE_RULES): Result<SetOut> {
  const { problems, warnings } = reviewPiece(piece, rules);
  if (problems.length > 0) return bad(...problems);
  const path = outlinePath(piece.outline);
  const box = bounds(path);
  const perimeter_m = pathLength_m(path);
  const datums = chooseDatums(path);
  const overall = { length_m: box.maxX_m - box.minX_m, width_m: box.maxY_m - box.minY_m };
  const corners = markedCorners(piece.outline, path, datums);
  const arcs = markedArcs(piece.outline, path, datums);
  const cutOuts = piece.cutOuts.map((cutOut) => placeCutOut(cutOut, box, datums));
  const legend = edgeNames(piece.outline).map((name): LegendEdge => {
    const { kind, faceHeight_m, profile, undersideReturn_m } = piece.edges[name]!;
    const length_m = pathLength_m(path.filter((s) => s.edge === name));
    return { name, kind, length_m, faceHeight_m, profile, undersideReturn_m };
  });
  const rims = piece.cutOuts.map(
    (cutOut): LegendRim => ({
      name: cutOut.name,
      rim: cutOut.rim,
      length_m: pathLength_m(cutOutPath(cutOut)),
      faceHeight_m: cutOut.faceHeight_m ?? piece.bodyThickness_m,
    }),
  );
  return good(
    {
      datums,
      overall,
      bounds: box,
      perimeter_m,
      bodyThickness_m: piece.bodyThickness_m,
      corners,
      arcs,
      oval: ovalOf(piece.outline, datums),
      diagonals: checkDiagonals(corners),
      cutOuts,
      edges: legend,
      rims,
      checks: checkSums({
        overall,
        perimeter_m,
        edges: legend,
        cutOuts,
        corners,
        datums,
        straight: arcs.length === 0,
      }),
    },
    warnings,
  );
}

function ovalOf(outline: Outline, datums: Datums): Oval | null {
  if (outline.shape !== 'round' && outline.shape !== 'ellipse') return null;
  const round = outline.shape === 'round';
  const a = (round ? outline.diameter_m : outline.length_m) / 2;
  const b = (round ? outline.diameter_m : outline.width_m) / 2;
  const apart = Math.sqrt(Math.abs(a * a - b * b));
  const [x, y] = a >= b ? [apart, 0] : [0, apart];
  return {
    centre: fromDatums({ x_m: a, y_m: b }, datums),
    halfLength_m: a,
    halfWidth_m: b,
    nails: [fromDatums({ x_m: a - x, y_m: b - y }, datums), fromDatums({ x_m: a + x, y_m: b + y }, datums)],
    string_m: 2 * Math.max(a, b) + 2 * apart,
  };
}
