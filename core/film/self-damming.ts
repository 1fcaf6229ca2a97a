/**
 * How thick a pour may stand on a top whose edges are dry: the contact line stays on the arris until the liquid's angle
 * there exceeds the advancing angle plus the turn of the surface (Gibbs' criterion; Oliver, Huh and Mason 1977, J. Colloid
 * Interface Sci. 59, 568, from memory). A wide puddle that meets its rim at an angle a stands 2 lc sin(a/2) high (force balance
 * rho g e^2/2 = gamma (1 - cos a); de Gennes, Brochard-Wyart and Quere 2004, from memory). Static: it says nothing of the time to
 * spread, and one smear of resin over the arris ends it.
 */

import { notNegative, within } from '#core/quantity/domain.ts';
import { capillaryLength_m, DEFAULT_LIQUID, type Liquid } from './constants.ts';

const DEGREE = Math.PI / 180;

/** Advancing angle of resin on a dry arris when nobody has measured it, degrees (common practice, no source). */
export const DRY_ARRIS_ANGLE_deg = 20;

/**
 * Thickness of a wide puddle whose rim makes an angle with the surface, m: 2 lc sin(angle/2). With the advancing angle it is
 * the thickness at which spreading on a dry surface stops; a film thinner than this may draw back.
 * Worked: 20 degrees -> 0.626 mm.
 * @param contactAngle_deg 0 to 180
 * @throws RangeError outside this.
 */
export function wettingLimit_m(contactAngle_deg: number, liquid: Liquid = DEFAULT_LIQUID): number {
  const angle = within('contactAngle_deg', contactAngle_deg, 0, 180, 'degrees');
  return 2 * capillaryLength_m(liquid) * Math.sin((angle * DEGREE) / 2);
}

/**
 * Thickness that a sharp dry arris holds, m: 2 lc sin((contact angle + turn)/2). Worked: 20 degrees, square edge -> 2.95 mm.
 * @param contactAngle_deg advancing angle, 0 to 90 @param turn_deg turn of the surface at the arris, 0 to 90
 * @throws RangeError outside these.
 */
export function pinnedThickness_m(
  contactAngle_deg: number,
  turn_deg = 90,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  within('contactAngle_deg', contactAngle_deg, 0, 90, 'degrees');
  within('turn_deg', turn_deg, 0, 90, 'degrees');
  return wettingLimit_m(contactAngle_deg + turn_deg, liquid);
}

export interface PinnedPuddle {
  /** Greatest thickness above the flat of the top, m. */
  readonly thickness_m: number;
  /** How far round the arris the contact line then stands, degrees from the flat of the top. */
  readonly turn_deg: number;
}

/**
 * Thickness that a dry arris rounded to a quarter circle holds, m: the greatest of 2 lc sin((contact angle + psi)/2) -
 * R (1 - cos psi) over psi from 0 to 90 degrees; the line creeps round the arris until then. Derived here from the two
 * statics above; the maximum is unique because its derivative falls throughout.
 * Worked: 20 degrees, R 3 mm -> 1.124 mm.
 * @param contactAngle_deg advancing angle, 0 to 90 @param arrisRadius_m from 0, m
 * @throws RangeError outside these.
 */
export function pinnedOnRoundArris(
  contactAngle_deg: number,
  arrisRadius_m: number,
  liquid: Liquid = DEFAULT_LIQUID,
): PinnedPuddle {
  const angle = within('contactAngle_deg', contactAngle_deg, 0, 90, 'degrees') * DEGREE;
  const radius = notNegative('arrisRadius_m', arrisRadius_m, 'm');
  const length = capillaryLength_m(liquid);
  const rises = (psi: number): boolean => length * Math.cos((angle + psi) / 2) > radius * Math.sin(psi);
  let low = 0;
  let high = Math.PI / 2;
  if (rises(high)) low = high;
  while (high - low > 1e-15) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (rises(middle)) low = middle;
    else high = middle;
  }
  const thickness_m = 2 * length * Math.sin((angle + low) / 2) - radius * (1 - Math.cos(low));
  return { thickness_m, turn_deg: low / DEGREE };
}
