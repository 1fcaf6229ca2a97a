/**
 * Kubelka-Munk: what a scattering, absorbing film of finite thickness gives back. All reflectances are internal, that is
 * inside the resin (surface.ts leads in and out). K and S in 1/m, thickness in m. Sources: Kubelka & Munk 1931, Z. tech.
 * Phys. 12, 593; Kubelka 1948, J. Opt. Soc. Am. 38, 448. Two-flux and diffuse: not for flakes, weak for clear tints seen at
 * a low angle, no fluorescence.
 */

/** Absorption and scattering of a film, 1/m, one channel or band. */
export interface Scatter {
  readonly absorption_per_m: number;
  readonly scattering_per_m: number;
}

/** A film by itself: light given back over a perfectly black ground, and light let through. */
export interface Layer {
  readonly reflectance: number;
  readonly transmittance: number;
}

/**
 * The film alone. Thickness >= 0, K and S >= 0, else RangeError. Kubelka 1948 in a form that does not overflow; limits are
 * taken for a film that does not scatter (T = exp(-KX)) or does not absorb (R0 = SX / (1 + SX)).
 */
export function layer(film: Scatter, thickness_m: number): Layer {
  check('absorption', film.absorption_per_m);
  check('scattering', film.scattering_per_m);
  check('thickness', thickness_m);
  const kx = film.absorption_per_m * thickness_m;
  const sx = film.scattering_per_m * thickness_m;
  if (sx < 1e-9) return { reflectance: 0, transmittance: Math.exp(-kx) };
  if (kx < 1e-12) return { reflectance: sx / (1 + sx), transmittance: 1 / (1 + sx) };
  const a = 1 + kx / sx;
  // (K/S)^2 + 2 K/S instead of a^2 - 1: no digits lost for a nearly white film.
  const b = Math.sqrt((kx / sx) * (kx / sx + 2));
  const y = b * sx;
  // 1 - exp(-2y) by expm1: a thin film would lose its digits in the difference.
  const lost = -Math.expm1(-2 * y);
  const den = a * lost + b * (2 - lost);
  return { reflectance: lost / den, transmittance: (2 * b * Math.exp(-y)) / den };
}

/** The film over a ground of internal reflectance 0 to 1 (stacking rule of Kubelka 1948). */
export function over(top: Layer, ground: number): number {
  if (!(ground >= 0 && ground <= 1))
    throw new RangeError(`a ground gives back 0 to 1 of the light, not ${ground}`);
  return top.reflectance + (top.transmittance ** 2 * ground) / (1 - top.reflectance * ground);
}

/** A film so thick that its ground does not show: 1 + K/S - sqrt((K/S)^2 + 2 K/S). Scattering above 0, else RangeError. */
export function masstone(film: Scatter): number {
  check('absorption', film.absorption_per_m);
  if (!(film.scattering_per_m > 0))
    throw new RangeError('a film that does not scatter never hides its ground');
  const q = film.absorption_per_m / film.scattering_per_m;
  // The other root is the reciprocal; dividing keeps the digits of a dark film.
  return 1 / (1 + q + Math.sqrt(q * (q + 2)));
}

/** K/S of an opaque film of this internal reflectance, above 0 to 1: (1 - R)^2 / (2 R). */
export function absorptionToScattering(reflectance: number): number {
  if (!(reflectance > 0 && reflectance <= 1))
    throw new RangeError(`an opaque film gives back more than 0 up to 1 of the light, not ${reflectance}`);
  return (1 - reflectance) ** 2 / (2 * reflectance);
}

/** One colourant in a mix: its K and S for each part in the mixed resin, and its parts (1 = one per cent, say). */
export interface Portion {
  readonly perPart: Scatter;
  readonly parts: number;
}

/** K and S of a mix: both add in proportion to the load (two-constant theory; linear up to some per cent by mass). */
export function mixed(portions: readonly Portion[]): Scatter {
  let absorption_per_m = 0;
  let scattering_per_m = 0;
  for (const { perPart, parts } of portions) {
    check('parts', parts);
    absorption_per_m += perPart.absorption_per_m * parts;
    scattering_per_m += perPart.scattering_per_m * parts;
  }
  return { absorption_per_m, scattering_per_m };
}

function check(what: string, value: number): void {
  if (!(value >= 0 && Number.isFinite(value)))
    throw new RangeError(`${what} must be 0 or more, not ${value}`);
}
