/** What bench and board do to a film: a level reading, contaminated spots, divots. Closed forms, so a screen may ask at every key. */

import type { Liquid } from '#core/film/constants.ts';
import { type FloodAnswer, floodAnswer } from '#core/film/craters.ts';
import { type TiltAnswer, tiltAnswer } from '#core/film/tilt-answer.ts';

/** Assumed, and said to be, when there is no level reading: half a millimetre a metre, a common bench (common practice, no source). */
export const DEFAULT_SLOPE = 0.0005;
/** A small fisheye, and the low end of the angles met on silicone (common practice, no source). */
export const DEFAULT_SPOT_m = 0.001;
export const DEFAULT_ANGLE_deg = 30;
/** A scratch or dent that filler missed (common practice, no source). */
export const DEFAULT_DIVOT_m = 0.0003;

export interface SurfaceRequest {
  readonly film_m: number;
  /** Flow budget from the pour to gel, 1/Pa, above 0. */
  readonly theta_per_Pa: number;
  /** Longest side of the piece, m. */
  readonly length_m: number;
  readonly liquid: Liquid;
  /** Fall over run of the bench as read on a level, 0 to 0.05; left out: no reading. */
  readonly slope?: number | undefined;
  /** Radius of the worst spot, m, from 0. */
  readonly spotRadius_m?: number | undefined;
  /** 0 to 90. */
  readonly advancingAngle_deg?: number | undefined;
  /** From 0, m. */
  readonly divotDepth_m?: number | undefined;
}

export interface SurfaceOutlook {
  readonly tilt: TiltAnswer;
  readonly flood: FloodAnswer;
}

/** @throws RangeError outside the ranges of {@link SurfaceRequest}. */
export function surfaceOutlook(request: SurfaceRequest): SurfaceOutlook {
  const { film_m, theta_per_Pa, length_m, liquid } = request;
  return {
    tilt: tiltAnswer({
      slope: request.slope ?? DEFAULT_SLOPE,
      assumed: request.slope === undefined,
      length_m,
      thickness_m: film_m,
      theta_per_Pa,
      liquid,
    }),
    flood: floodAnswer({
      film_m,
      spotRadius_m: request.spotRadius_m ?? DEFAULT_SPOT_m,
      advancingAngle_deg: request.advancingAngle_deg ?? DEFAULT_ANGLE_deg,
      divotDepth_m: request.divotDepth_m ?? DEFAULT_DIVOT_m,
      liquid,
    }),
  };
}
