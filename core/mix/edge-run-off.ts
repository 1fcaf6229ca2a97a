/**
 * What drains over the edges of a coat whose edges stay dry for a while and are then wrapped. Until they are worked, a dry arris holds a
 * film of its own by surface tension and lets only the rest over; worked, it lets through what its radius lets through.
 */
import type { Liquid } from '#core/film/constants.ts';
import { runOff } from '#core/film/run-off.ts';
import { pinnedOnRoundArris } from '#core/film/self-damming.ts';
import type { EdgeMeasures } from '#core/piece/piece.ts';

/** Advancing angle of resin on the dry arris, degrees (common practice, no source). */
export const DRY_ARRIS_ANGLE_deg = 20;

export interface EdgeRunOffRequest {
  readonly edges: readonly Pick<EdgeMeasures, 'length_m' | 'arrisRadius_m'>[];
  readonly area_m2: number;
  /** Film on the top, m, above 0. */
  readonly film_m: number;
  /** Flow budget spent from the film being down until the edges are worked, 1/Pa, from 0. */
  readonly thetaDry_per_Pa: number;
  /** Flow budget left when the edges are worked, 1/Pa, from 0. */
  readonly thetaLeft_per_Pa: number;
  readonly liquid: Liquid;
}

/**
 * Run-off of each edge, m3, in the order given. Losses grow with the root of the budget, so the two stretches add as squares: exact when the
 * dry arris lets everything over or nothing, between them an interpolation (derived here). Waiting never loses more than working the
 * edges at once. The size of the top limits all edges together.
 * @throws RangeError as runOff, for figures out of range.
 */
export function edgeRunOffs_m3(request: EdgeRunOffRequest): readonly number[] {
  const { edges, area_m2, film_m, thetaDry_per_Pa, thetaLeft_per_Pa, liquid } = request;
  const edgeLength_m = edges.reduce((total, edge) => total + edge.length_m, 0);
  const perMetre = new Map<number, number>();
  return edges.map(({ length_m, arrisRadius_m }) => {
    let loss = perMetre.get(arrisRadius_m);
    if (loss === undefined) {
      const over = (thetaOf_per_Pa: number, filmOnArris_m?: number) =>
        runOff({
          thickness_m: film_m,
          thetaLeft_per_Pa: thetaOf_per_Pa,
          edgeLength_m,
          arrisRadius_m,
          area_m2,
          liquid,
          ...(filmOnArris_m === undefined ? {} : { filmOnArris_m }),
        }).lossPerMetre_m2;
      loss = over(thetaLeft_per_Pa);
      if (thetaDry_per_Pa > 0) {
        const holds_m = pinnedOnRoundArris(DRY_ARRIS_ANGLE_deg, arrisRadius_m, liquid).thickness_m;
        const atOnce = over(thetaDry_per_Pa + thetaLeft_per_Pa);
        loss = Math.min(Math.hypot(loss, over(thetaDry_per_Pa, holds_m)), Math.max(loss, atOnce));
      }
      perMetre.set(arrisRadius_m, loss);
    }
    return loss * length_m;
  });
}
