/**
 * What an edge profile adds to the surface to coat. Trade rules (common practice, no source for the chiselled factor;
 * the others are plain geometry), t the face height: round-over or eased r: t - r + pi r / 2; bullnose: pi t / 2;
 * bevel c: t - c + c sqrt 2; chiselled: factor x t.
 *
 * Those lengths start where the flat top ends. Seen from above, the profile's own strip (r, t/2 or c wide) lies inside
 * the outline and is already in the plan area, so it is taken off once: plan area + face area = true surface.
 */

import type { EdgeProfile } from './piece.ts';

interface Face {
  readonly faceHeight_m: number;
  readonly profile: EdgeProfile;
}

/** A bevel's two arrises are eased by sanding to this, or the leg when that is less (common practice, no source). */
const BEVEL_ARRIS_M = 0.003;
/** Facet arrises of a chiselled edge once brushed and sanded (common practice, no source). */
const CHISELLED_ARRIS_M = 0.002;

/**
 * Surface across the profile, from the end of the flat top to the bottom of the face, m2 per metre of edge (m).
 * Throws RangeError when the face height is not positive or the profile is larger than the face.
 * Example: 38 mm face, 10 mm round-over: 38 - 10 + 15.708 = 43.708 mm.
 */
export function developedHeight_m(edge: Face): number {
  const { faceHeight_m: t, profile } = edge;
  need(t > 0 && Number.isFinite(t), 'faceHeight_m', t, 'above 0 m');
  switch (profile.kind) {
    case 'square eased':
    case 'round-over':
      need(profile.radius_m >= 0 && profile.radius_m <= t, 'radius_m', profile.radius_m, `0 to ${t} m`);
      return t - profile.radius_m + (Math.PI / 2) * profile.radius_m;
    case 'bullnose':
      return (Math.PI * t) / 2;
    case 'bevel':
      need(profile.leg_m >= 0 && profile.leg_m <= t, 'leg_m', profile.leg_m, `0 to ${t} m`);
      return t - profile.leg_m + profile.leg_m * Math.SQRT2;
    case 'chiselled':
      need(profile.factor >= 1 && profile.factor <= 3, 'factor', profile.factor, '1 to 3');
      return profile.factor * t;
  }
}

/** Width of the profile seen from above, m: part of developedHeight_m that the plan area already counts. */
export function planOverlap_m(edge: Face): number {
  const { faceHeight_m, profile } = edge;
  switch (profile.kind) {
    case 'square eased':
    case 'round-over':
      return profile.radius_m;
    case 'bullnose':
      return faceHeight_m / 2;
    case 'bevel':
      return profile.leg_m;
    case 'chiselled':
      return 0;
  }
}

/**
 * Surface to add to the plan area for `length_m` of edge that turns by turning_rad (convex positive), m2. Along a curve
 * the profile is a surface of revolution (Pappus: length of the profile times the way of its centroid), which costs or
 * adds a little: the moment of the profile about the vertical through the outline, plus half the overlap squared for the
 * strip taken off. Exact for lines and arcs of any radius over the overlap; at a sharp corner profiles meet in a mitre
 * and the difference (under a square of the overlap) is left out.
 */
export function faceArea_m2(edge: Face, length_m: number, turning_rad: number): number {
  const overlap = planOverlap_m(edge);
  const straight = developedHeight_m(edge) - overlap;
  return length_m * straight + turning_rad * (overlap ** 2 / 2 + moment_m2(edge));
}

/** Integral over the profile of its signed distance from the outline (inwards negative), m2. */
function moment_m2({ faceHeight_m, profile }: Face): number {
  // A quarter round of radius r: length pi r / 2, its centroid r (1 - 2/pi) inside the outline.
  const quarter = (r: number): number => -(r ** 2) * (Math.PI / 2 - 1);
  switch (profile.kind) {
    case 'square eased':
    case 'round-over':
      return quarter(profile.radius_m);
    case 'bullnose':
      return 2 * quarter(faceHeight_m / 2);
    case 'bevel':
      return -(profile.leg_m ** 2) / Math.SQRT2;
    case 'chiselled':
      return 0;
  }
}

/**
 * Strip of the underside that a return of depth_m covers, m2: along a convex arc it shortens, depth^2 / 2 per radian.
 */
export function undersideReturnArea_m2(depth_m: number, length_m: number, turning_rad: number): number {
  need(depth_m >= 0 && Number.isFinite(depth_m), 'depth_m', depth_m, '0 m or more');
  return Math.max(0, length_m * depth_m - (turning_rad * depth_m ** 2) / 2);
}

/** Radius the resin has to turn over at the top of the face, m. */
export function arrisRadius_m(edge: Face): number {
  const { faceHeight_m, profile } = edge;
  switch (profile.kind) {
    case 'square eased':
    case 'round-over':
      return profile.radius_m;
    case 'bullnose':
      return faceHeight_m / 2;
    case 'bevel':
      return Math.min(BEVEL_ARRIS_M, profile.leg_m);
    case 'chiselled':
      return CHISELLED_ARRIS_M;
  }
}

function need(fine: boolean, argument: string, value: number, allowed: string): void {
  if (!fine) throw new RangeError(`edge profile: ${argument} ${value}; allowed: ${allowed}`);
}
