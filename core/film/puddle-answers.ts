/** How far a cup spreads, and how many puddles close a surface without help. */

import { positive, within } from '#core/quantity/domain.ts';
import { DEFAULT_LIQUID, type Liquid, specificWeight_N_m3 } from './constants.ts';
import { puddleRadius_m, puddleStopRadius_m, puddleThickness_m, ROUND_PUDDLE_CONSTANT } from './puddle.ts';
import { rangeFromViscosity, type Spread } from './ranges.ts';
import type { Reason } from './reason.ts';
import { wettingLimit_m } from './self-damming.ts';

export interface PuddleRequest {
  /** Volumes of the cups, m3, each above 0. */
  readonly cups_m3: readonly number[];
  /** Area to close, m2, and film wanted on it, m; above 0. */
  readonly area_m2: number;
  readonly film_m: number;
  /** Flow budget from the pour to the moment looked at (gel, or when the next step comes), 1/Pa, above 0. */
  readonly theta_per_Pa: number;
  /** Advancing angle on the dry surface, degrees, above 0, to 90; 20 when left out (common practice, no source). */
  readonly contactAngle_deg?: number;
  readonly liquid?: Liquid;
}

export interface CupSpread {
  readonly volume_m3: number;
  /** Radius reached, never beyond the wetting limit, m. */
  readonly radius_m: Spread;
  readonly middle_m: number;
  /** Whether the dry surface stops it before the flow does. */
  readonly stopsEarly: boolean;
}

export interface PuddleAnswers {
  readonly cups: readonly CupSpread[];
  /** Fewest equal puddles on a triangular grid that close the area by themselves; undefined when the film is below the wetting limit. */
  readonly fewest?: number;
  /** Distance between the middles of those puddles, m, and volume of each, m3. */
  readonly spacing_m?: number;
  readonly each_m3?: number;
  readonly reasons: readonly Reason[];
}

/**
 * Spread by Huppert 1982. Puddles of volume V on a triangular grid that makes the film wanted stand s = sqrt(2 V/(sqrt 3 h)) apart and close when
 * their radius reaches s/sqrt 3, the furthest point. Since R goes with V^(3/8) and s with V^(1/2), small puddles close and large
 * ones do not: V is at most (0.89391 sqrt 3 (rho g Theta/3)^(1/8) sqrt(sqrt 3 h/2))^8. Radii within 2 %, counts rounded up.
 * @throws RangeError outside the ranges of {@link PuddleRequest}.
 */
export function puddleAnswers(request: PuddleRequest): PuddleAnswers {
  const liquid = request.liquid ?? DEFAULT_LIQUID;
  const angle = within('contactAngle_deg', request.contactAngle_deg ?? 20, 0.1, 90, 'degrees');
  const area_m2 = positive('area_m2', request.area_m2, 'm2');
  const film_m = positive('film_m', request.film_m, 'm');
  const theta = positive('theta_per_Pa', request.theta_per_Pa, '1/Pa');
  const cups = request.cups_m3.map((volume_m3): CupSpread => {
    const flows_m = puddleRadius_m(volume_m3, theta, liquid);
    const stops_m = puddleStopRadius_m(volume_m3, angle, liquid);
    const range = rangeFromViscosity(flows_m, 1 / 8);
    const held = (radius_m: number): number => Math.min(radius_m, stops_m);
    return {
      volume_m3,
      radius_m: { low: held(range.low), value: held(flows_m), high: held(range.high) },
      middle_m:
        flows_m <= stops_m ? puddleThickness_m(0, volume_m3, theta, liquid) : wettingLimit_m(angle, liquid),
      stopsEarly: stops_m < flows_m,
    };
  });
  const limit_m = wettingLimit_m(angle, liquid);
  const first = request.cups_m3[0];
  const spread: Reason = {
    says: 'A puddle hardly cares about viscosity: eight times the flow makes it 30 % wider.',
    formula: 'R = 0.894 (rho g V^3 Theta/3)^(1/8), at most sqrt(V/(pi e)), e = 2 lc sin(theta/2)',
    numbers: {
      theta_per_Pa: theta,
      contactAngle_deg: angle,
      ...(first === undefined ? {} : { volume_m3: first }),
    },
    source: 'Huppert 1982; wetting limit de Gennes, Brochard-Wyart and Quere 2004 (from memory)',
    ...(cups[0] === undefined ? {} : { range: cups[0].radius_m }),
    rule: 'An ounce makes a spot about 17 cm across (common practice agrees).',
  };
  if (film_m <= limit_m)
    return {
      cups,
      reasons: [
        spread,
        {
          says: 'A film this thin does not close on a dry surface by itself: spread it by hand, or seal first.',
          formula: 'e = 2 lc sin(theta/2)',
          numbers: { film_m, limit_m },
          source: 'wetting limit, as above',
        },
      ],
    };
  const weight = specificWeight_N_m3(liquid);
  const most_m3 =
    (ROUND_PUDDLE_CONSTANT *
      Math.sqrt(3) *
      ((weight * theta) / 3) ** (1 / 8) *
      Math.sqrt((Math.sqrt(3) * film_m) / 2)) **
    8;
  const fewest = Math.max(1, Math.ceil((area_m2 * film_m) / most_m3));
  const each_m3 = (area_m2 * film_m) / fewest;
  return {
    cups,
    fewest,
    each_m3,
    spacing_m: Math.sqrt((2 * each_m3) / (Math.sqrt(3) * film_m)),
    reasons: [
      spread,
      {
        says:
          fewest === 1
            ? 'One puddle closes the surface without help.'
            : `${fewest} puddles or more close the surface without help.`,
        formula: 's = sqrt(2 V/(sqrt 3 h)); closed when R = s/sqrt 3',
        numbers: { area_m2, film_m, largestPuddle_m3: most_m3 },
        source: 'geometry on Huppert 1982',
      },
    ],
  };
}
