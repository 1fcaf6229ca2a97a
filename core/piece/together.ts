/** Several pieces coated in one go, told as one: what a coat's quantities, steps and times are worked out from. */
import type { EdgeMeasures, PieceMeasures } from './piece.ts';

export interface NamedMeasures {
  readonly name: string;
  readonly measures: PieceMeasures;
}

/**
 * The measures of pieces that are poured together. Areas, lengths and masses are sums; edges are called "counter: front" and point to no
 * cut-out; sizes that say how far something reaches (longest diagonal, half of the short side, inscribed circle) are the largest of any
 * piece; bounds and middle are those of the first, since pieces have no place among each other. One piece comes back as it is.
 * @throws RangeError without any piece.
 */
export function together(pieces: readonly NamedMeasures[]): PieceMeasures {
  const [first] = pieces;
  if (first === undefined) throw new RangeError('no pieces: allowed from one');
  if (pieces.length === 1) return first.measures;
  const all = pieces.map(({ measures }) => measures);
  const sum = (value: (of: PieceMeasures) => number) => all.reduce((total, of) => total + value(of), 0);
  const most = (value: (of: PieceMeasures) => number) => Math.max(...all.map(value));
  return {
    topArea_m2: sum((of) => of.topArea_m2),
    grossArea_m2: sum((of) => of.grossArea_m2),
    edges: pieces.flatMap(({ name, measures }) => measures.edges.map((edge) => edgeOf(name, edge))),
    finishedFaceArea_m2: sum((of) => of.finishedFaceArea_m2),
    undersideReturnArea_m2: sum((of) => of.undersideReturnArea_m2),
    finishedEdgeLength_m: sum((of) => of.finishedEdgeLength_m),
    wrappedRimLength_m: sum((of) => of.wrappedRimLength_m),
    perimeter_m: sum((of) => of.perimeter_m),
    bounds: first.measures.bounds,
    centroid: first.measures.centroid,
    longestDiagonal_m: most((of) => of.longestDiagonal_m),
    halfShortSide_m: most((of) => of.halfShortSide_m),
    inscribedRadius_m: most((of) => of.inscribedRadius_m),
    bodyMass_kg: sum((of) => of.bodyMass_kg),
    parts: all.map(({ topArea_m2, edges }) => ({ topArea_m2, edges })),
  };
}

function edgeOf(piece: string, { cutOut: _own, ...edge }: EdgeMeasures): EdgeMeasures {
  return { ...edge, name: `${piece}: ${edge.name}` };
}
