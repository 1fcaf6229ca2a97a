/**
 * Will a coat close over a contaminated spot? A film is held open by a spot of radius R with contact angle theta unless it is thicker than the
 * axisymmetric meniscus around a dry disc (own solution of the Young-Laplace equation; the unstable hole of Taylor and Michael
 * 1973, J. Fluid Mech. 58, 625). Closing uses the advancing angle, opening the receding one. Statics only: fresh contamination
 * carried into the resin (surface-tension flow) is not in it and is not cured by thickness.
 */

import { notNegative, positive, within } from '#core/quantity/domain.ts';
import { capillaryLength_m, DEFAULT_LIQUID, type Liquid } from './constants.ts';
import { interpolate, monotoneTable } from './monotone-table.ts';
import type { Reason } from './reason.ts';
import { wettingLimit_m } from './self-damming.ts';

const angles_deg = [0, 10, 20, 30, 45, 60, 90] as const;
/** Radii of spots for the default liquid, mm. */
const radii_mm = [0.25, 0.5, 1, 2, 5, 10, 20] as const;
/** Film needed, mm, for the default liquid: rows as the angles, columns as the radii. */
const needed_mm: readonly (readonly number[])[] = [
  [0, 0, 0, 0, 0, 0, 0],
  [0.094, 0.1359, 0.1822, 0.2258, 0.2689, 0.289, 0.3007],
  [0.1869, 0.2704, 0.3631, 0.45, 0.5361, 0.576, 0.5993],
  [0.2774, 0.4023, 0.5411, 0.6713, 0.7997, 0.859, 0.8936],
  [0.4059, 0.592, 0.7997, 0.9943, 1.1847, 1.2718, 1.3223],
  [0.5219, 0.7675, 1.0437, 1.302, 1.5519, 1.6647, 1.7295],
  [0.6962, 1.0518, 1.4637, 1.849, 2.2093, 2.3653, 2.4526],
];
/** Each row as a share of its wide limit 2 lc sin(theta/2), against the logarithm of the radius: flat ends, so no overshoot. */
const shares = needed_mm.map((row, i) =>
  i === 0
    ? undefined
    : monotoneTable(
        radii_mm.map((radius) => Math.log(radius)),
        row.map((film) => film / (wettingLimit_m(angles_deg[i]!) * 1000)),
      ),
);

/**
 * Film that closes over a spot, m. Interpolated in radius and angle, within 1 % (below 0.25 mm, where the small-spot formula
 * R sin th [ln(4 lc/(R (1 + cos th))) - 0.5772] takes over, and above 20 mm, where the share goes to 1 as 1/R). Scales with lc.
 * Worked: 30 degrees, R 1 mm -> 0.541 mm.
 * @param contactAngle_deg 0 to 90 @param radius_m of the spot, from 0
 * @throws RangeError outside these.
 */
export function filmOverSpot_m(
  contactAngle_deg: number,
  radius_m: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  const angle = within('contactAngle_deg', contactAngle_deg, 0, 90, 'degrees');
  notNegative('radius_m', radius_m, 'm');
  if (angle === 0 || radius_m === 0) return 0;
  const length_m = capillaryLength_m(liquid);
  const radius_mm = (radius_m / length_m) * capillaryLength_m() * 1000;
  const limit_m = wettingLimit_m(angle, liquid);
  if (radius_mm < radii_mm[0]) {
    const rad = (angle * Math.PI) / 180;
    const small = (at: number): number =>
      at * Math.sin(rad) * (Math.log((4 * length_m) / (at * (1 + Math.cos(rad)))) - 0.5772156649);
    // its error goes with the radius squared: joined so to the table at its first radius
    const edge_m = (radii_mm[0] / 1000 / capillaryLength_m()) * length_m;
    const excess = (limit_m * shareAt(angle, radii_mm[0])) / small(edge_m) - 1;
    return small(radius_m) * (1 + excess * (radius_m / edge_m) ** 2);
  }
  const last = radii_mm[radii_mm.length - 1]!;
  if (radius_mm > last) return limit_m * (1 - ((1 - shareAt(angle, last)) * last) / radius_mm);
  return limit_m * shareAt(angle, radius_mm);
}

function shareAt(angle: number, radius_mm: number): number {
  const at = Math.log(radius_mm);
  const list = shares.slice(1).map((table) => interpolate(table!, at));
  // the shares hardly depend on the angle: linear below 10 degrees from the row at 10
  return interpolate(monotoneTable(angles_deg.slice(1), list), angle);
}

/** Shrinkage after gel as a share of the depth filled, 0.02 to 0.03 (from memory). */
export const SHRINKAGE_AFTER_GEL = { low: 0.02, value: 0.025, high: 0.03 } as const;

/** A divot deeper than this is filled first or flooded twice, m (common practice, no source). */
export const DIVOT_LIMIT_m = 5e-4;

/**
 * How far the surface sinks over a filled divot when the resin shrinks after gel, m: shrinkage times depth. Flow always fills it; this
 * is what stays. Worked: 1 mm -> 25 micrometres (20 to 30).
 * @param depth_m from 0 @param shrinkage share, 0 to 0.2
 * @throws RangeError outside these.
 */
export function divotSink_m(depth_m: number, shrinkage: number = SHRINKAGE_AFTER_GEL.value): number {
  return notNegative('depth_m', depth_m, 'm') * within('shrinkage', shrinkage, 0, 0.2, '');
}

export interface FloodRequest {
  /** Film of the flood, m, above 0. */
  readonly film_m: number;
  /** Radius of the worst spot to cover, m; 0 for none. */
  readonly spotRadius_m: number;
  /** Advancing angle on it: 30 to 45 degrees on silicone (common practice, no source). 0 to 90. */
  readonly advancingAngle_deg: number;
  /** Deepest divot, m; 0 for none. */
  readonly divotDepth_m: number;
  readonly liquid?: Liquid;
}

export interface FloodAnswer {
  readonly closes: boolean;
  /** Film that would close, m. */
  readonly filmToClose_m: number;
  /** The film stays closed over any size of such contamination once closed and thicker than this, m. */
  readonly alwaysSafe_m: number;
  /** What the shrinkage of a filled divot will still show, m. */
  readonly sink_m: number;
  /** The coat does not close, or a divot deeper than 0.5 mm will show: sand, fill and flood again. */
  readonly secondFlood: boolean;
  readonly reasons: readonly Reason[];
}

/**
 * Whether one flood is enough.
 * @throws RangeError outside the ranges of {@link FloodRequest}.
 */
export function floodAnswer(request: FloodRequest): FloodAnswer {
  const { spotRadius_m, advancingAngle_deg, divotDepth_m } = request;
  const liquid = request.liquid ?? DEFAULT_LIQUID;
  const film_m = positive('film_m', request.film_m, 'm');
  const filmToClose_m = filmOverSpot_m(advancingAngle_deg, spotRadius_m, liquid);
  const closes = film_m >= filmToClose_m;
  const sink_m = divotSink_m(divotDepth_m);
  const deep = divotDepth_m > DIVOT_LIMIT_m;
  return {
    closes,
    filmToClose_m,
    alwaysSafe_m: wettingLimit_m(advancingAngle_deg, liquid),
    sink_m,
    secondFlood: !closes || deep,
    reasons: [
      {
        says: closes
          ? 'The film closes over a spot of this size if it is pushed over it.'
          : 'The film draws back from a spot of this size: clean and abrade it, or flood thicker.',
        formula: 'film around a dry disc at the advancing angle; wide spots: 2 lc sin(theta/2)',
        numbers: { film_m, filmToClose_m, spotRadius_m, advancingAngle_deg },
        source: 'own solution of Young-Laplace; Taylor and Michael 1973 for the meaning',
        rule: 'Three ounces a square foot close small craters (common practice, no source).',
      },
      {
        says: deep
          ? 'A divot this deep shows again when the resin shrinks: fill it first or flood twice.'
          : 'What the divot shows after shrinkage is small.',
        formula: 'shrinkage after gel times depth',
        numbers: { divotDepth_m, sink_m, shrinkage: SHRINKAGE_AFTER_GEL.value, limit_m: DIVOT_LIMIT_m },
        source: 'rule; shrinkage 2 to 3 % from memory',
      },
    ],
  };
}
