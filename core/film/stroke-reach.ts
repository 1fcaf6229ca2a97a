import { notNegative, positive } from '#core/quantity/domain.ts';

/**
 * How far a thin blade drags the surface beside it, as a share of its own movement, 0 to 1: (4/pi) atan(exp(-pi d/(2 h))).
 * The flow along the blade in a film on a fixed floor solves Laplace's equation with a stress-free top (derived here); half
 * is left at 0.561 h, 1 % at 3.1 h. A wide tool also pushes resin aside, which this leaves out.
 * Worked: one film thickness away -> 0.261.
 * @param distance_m from the blade, from 0 @param thickness_m of the film, above 0
 * @throws RangeError outside these.
 */
export function strokeSurfaceShare(distance_m: number, thickness_m: number): number {
  notNegative('distance_m', distance_m, 'm');
  positive('thickness_m', thickness_m, 'm');
  return (4 / Math.PI) * Math.atan(Math.exp((-Math.PI * distance_m) / (2 * thickness_m)));
}

/**
 * The same averaged over the depth of the film: (8/pi^2) sum q^(2n+1)/(2n+1)^2, q = exp(-pi d/(2 h)). At the blade it is 1.
 * Worked: one film thickness away -> 0.169.
 * @param distance_m from the blade, from 0 @param thickness_m of the film, above 0
 * @throws RangeError outside these.
 */
export function strokeMeanShare(distance_m: number, thickness_m: number): number {
  notNegative('distance_m', distance_m, 'm');
  const q = Math.exp((-Math.PI * distance_m) / (2 * positive('thickness_m', thickness_m, 'm')));
  if (q > 0.999) {
    // near the blade the sum is chi_2(q) = pi^2/8 - (1 - q)(1 + ln 2 - ln(1 - q))/2 + ..., good to (1 - q)^2 ln
    const gap = 1 - q;
    return gap === 0 ? 1 : 1 - ((8 / Math.PI ** 2) * gap * (1 + Math.LN2 - Math.log(gap))) / 2;
  }
  let sum = 0;
  let power = q;
  for (let odd = 1; power / (odd * odd) > 1e-17; odd += 2) {
    sum += power / (odd * odd);
    power *= q * q;
  }
  return (8 / Math.PI ** 2) * sum;
}
