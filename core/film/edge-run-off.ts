/**
 * What drains over the edges of a coat whose edges stay dry for a while and are then wrapped. Until they are worked, a dry arris holds a
 * film of its own by surface tension and lets only the rest over; worked, it lets through what its radius lets through. The bill, the planned
 * moment and the answers by moment all ask here.
 */
import type { EdgeMeasures } from '#core/piece/piece.ts';
import { notNegative } from '#core/quantity/domain.ts';
import { DEFAULT_LIQUID, type Liquid } from './constants.ts';
import { runOff } from './run-off.ts';
import { DRY_ARRIS_ANGLE_deg, pinnedOnRoundArris } from './self-damming.ts';

export interface EdgeLossRequest {
  readonly arrisRadius_m: number;
  /** Length of ALL the wetted edges of the top, m: the size of the top limits them together. */
  readonly edgeLength_m: number;
  readonly area_m2: number;
  /** Film on the top, m, above 0. */
  readonly film_m: number;
  /** Flow budget spent from the film being down until the edges are worked, 1/Pa, from 0. */
  readonly thetaDry_per_Pa: number;
  /** Flow budget left when the edges are worked, 1/Pa, from 0. */
  readonly thetaLeft_per_Pa: number;
  /** Advancing angle on the dry arris, degrees, 0 to 90; 20 when left out. */
  readonly contactAngle_deg?: number | undefined;
  readonly liquid?: Liquid;
}

/**
 * Run-off per metre of one edge by gel, m2 (m3/m). What has gone over the dry arris is as much as a worked one would have let go with a part of
 * that budget, and with this part the edge goes on once it is worked. Losses are taken to grow with the root of the budget
 * to find the part: exact when the dry arris lets everything over or nothing, between them an interpolation (derived here).
 * Waiting never loses more than working the edge at once (but for up to 0.5 mL/m that surface tension may push back onto the top).
 * @throws RangeError as {@link runOff}, for figures out of range.
 */
export function edgeLoss_m2(request: EdgeLossRequest): number {
  const { arrisRadius_m, edgeLength_m, area_m2, film_m, thetaLeft_per_Pa } = request;
  const liquid = request.liquid ?? DEFAULT_LIQUID;
  const thetaDry_per_Pa = notNegative('thetaDry_per_Pa', request.thetaDry_per_Pa, '1/Pa');
  notNegative('thetaLeft_per_Pa', thetaLeft_per_Pa, '1/Pa');
  const over = (theta_per_Pa: number, filmOnArris_m?: number): number =>
    runOff({
      thickness_m: film_m,
      thetaLeft_per_Pa: theta_per_Pa,
      edgeLength_m,
      arrisRadius_m,
      area_m2,
      liquid,
      ...(filmOnArris_m === undefined ? {} : { filmOnArris_m }),
    }).lossPerMetre_m2;
  if (thetaDry_per_Pa === 0) return over(thetaLeft_per_Pa);
  const angle = request.contactAngle_deg ?? DRY_ARRIS_ANGLE_deg;
  const leaked = over(thetaDry_per_Pa, pinnedOnRoundArris(angle, arrisRadius_m, liquid).thickness_m);
  const worked = over(thetaDry_per_Pa);
  const share = worked > 0 ? (leaked / worked) ** 2 : 0;
  return Math.max(leaked, over(thetaLeft_per_Pa + thetaDry_per_Pa * share));
}

export interface EdgeRunOffRequest
  extends Pick<EdgeLossRequest, 'area_m2' | 'film_m' | 'thetaDry_per_Pa' | 'thetaLeft_per_Pa' | 'liquid'> {
  readonly edges: readonly Pick<EdgeMeasures, 'length_m' | 'arrisRadius_m'>[];
}

/** Run-off of each edge, m3, in the order given: {@link edgeLoss_m2} by its length. @throws RangeError as there. */
export function edgeRunOffs_m3(request: EdgeRunOffRequest): readonly number[] {
  const { edges, ...rest } = request;
  const edgeLength_m = edges.reduce((total, edge) => total + edge.length_m, 0);
  const perMetre = new Map<number, number>();
  return edges.map(({ length_m, arrisRadius_m }) => {
    const loss = perMetre.get(arrisRadius_m) ?? edgeLoss_m2({ ...rest, arrisRadius_m, edgeLength_m });
    perMetre.set(arrisRadius_m, loss);
    return loss * length_m;
  });
}
