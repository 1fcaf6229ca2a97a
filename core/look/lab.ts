/**
 * CIE XYZ and CIE L*a*b* under D65, 2 degree observer (ISO/CIE 11664-3 and -4). The matrix is that of sRGB's primaries with
 * seven digits, white 0.95047, 1, 1.08883.
 */
import type { LinearRgb, Triple } from './srgb.ts';

/** Relative tristimulus values, Y = 1 for white. */
export type Xyz = Triple;
/** L* 0 to 100, a* and b* without bound. */
export type Lab = Triple;

const WHITE: Xyz = [0.95047, 1, 1.08883];
const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;

/** Linear sRGB light to XYZ (IEC 61966-2-1). */
export function xyzOfLinear([r, g, b]: LinearRgb): Xyz {
  return [
    0.4124564 * r + 0.3575761 * g + 0.1804375 * b,
    luminance([r, g, b]),
    0.0193339 * r + 0.119192 * g + 0.9503041 * b,
  ];
}

/** Luminous reflectance Y, 0 to 1, of linear sRGB light. */
export function luminance([r, g, b]: LinearRgb): number {
  return 0.2126729 * r + 0.7151522 * g + 0.072175 * b;
}

/** XYZ to linear sRGB light: the inverse of `xyzOfLinear` by Cramer's rule, exact to rounding. */
export function linearOfXyz([x, y, z]: Xyz): LinearRgb {
  return [
    INVERSE[0][0] * x + INVERSE[0][1] * y + INVERSE[0][2] * z,
    INVERSE[1][0] * x + INVERSE[1][1] * y + INVERSE[1][2] * z,
    INVERSE[2][0] * x + INVERSE[2][1] * y + INVERSE[2][2] * z,
  ];
}

/**
 * XYZ to L*a*b* (ISO/CIE 11664-4).
 *
 * Of #c0392b: 44.6753, 52.9105, 39.2394.
 */
export function labOfXyz([x, y, z]: Xyz): Lab {
  const [fx, fy, fz] = [compress(x / WHITE[0]), compress(y / WHITE[1]), compress(z / WHITE[2])];
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

/** L*a*b* back to XYZ. */
export function xyzOfLab([l, a, b]: Lab): Xyz {
  const fy = (l + 16) / 116;
  return [WHITE[0] * expand(fy + a / 500), WHITE[1] * expand(fy), WHITE[2] * expand(fy - b / 200)];
}

/** Linear sRGB light straight to L*a*b*. */
export function labOfLinear(light: LinearRgb): Lab {
  return labOfXyz(xyzOfLinear(light));
}

function compress(t: number): number {
  return t > EPSILON ? Math.cbrt(t) : (KAPPA * t + 16) / 116;
}

function expand(f: number): number {
  return f ** 3 > EPSILON ? f ** 3 : (116 * f - 16) / KAPPA;
}

const INVERSE = invert([xyzOfLinear([1, 0, 0]), xyzOfLinear([0, 1, 0]), xyzOfLinear([0, 0, 1])]);

/** Rows of the inverse of the matrix with these columns. */
function invert([p, q, r]: readonly [Triple, Triple, Triple]): readonly [Triple, Triple, Triple] {
  const cross = (u: Triple, v: Triple): Triple => [
    u[1] * v[2] - u[2] * v[1],
    u[2] * v[0] - u[0] * v[2],
    u[0] * v[1] - u[1] * v[0],
  ];
  const [qr, rp, pq] = [cross(q, r), cross(r, p), cross(p, q)];
  const volume = p[0] * qr[0] + p[1] * qr[1] + p[2] * qr[2];
  const over = (v: Triple): Triple => [v[0] / volume, v[1] / volume, v[2] / volume];
  return [over(qr), over(rp), over(pq)];
}
