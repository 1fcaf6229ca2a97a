/** Every kind of edge of a piece as its maker asks about it: when to wrap it, what stays, what runs off, how it drips. */
import { type DripAnswers, dripAnswers } from '#core/film/drip-answers.ts';
import { type EdgeAnswers, type EdgeMoment, edgeAnswers, edgeMoment } from '#core/film/edge-answers.ts';
import type { FlowBudget } from '#core/film/flow-budget.ts';
import type { Coat } from '#core/mix/coat.ts';
import { wrappedEdges } from '#core/mix/quantity.ts';
import type { EdgeMeasures, PieceMeasures } from '#core/piece/piece.ts';

/** Film wanted on a face in the end, as a share of what is put on, when nobody says: a rule of judgement. */
export const FACE_WANTED_SHARE = 0.6;

/** Edges that differ in nothing the film feels. */
export interface EdgeKind {
  readonly names: readonly string[];
  readonly length_m: number;
  readonly height_m: number;
  readonly arrisRadius_m: number;
}

export interface EdgeOutlook extends EdgeKind {
  readonly answers: EdgeAnswers;
  /** When the plan has the edges done, s on the plan's clock, and what gel then finds. */
  readonly planned: EdgeMoment;
  readonly drips: DripAnswers;
}

/** Wrapped edges and rims in kinds: equal developed height and arris, to a hundredth of a millimetre. In the order of the piece. */
export function edgeKinds(
  coat: Pick<Coat, 'wrapEdges'>,
  measures: Pick<PieceMeasures, 'edges'>,
): readonly EdgeKind[] {
  const kinds = new Map<string, EdgeMeasures[]>();
  for (const edge of wrappedEdges(coat, measures)) {
    const key = `${Math.round(edge.developedHeight_m * 1e5)} ${Math.round(edge.arrisRadius_m * 1e5)}`;
    const alike = kinds.get(key);
    if (alike === undefined) kinds.set(key, [edge]);
    else alike.push(edge);
  }
  return [...kinds.values()].map((alike) => ({
    names: alike.map((edge) => edge.name),
    length_m: alike.reduce((sum, edge) => sum + edge.length_m, 0),
    height_m: alike[0]!.developedHeight_m,
    arrisRadius_m: alike[0]!.arrisRadius_m,
  }));
}

export interface EdgesRequest {
  readonly coat: Coat;
  readonly measures: PieceMeasures;
  readonly series: FlowBudget;
  /** Last cup spread, and edges worked, s within the series. */
  readonly down_s: number;
  readonly wrapped_s: number;
  /** Film wanted on the faces, m, above 0. */
  readonly wanted_m: number;
}

/**
 * Answers for each kind of edge; empty when every edge is dammed. The run-off at the planned moment is that of the bill, by kind of edge
 * (both ask core/film/edge-run-off.ts). @throws RangeError as {@link edgeAnswers}.
 */
export function edgesOutlook(request: EdgesRequest): readonly EdgeOutlook[] {
  const { coat, measures, series, down_s, wrapped_s, wanted_m } = request;
  const kinds = coat.faceFilm_m > 0 ? edgeKinds(coat, measures) : [];
  const wettedLength_m = kinds.reduce((sum, kind) => sum + kind.length_m, 0);
  return kinds.map((kind) => {
    const ask = {
      series,
      height_m: kind.height_m,
      length_m: kind.length_m,
      arrisRadius_m: kind.arrisRadius_m,
      topFilm_m: coat.film_m,
      faceFilm_m: coat.faceFilm_m,
      wanted_m,
      area_m2: measures.topArea_m2,
      wettedLength_m,
      down_s,
      liquid: coat.card.model,
    };
    const planned = edgeMoment(ask, wrapped_s);
    return {
      ...kind,
      answers: edgeAnswers(ask),
      planned,
      drips: dripAnswers({
        series,
        from_s: wrapped_s,
        comesDown_m2: (planned.runOff_m3 + planned.shed_m3) / kind.length_m,
        liquid: coat.card.model,
      }),
    };
  });
}
