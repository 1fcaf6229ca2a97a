/**
 * A film draining over a free wetted edge: h_Theta = (rho g/3)(h^3 h_x)_x with h = 0 at the edge and h0 far in. With
 * D = rho g h0^3 Theta/3 the answer is h = h0 F(x/sqrt D), (F^3 F')' + xi F'/2 = 0, and a metre of edge loses 0.36832 h0 sqrt(D).
 * The constant and the tables are own solutions of that equation (no published copy found); reference/film-run-off.test.ts solves both
 * the ordinary and the partial equation again.
 */

import { notNegative, positive, within } from '#core/quantity/domain.ts';
import { DEFAULT_LIQUID, type Liquid } from './constants.ts';
import { interpolate, monotoneTable } from './monotone-table.ts';
import { levelSpread_m2 } from './tilt.ts';

/** Loss per metre of a free wetted edge, in h0 sqrt(D). */
export const EDGE_LOSS_CONSTANT = 0.3683178;

/** F against xi, within 1e-5 of the solution at the points. */
const profilePoints: readonly (readonly [number, number])[] = [
  [0, 0],
  [0.01, 0.29291],
  [0.02, 0.34825],
  [0.05, 0.4375],
  [0.1, 0.51934],
  [0.15, 0.57355],
  [0.2, 0.61493],
  [0.25, 0.64864],
  [0.3, 0.67717],
  [0.4, 0.72377],
  [0.5, 0.76092],
  [0.63051, 0.8],
  [0.75, 0.82915],
  [1, 0.87614],
  [1.1672, 0.9],
  [1.25, 0.91012],
  [1.5, 0.93518],
  [1.693, 0.95],
  [1.75, 0.95376],
  [2, 0.9675],
  [2.25, 0.97754],
  [2.5, 0.98479],
  [2.7549, 0.99],
  [3, 0.99347],
  [3.5, 0.99746],
  [4, 0.99911],
  [5, 0.99992],
  [6.5, 1],
];
/** F starts as xi^(1/4), so the table is kept and interpolated in F^4. */
const profile = monotoneTable(
  profilePoints.map((p) => p[0]),
  profilePoints.map((p) => p[1] ** 4),
);

/** Loss constant when the arris holds a film h_e, against h_e/h0. */
const heldConstant = monotoneTable(
  [0, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98, 1],
  [
    EDGE_LOSS_CONSTANT,
    0.366919,
    0.361904,
    0.350326,
    0.329284,
    0.29616,
    0.24863,
    0.184631,
    0.102315,
    0.053756,
    0.022139,
    0,
  ],
);

/**
 * Thickness near a free edge as a share of the thickness poured, F(xi), 0 to 1; xi is the distance from the edge over sqrt(D).
 * Interpolated, within 0.0005. Worked: F(0.5) = 0.7609, F(2) = 0.9675.
 * @throws RangeError if xi is negative or not finite.
 */
export function edgeProfile(xi: number): number {
  return interpolate(profile, notNegative('xi', xi, '')) ** 0.25;
}

/**
 * Constant of the loss per metre of edge when the arris keeps a film: 0.36832 when it keeps none, 0 when it keeps all.
 * Interpolated, within 0.0005.
 * @param heldShare film on the arris over film poured, 0 to 1
 * @throws RangeError outside this.
 */
export function edgeLossConstant(heldShare: number): number {
  return interpolate(heldConstant, within('heldShare', heldShare, 0, 1, ''));
}

/**
 * Resin that runs over a metre of free wetted edge of a wide top, m2 (m3 per metre): 0.36832 h0 sqrt(D). Goes with h^(5/2) and
 * Theta^(1/2). An upper bound: arris and neighbouring edges are left out. Worked: 1.5 mm, Theta 240 -> 29.8 mL per metre.
 * @param thickness_m from 0 @param theta_per_Pa from 0
 * @throws RangeError outside these.
 */
export function freeEdgeLoss_m2(
  thickness_m: number,
  theta_per_Pa: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  return EDGE_LOSS_CONSTANT * thickness_m * Math.sqrt(levelSpread_m2(thickness_m, theta_per_Pa, liquid));
}

/**
 * Distance from a free edge at which the film has a share of the thickness poured, m. Worked: 1.5 mm, Theta 240, share 0.9 -> 63 mm.
 * @param thickness_m above 0 @param theta_per_Pa from 0 @param share 0 to 0.99
 * @throws RangeError outside these.
 */
export function edgeTaper_m(
  thickness_m: number,
  theta_per_Pa: number,
  share = 0.9,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  positive('thickness_m', thickness_m, 'm');
  const wanted = within('share', share, 0, 0.99, '') ** 4;
  let low = 0;
  let high = profile.x.at(-1)!;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (interpolate(profile, middle) < wanted) low = middle;
    else high = middle;
  }
  return high * Math.sqrt(levelSpread_m2(thickness_m, theta_per_Pa, liquid));
}
