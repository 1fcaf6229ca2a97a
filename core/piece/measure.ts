/** Areas, lengths, faces and mass of one top: what every quantity of a job starts from. */

import { bad, good, type Result } from '#core/quantity/problem.ts';
import { segmentLength_m, turning_rad } from './arc.ts';
import { cutOutPath, edgeNames, outlinePath } from './outline.ts';
import { bounds, centroid, pathArea_m2, pathLength_m } from './path.ts';
import {
  BODY_DENSITY_KG_M3,
  type CutOut,
  EASED_RADIUS_M,
  type EdgeMeasures,
  type EdgeSpec,
  type Path,
  type Piece,
  type PieceMeasures,
} from './piece.ts';
import { PIECE_RULES, type PieceRules } from './piece-rules.ts';
import {
  arrisRadius_m,
  developedHeight_m,
  faceArea_m2,
  planOverlap_m,
  undersideReturnArea_m2,
} from './profile.ts';
import { inscribedRadius_m, longestDiagonal_m } from './reach.ts';
import { reviewPiece } from './validate.ts';

export interface BodyBuild {
  /** Of the board; 740 kg/m3 when left out. */
  readonly density_kg_m3?: number;
  /**
   * The field sheet and the width of the strips under finished edges and wrapped rims that bring it to the body's
   * thickness. Left out, the body is taken as solid.
   */
  readonly buildUp?: { readonly boardThickness_m: number; readonly stripWidth_m: number };
}

/**
 * Measures a piece. Areas and lengths are exact for lines and arcs; plan area plus face areas is the true surface
 * (profile.ts). Answers with the findings of `validatePiece` when the piece is not sound; warnings come along.
 * Throws RangeError only for a body that is none: density not within 100 to 3000 kg/m3, board over the body's
 * thickness, strips not within 0 to 1 m.
 */
export function measurePiece(
  piece: Piece,
  body: BodyBuild = {},
  rules: PieceRules = PIECE_RULES,
): Result<PieceMeasures> {
  const { problems, warnings } = reviewPiece(piece, rules);
  if (problems.length > 0) return bad(...problems);
  const outline = outlinePath(piece.outline);
  const rims = piece.cutOuts.map(cutOutPath);
  const grossArea_m2 = pathArea_m2(outline);
  const topArea_m2 = rims.reduce((area, rim) => area - pathArea_m2(rim), grossArea_m2);
  const edges = [
    ...edgeNames(piece.outline).map((name) => measureEdge(name, piece.edges[name]!, outline)),
    ...piece.cutOuts.map((cutOut, i) => measureRim(cutOut, i, rims[i]!, piece.bodyThickness_m)),
  ];
  const finished = edges.filter((e) => e.kind === 'finished');
  const sum = (of: readonly EdgeMeasures[], value: (e: EdgeMeasures) => number): number =>
    of.reduce((total, e) => total + value(e), 0);
  const box = bounds(outline);
  const wrappedRimLength_m = sum(
    finished.filter((e) => !e.outer),
    (e) => e.length_m,
  );
  const finishedEdgeLength_m = sum(
    finished.filter((e) => e.outer),
    (e) => e.length_m,
  );
  return good(
    {
      topArea_m2,
      grossArea_m2,
      edges,
      finishedFaceArea_m2: sum(finished, (e) => e.faceArea_m2),
      undersideReturnArea_m2: sum(finished, (e) => e.undersideReturnArea_m2),
      finishedEdgeLength_m,
      wrappedRimLength_m,
      perimeter_m: pathLength_m(outline),
      bounds: box,
      centroid: centroid(outline),
      longestDiagonal_m: longestDiagonal_m(outline),
      halfShortSide_m: Math.min(box.maxX_m - box.minX_m, box.maxY_m - box.minY_m) / 2,
      inscribedRadius_m: inscribedRadius_m(outline),
      bodyMass_kg: bodyMass_kg(piece, topArea_m2, finishedEdgeLength_m + wrappedRimLength_m, body),
    },
    warnings,
  );
}

function measureEdge(name: string, spec: EdgeSpec, outline: Path): EdgeMeasures {
  let length_m = 0;
  let turn = 0;
  for (const s of outline) {
    if (s.edge !== name) continue;
    length_m += segmentLength_m(s);
    turn += turning_rad(s);
  }
  return {
    name,
    kind: spec.kind,
    length_m,
    faceHeight_m: spec.faceHeight_m,
    developedHeight_m: developedHeight_m(spec),
    planOverlap_m: planOverlap_m(spec),
    faceArea_m2: faceArea_m2(spec, length_m, turn),
    undersideReturnArea_m2: undersideReturnArea_m2(spec.undersideReturn_m, length_m, turn),
    arrisRadius_m: arrisRadius_m(spec),
    outer: true,
  };
}

/** The inside face of a hole: concave, so its path (counter-clockwise round the hole) turns the other way. */
function measureRim(cutOut: CutOut, index: number, rim: Path, bodyThickness_m: number): EdgeMeasures {
  const face = {
    faceHeight_m: cutOut.faceHeight_m ?? bodyThickness_m,
    profile: cutOut.profile ?? rimProfile(cutOut.faceHeight_m ?? bodyThickness_m),
  };
  const length_m = pathLength_m(rim);
  const turn = rim.reduce((sum, s) => sum - turning_rad(s), 0);
  return {
    name: cutOut.name,
    kind: cutOut.rim === 'wrapped' ? 'finished' : 'dammed',
    length_m,
    faceHeight_m: face.faceHeight_m,
    developedHeight_m: developedHeight_m(face),
    planOverlap_m: planOverlap_m(face),
    faceArea_m2: faceArea_m2(face, length_m, turn),
    undersideReturnArea_m2: 0,
    arrisRadius_m: arrisRadius_m(face),
    outer: false,
    cutOut: index,
  };
}

/** Square, eased as usual, or less on a face too low for it. */
function rimProfile(faceHeight_m: number): EdgeSpec['profile'] {
  return { kind: 'square eased', radius_m: Math.min(EASED_RADIUS_M, faceHeight_m) };
}

function bodyMass_kg(piece: Piece, topArea_m2: number, stripLength_m: number, body: BodyBuild): number {
  const density = body.density_kg_m3 ?? BODY_DENSITY_KG_M3;
  if (!(density >= 100 && density <= 3000))
    throw new RangeError(`measurePiece: density_kg_m3 ${density}; allowed: 100 to 3000 kg/m3`);
  if (body.buildUp === undefined) return density * topArea_m2 * piece.bodyThickness_m;
  const { boardThickness_m: board, stripWidth_m: strip } = body.buildUp;
  if (!(board > 0 && board <= piece.bodyThickness_m))
    throw new RangeError(
      `measurePiece: boardThickness_m ${board}; allowed: above 0 to ${piece.bodyThickness_m} m`,
    );
  if (!(strip >= 0 && strip <= 1))
    throw new RangeError(`measurePiece: stripWidth_m ${strip}; allowed: 0 to 1 m`);
  // Strips cannot weigh more than a solid body (they overlap at the corners of a small piece).
  const strips = Math.min(strip * stripLength_m, topArea_m2) * (piece.bodyThickness_m - board);
  return density * (topArea_m2 * board + strips);
}
