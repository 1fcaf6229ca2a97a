/** The edges of a piece that a coat is kept off, so that none goes without a word. */
import type { Coat } from '#core/mix/coat.ts';
import { wrappedEdges } from '#core/mix/quantity.ts';
import type { EdgeMeasures, PieceMeasures } from '#core/piece/piece.ts';

/** Edges and rims that no film is worked over, by what keeps it off them. */
export interface EdgesLeftOut {
  /** Finished edges of a coat that is dammed all round. */
  readonly dammed: readonly string[];
  /** Rims of cut-outs the resin is kept out of. */
  readonly rims: readonly string[];
  readonly walls: readonly string[];
  readonly seams: readonly string[];
}

/** Every edge and rim that is not wrapped, in the order of the piece. */
export function edgesLeftOut(
  coat: Pick<Coat, 'wrapEdges'>,
  measures: Pick<PieceMeasures, 'edges'>,
): EdgesLeftOut {
  const wrapped = new Set(wrappedEdges(coat, measures));
  const names = (kind: EdgeMeasures['kind']) =>
    measures.edges.filter((edge) => edge.kind === kind && !wrapped.has(edge)).map((edge) => edge.name);
  return { dammed: names('finished'), rims: names('dammed'), walls: names('wall'), seams: names('seam') };
}
