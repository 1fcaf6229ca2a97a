/** What a level reading means for the film. */

import { positive } from '#core/quantity/domain.ts';
import { DEFAULT_LIQUID, type Liquid } from './constants.ts';
import { rangeFromViscosity, type Spread } from './ranges.ts';
import type { Reason } from './reason.ts';
import { tiltEndChangeOfLength_m, tiltFlux_m2_Pa } from './tilt.ts';

/** A difference of film along a top that is seen or felt: 10 % of it (a rule of judgement). */
export const TILT_MATTERS_share = 0.1;

export interface TiltRequest {
  /** Fall over run, 0 to 0.05: 1 mm per metre is 0.001. */
  readonly slope: number;
  /** Nobody has laid a level on the bench: the slope is only a case to think about, so nothing is said of the bench itself. */
  readonly assumed?: boolean;
  /** Of the top along the fall, m. */
  readonly length_m: number;
  readonly thickness_m: number;
  /** Flow budget from pour to gel, 1/Pa. */
  readonly theta_per_Pa: number;
  readonly liquid?: Liquid;
}

export interface TiltAnswer {
  /** Thickness of the low end less that of the high end, m. */
  readonly difference_m: Spread;
  readonly matters: boolean;
  /** Whether the slope was read on a level or only assumed. */
  readonly assumed: boolean;
  /** Slope at which it would begin to matter, or undefined when no slope up to 0.05 does. */
  readonly levelTo?: number;
  /** Extra that runs over a low wetted edge, m2 (m3 per metre). */
  readonly overLowEdge_m2: number;
  readonly reasons: readonly Reason[];
}

/**
 * Difference of thickness between the ends: twice the end change of the linear series (within 2 % at 1 mm/m, 15 % at 9 mm/m), never more than
 * twice the film.
 * Worked: 1 mm/m, 1.5 mm, Theta 240, 1.5 m -> 0.122 mm.
 * @throws RangeError outside the ranges of {@link TiltRequest}.
 */
export function tiltAnswer(request: TiltRequest): TiltAnswer {
  const { slope, length_m, theta_per_Pa } = request;
  const liquid = request.liquid ?? DEFAULT_LIQUID;
  const thickness_m = positive('thickness_m', request.thickness_m, 'm');
  const whole = (at: number): number =>
    Math.min(2 * tiltEndChangeOfLength_m(thickness_m, at, theta_per_Pa, length_m, liquid), 2 * thickness_m);
  const value = whole(slope);
  const limit_m = TILT_MATTERS_share * thickness_m;
  const atOne = 2 * tiltEndChangeOfLength_m(thickness_m, 0.001, theta_per_Pa, length_m, liquid);
  const levelTo = atOne > 0 ? (0.001 * limit_m) / atOne : Number.POSITIVE_INFINITY;
  const matters = value > limit_m;
  const assumed = request.assumed ?? false;
  return {
    difference_m: rangeFromViscosity(value, 0.5),
    matters,
    assumed,
    ...(levelTo <= 0.05 ? { levelTo } : {}),
    overLowEdge_m2: tiltFlux_m2_Pa(thickness_m, slope, liquid) * theta_per_Pa,
    reasons: [
      {
        says: saysOf(matters, assumed),
        formula: '2 S sqrt(rho g h^3 Theta/(3 pi)) at each end, S L/2 at most',
        numbers: { slope, thickness_m, theta_per_Pa, length_m, limit_m },
        source: 'thin-film flow down a slope, linear theory; checked by own solution of the film equation',
        range: rangeFromViscosity(value, 0.5),
        rule: 'A bubble of level, about 1 mm per metre, is good enough under 2 mm of film (common practice, no source).',
      },
    ],
  };
}

function saysOf(matters: boolean, assumed: boolean): string {
  if (assumed)
    return matters
      ? 'No level reading: with the fall assumed here the low end would get visibly more than the high end. Lay a level on the bench.'
      : 'No level reading: the fall assumed here would not show in this film.';
  return matters
    ? 'The low end gets visibly more than the high end: level the bench.'
    : 'Level enough for this film.';
}
