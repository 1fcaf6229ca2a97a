/**
 * The surface between air and resin: what is mirrored, and how an internal reflectance looks from outside. Fresnel for
 * unpolarised light; Saunderson 1942, J. Opt. Soc. Am. 32, 727, with the gloss left out, as a photograph without a reflection
 * in it sees the film.
 */

/** One refractive index for all cured epoxies here; they lie between 1.50 and 1.57. */
export const RESIN_INDEX = 1.5;

/** Share of light mirrored at normal incidence and n = 1.5: ((n - 1) / (n + 1))^2. */
export const MIRRORED_NORMAL = 0.04;

/** Share of diffuse light thrown back inside at n = 1.5 (integral of Fresnel's law over the half space). */
export const THROWN_BACK = 0.596;

/** Share mirrored at an angle from the normal, 0 to pi/2, exactly by Fresnel; index 1 or more. Else RangeError. */
export function mirrored(angle_rad: number, index = RESIN_INDEX): number {
  if (!(angle_rad >= 0 && angle_rad <= Math.PI / 2))
    throw new RangeError(`an angle of 0 to pi/2 is needed, not ${angle_rad}`);
  if (!(index >= 1 && Number.isFinite(index)))
    throw new RangeError(`an index of 1 or more is needed, not ${index}`);
  const outside = Math.cos(angle_rad);
  const inside = Math.sqrt(1 - (Math.sin(angle_rad) / index) ** 2);
  const s = (outside - index * inside) / (outside + index * inside);
  const p = (index * outside - inside) / (index * outside + inside);
  return (s * s + p * p) / 2;
}

/** Internal reflectance 0 to 1 as seen from outside, gloss left out. internal 0.5 looks 0.276. RangeError outside 0 to 1. */
export function seen(internal: number): number {
  if (!(internal >= 0 && internal <= 1))
    throw new RangeError(`a reflectance of 0 to 1 is needed, not ${internal}`);
  return ((1 - MIRRORED_NORMAL) * (1 - THROWN_BACK) * internal) / (1 - THROWN_BACK * internal);
}

/** The inverse of `seen`: 0 to 0.96 (what a perfect white under resin shows), else RangeError. */
export function internalOf(looks: number): number {
  const most = 1 - MIRRORED_NORMAL;
  // A hair of slack: the perfect white itself comes back with a rounding error.
  if (!(looks >= 0 && looks <= most * (1 + 1e-12)))
    throw new RangeError(`under resin a surface looks 0 to ${most} bright, not ${looks}`);
  return looks / ((1 - MIRRORED_NORMAL) * (1 - THROWN_BACK) + THROWN_BACK * looks);
}
