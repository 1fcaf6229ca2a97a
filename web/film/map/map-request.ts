/** From a planned coat and what was chosen beside the map to the question the map answers. */
import type { FilmMapRequest } from '#core/film/film-map.ts';
import { edgeFlowsOf } from '#core/film/map-edges.ts';
import type { Coat } from '#core/mix/coat.ts';
import type { Piece } from '#core/piece/piece.ts';
import { edgesWorked_s } from '#core/pour/film-moments.ts';
import type { CoatPlan } from '#core/pour/plan.ts';
import { evenFrom_s, flowEnds_s, pouredAt_s, thetaBetween_per_Pa, thetaLeftAt_per_Pa } from './film-clock.ts';
import type { CupPuddle } from './puddle-layout.ts';

export interface MapChoices {
  /** Above 0; the page offers 1 to 5 mm. */
  readonly cell_m: number;
  /** An even film once the last cup is spread, or the puddles of the cups from the first pour. */
  readonly start: 'even' | 'puddles';
  /** Fall of the bench to the right and to the back, from -0.05 to 0.05. */
  readonly slope: { readonly x: number; readonly y: number };
  /** Moment shown, s on the plan's clock; null: gel. */
  readonly moment_s: number | null;
}

/** The first moment a map can show, s on the plan's clock. */
export function mapFrom_s(plan: CoatPlan, start: MapChoices['start']): number {
  return start === 'even' ? Math.min(evenFrom_s(plan), flowEnds_s(plan)) : plan.filmStart_s;
}

/**
 * The request of a map. The viscosity is that of the film the plan follows, all over the top. Edges stay dry until the plan works them, at
 * once where it has no step for it. Puddles poured after the moment shown are left out.
 * @throws RangeError as edgeFlowsOf.
 */
export function mapRequestOf(
  coat: Coat,
  plan: CoatPlan,
  piece: Piece,
  puddles: readonly CupPuddle[],
  choices: MapChoices,
): FilmMapRequest {
  const from_s = mapFrom_s(plan, choices.start);
  const worked_s = Math.max(from_s, (coat.wrapEdges ? edgesWorked_s(plan) : undefined) ?? from_s);
  const until_s = Math.max(from_s, choices.moment_s ?? flowEnds_s(plan));
  const theta_per_Pa = thetaBetween_per_Pa(plan, from_s, until_s);
  const { density_kg_m3, surfaceTension_N_m } = coat.card.model;
  const liquid = { density_kg_m3, surfaceTension_N_m };
  const common = {
    piece: { outline: piece.outline, cutOuts: piece.cutOuts },
    cell_m: choices.cell_m,
    theta_per_Pa,
    edges: edgeFlowsOf({
      piece,
      wrapped: coat.wrapEdges,
      film_m: coat.film_m,
      thetaDry_per_Pa: thetaBetween_per_Pa(plan, from_s, worked_s),
      theta_per_Pa: thetaLeftAt_per_Pa(plan, worked_s),
      liquid,
    }),
    slope: choices.slope,
    liquid,
  };
  if (choices.start === 'even') return { ...common, evenFilm_m: coat.film_m };
  return {
    ...common,
    puddles: puddles.flatMap(({ cup, x_m, y_m, volume_m3, radius_m }) => {
      const poured_s = pouredAt_s(plan, cup);
      if (poured_s > until_s) return [];
      const spent = Math.min(theta_per_Pa, thetaBetween_per_Pa(plan, from_s, poured_s));
      return [{ x_m, y_m, volume_m3, radius_m, theta_per_Pa: spent }];
    }),
  };
}
