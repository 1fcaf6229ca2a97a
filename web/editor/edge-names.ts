/** What becomes of the edges of a polygon, "edge 1" and on, when a corner comes or goes. */
import type { EdgeDocument } from '#core/job/document.ts';

export function edgeName(side: number): string {
  return `edge ${side + 1}`;
}

/** Side 0 for "edge 1"; null for a name that is none of a polygon's. */
export function sideOf(name: string): number | null {
  const found = /^edge (\d+)$/.exec(name);
  return found === null ? null : Number(found[1]) - 1;
}

/** Side `side` is cut in two: the new one is made as the old one was, the ones after it move up by one. */
export function withSplitEdge(edges: readonly EdgeDocument[], side: number): EdgeDocument[] {
  return edges.flatMap((edge) => {
    const at = sideOf(edge.edge);
    if (at === null || at < side) return [edge];
    if (at === side) return [edge, { ...edge, edge: edgeName(side + 1) }];
    return [{ ...edge, edge: edgeName(at + 1) }];
  });
}

/** The corner `side` leaves is gone: the side that arrived there goes on, this one is dropped, the ones after it move down. */
export function withoutEdge(edges: readonly EdgeDocument[], side: number): EdgeDocument[] {
  return edges.flatMap((edge) => {
    const at = sideOf(edge.edge);
    if (at === null || at < side) return [edge];
    return at === side ? [] : [{ ...edge, edge: edgeName(at - 1) }];
  });
}

/** Edges under their new names; one nobody described stays so. */
export function renamedEdges(
  edges: readonly EdgeDocument[],
  names: ReadonlyMap<string, string>,
): EdgeDocument[] {
  return edges.map((edge) => ({ ...edge, edge: names.get(edge.edge) ?? edge.edge }));
}
