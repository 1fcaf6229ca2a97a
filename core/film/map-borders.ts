/** Border faces of a thickness map as the flow goes on: dry ones open for good where the film beside them is too thick, or when their edge is worked. */
import { notNegative, positive } from '#core/quantity/domain.ts';
import type { EdgeFlow } from './map-edges.ts';
import type { FilmGrid } from './map-grid.ts';
import type { FilmMapResult } from './map-result.ts';
import type { Borders } from './map-sweep.ts';

export interface FilmBorders extends Borders {
  /** Opens the edges that are worked by this budget, 1/Pa; tells at what budget the next ones are, undefined: none. */
  work(theta_per_Pa: number): number | undefined;
  /** Opens dry faces whose film is thicker than they hold. */
  letGo(h: Float64Array, theta_per_Pa: number): void;
  /** Edges that let go before they were worked, each with the budget spent when its first place did. */
  places(): FilmMapResult['letGo'];
}

/** @throws RangeError for a name the piece has not, or a figure of a flow out of range. */
export function filmBorders(grid: FilmGrid, flows: Readonly<Record<string, EdgeFlow>>): FilmBorders {
  for (const name of Object.keys(flows))
    if (!grid.edges.includes(name))
      throw new RangeError(`edges: "${name}" is no edge of the piece; allowed ${grid.edges.join(', ')}`);
  const faces = grid.faceEdge.length;
  const open = new Uint8Array(faces);
  const held_m = new Float64Array(faces);
  const holds_m = new Float64Array(faces).fill(Number.POSITIVE_INFINITY);
  const beside = new Int32Array(faces);
  for (const lines of [grid.alongX, grid.alongY])
    for (let i = 0; i < lines.start.length; i++) {
      beside[lines.before[i]!] = lines.start[i]!;
      beside[lines.after[i]!] = lines.start[i]! + (lines.count[i]! - 1) * lines.step;
    }
  let dry: number[] = [];
  const workedAt_per_Pa = new Float64Array(faces).fill(Number.POSITIVE_INFINITY);
  for (let face = 0; face < faces; face++) {
    const flow = flows[grid.edges[grid.faceEdge[face]!]!] ?? { kind: 'dam' };
    if (flow.kind === 'dam') continue;
    held_m[face] = notNegative('heldFilm_m', flow.heldFilm_m ?? 0, 'm');
    if (flow.kind === 'wetted' && flow.dryUntil === undefined) {
      open[face] = 1;
      continue;
    }
    const holds = flow.kind === 'dry' ? flow.holds_m : flow.dryUntil!.holds_m;
    holds_m[face] = positive('holds_m', holds, 'm');
    if (flow.kind === 'wetted')
      workedAt_per_Pa[face] = notNegative('dryUntil theta_per_Pa', flow.dryUntil!.theta_per_Pa, '1/Pa');
    dry.push(face);
  }
  const first = new Map<number, number>();
  return {
    open,
    held_m,
    lost_m: new Float64Array(faces),
    work(theta_per_Pa) {
      let next = Number.POSITIVE_INFINITY;
      for (const face of dry)
        if (workedAt_per_Pa[face]! <= theta_per_Pa) open[face] = 1;
        else next = Math.min(next, workedAt_per_Pa[face]!);
      dry = dry.filter((face) => open[face] === 0);
      return Number.isFinite(next) ? next : undefined;
    },
    letGo(h, theta_per_Pa) {
      for (const face of dry)
        if (open[face] === 0 && h[beside[face]!]! > holds_m[face]!) {
          open[face] = 1;
          const edge = grid.faceEdge[face]!;
          if (!first.has(edge)) first.set(edge, theta_per_Pa);
        }
    },
    places: () => [...first].map(([edge, theta_per_Pa]) => ({ edge: grid.edges[edge]!, theta_per_Pa })),
  };
}
