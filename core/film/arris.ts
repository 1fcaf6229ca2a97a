/** What the rounding of a wetted arris keeps and what it lets pass: surface tension pulls resin off it, and holds the top back. */

import { notNegative, positive } from '#core/quantity/domain.ts';
import { ARRIS_SHARE_permille } from './arris-share-table.ts';
import { ARRIS_FILMS_mm, ARRIS_LEAST_um, ARRIS_RADII_mm, ARRIS_THETAS_per_Pa } from './arris-table.ts';
import { capillaryLength_m, DEFAULT_LIQUID, type Liquid, specificWeight_N_m3 } from './constants.ts';

/**
 * Film that a wetted arris of radius R dams on the top, m: -R/2 + sqrt(R^2/4 + lc^2). The top feeds over it only while
 * rho g h > gamma/(R + h). Statics, derived here. Worked: R 3 mm -> 0.844 mm.
 * @param arrisRadius_m from 0
 * @throws RangeError outside this.
 */
export function arrisBarrier_m(arrisRadius_m: number, liquid: Liquid = DEFAULT_LIQUID): number {
  const half = notNegative('arrisRadius_m', arrisRadius_m, 'm') / 2;
  const length = capillaryLength_m(liquid);
  return (length * length) / (half + Math.hypot(half, length));
}

/** Sharper than this the shares of the table are as at it: thin-film theory says nothing there, m (for the default liquid). */
const SHARPEST_SHARE_mm = 1;
const logFilms = ARRIS_FILMS_mm.map(Math.log);
const logRadii = ARRIS_RADII_mm.map(Math.log);
const logThetas = ARRIS_THETAS_per_Pa.map(Math.log);
const THICKEST_mm = ARRIS_FILMS_mm[ARRIS_FILMS_mm.length - 1]!;
const THINNEST_mm = ARRIS_FILMS_mm[0]!;
const LEAST_THETA = ARRIS_THETAS_per_Pa[0]!;

interface Place {
  readonly i: number;
  readonly part: number;
}

/** Interval and place in it for a linear look-up, held at the ends. */
function place(list: readonly number[], value: number): Place {
  let i = 0;
  while (i + 2 < list.length && list[i + 1]! <= value) i++;
  const part = (value - list[i]!) / (list[i + 1]! - list[i]!);
  return { i, part: Math.min(Math.max(part, 0), 1) };
}

/** Linear in three directions; `by` maps an entry (a logarithm, a clipped share) before the mean. */
function mean3(
  table: readonly (readonly (readonly number[])[])[],
  at: readonly [Place, Place, Place],
  by: (entry: number) => number,
): number {
  let sum = 0;
  for (let corner = 0; corner < 8; corner++) {
    let weight = 1;
    const index = at.map(({ i, part }, axis) => {
      const up = (corner >> axis) & 1;
      weight *= up === 1 ? part : 1 - part;
      return i + up;
    });
    if (weight > 0) sum += weight * by(table[index[0]!]![index[1]!]![index[2]!]!);
  }
  return sum;
}

/** Film, radius and flow budget as the default liquid would need them for the same shape. */
function scaled(thickness_m: number, arrisRadius_m: number, theta_per_Pa: number, liquid: Liquid) {
  const reference_m = capillaryLength_m();
  const length_m = capillaryLength_m(liquid);
  const by = reference_m / length_m;
  return {
    by,
    film_mm: notNegative('thickness_m', thickness_m, 'm') * by * 1000,
    radius_mm: notNegative('arrisRadius_m', arrisRadius_m, 'm') * by * 1000,
    theta:
      (notNegative('theta_per_Pa', theta_per_Pa, '1/Pa') * specificWeight_N_m3(liquid) * length_m) /
      (specificWeight_N_m3() * reference_m),
  };
}

/**
 * Share of the free-edge loss that a rounded wetted arris lets pass, 0 to 1, when the edge was wetted with a flow budget left. Linear in
 * the table (logarithms of film, radius and Theta), counted in capillary lengths for other liquids; within 0.04 inside it. Beyond: sharper
 * than 1 mm counts as 1 mm, over 10 mm as 10 mm; films under 0.3 mm as 0.3 mm; over 3.5 mm the share held back fades as 1/film;
 * budgets outside 0.01 to 1200 are held at the ends.
 * Worked: 1.5 mm, R 3 mm, Theta 240 -> 0.681.
 * @param thickness_m from 0 @param arrisRadius_m from 0 @param theta_per_Pa from 0
 * @throws RangeError outside these.
 */
export function arrisShare(
  thickness_m: number,
  arrisRadius_m: number,
  liquid: Liquid = DEFAULT_LIQUID,
  theta_per_Pa = 240,
): number {
  const { film_mm, radius_mm, theta } = scaled(thickness_m, arrisRadius_m, theta_per_Pa, liquid);
  const at: [Place, Place, Place] = [
    place(logFilms, Math.log(Math.max(film_mm, THINNEST_mm))),
    place(logRadii, Math.log(Math.max(radius_mm, SHARPEST_SHARE_mm))),
    place(logThetas, Math.log(Math.max(theta, LEAST_THETA))),
  ];
  const share = mean3(ARRIS_SHARE_permille, at, (entry) => Math.min(Math.max(entry / 1000, 0), 1));
  return film_mm > THICKEST_mm ? 1 - ((1 - share) * THICKEST_mm) / film_mm : share;
}

/**
 * Least film on a rounded arris, m, when top, arris and face were wiped to an even film with a flow budget left. Geometric mean in the
 * table, within 3 % or 6 micrometres inside it; thin-film theory, so rough where the film at the start is thicker than the radius.
 * Beyond the table: radii held to 0.5 to 10 mm, films under 0.3 mm in proportion, over 3.5 mm as 3.5 mm; below Theta 0.01 linear
 * to the film wiped on, above 1200 with the power -1/2 of Theta by which weight thins an arris.
 * Worked: 1.5 mm, R 3 mm -> 0.625 mm at Theta 1, 0.196 mm at 240.
 * @param thickness_m above 0 @param arrisRadius_m from 0 @param thetaLeft_per_Pa from 0
 * @throws RangeError outside these.
 */
export function arrisFilm_m(
  thickness_m: number,
  arrisRadius_m: number,
  thetaLeft_per_Pa: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  positive('thickness_m', thickness_m, 'm');
  const { by, film_mm, radius_mm, theta } = scaled(thickness_m, arrisRadius_m, thetaLeft_per_Pa, liquid);
  const at: [Place, Place, Place] = [
    place(logFilms, Math.log(film_mm)),
    place(logRadii, Math.log(Math.max(radius_mm, ARRIS_RADII_mm[0]!))),
    place(logThetas, Math.log(Math.max(theta, LEAST_THETA))),
  ];
  let found_mm = Math.exp(mean3(ARRIS_LEAST_um, at, Math.log)) / 1000;
  if (film_mm < THINNEST_mm) found_mm *= film_mm / THINNEST_mm;
  const most = ARRIS_THETAS_per_Pa[ARRIS_THETAS_per_Pa.length - 1]!;
  if (theta > most) found_mm *= Math.sqrt(most / theta);
  if (theta < LEAST_THETA) {
    const start_mm = film_mm;
    found_mm = start_mm + ((found_mm - start_mm) * theta) / LEAST_THETA;
  }
  return Math.min(found_mm / 1000 / by, thickness_m);
}
