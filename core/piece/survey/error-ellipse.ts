/** The ground a corner may lie on. */
export interface ErrorEllipse {
  /** Half axes that hold the corner with 95 % chance, m; the long one first. */
  readonly long_m: number;
  readonly short_m: number;
  /** From +x to the long axis, counter-clockwise, within (-pi/2, pi/2]. */
  readonly turned_rad: number;
}

/** Square of the half axes over the variances: 95 % point of chi-square with two degrees of freedom, -2 ln 0.05 = 5.991. */
export const ELLIPSE_95 = -2 * Math.log(0.05);

/**
 * 95 % error ellipse of a point from the covariance of its coordinates (Ghilani and Wolf, Adjustment Computations, ch. 19; with
 * the spread known beforehand, so chi-square and not F).
 *
 * @throws RangeError when a variance is negative or an entry is not finite.
 */
export function errorEllipse(xx_m2: number, xy_m2: number, yy_m2: number): ErrorEllipse {
  if (!(xx_m2 >= 0 && yy_m2 >= 0 && Number.isFinite(xx_m2 + yy_m2 + xy_m2)))
    throw new RangeError(`variances ${xx_m2} and ${yy_m2} must be 0 or more`);
  const middle = (xx_m2 + yy_m2) / 2;
  const half = Math.hypot((xx_m2 - yy_m2) / 2, xy_m2);
  return {
    long_m: Math.sqrt(ELLIPSE_95 * (middle + half)),
    short_m: Math.sqrt(ELLIPSE_95 * Math.max(0, middle - half)),
    turned_rad: half === 0 ? 0 : 0.5 * Math.atan2(2 * xy_m2, xx_m2 - yy_m2),
  };
}

/** Whether the ellipse about a centre holds a point, offsets in m. An ellipse without extent holds its centre alone. */
export function ellipseHolds(ellipse: ErrorEllipse, dx_m: number, dy_m: number): boolean {
  const cos = Math.cos(ellipse.turned_rad);
  const sin = Math.sin(ellipse.turned_rad);
  const a = dx_m * cos + dy_m * sin;
  const b = dy_m * cos - dx_m * sin;
  const part = (offset: number, half: number) =>
    half > 1e-12 ? (offset / half) ** 2 : Math.abs(offset) <= 1e-12 ? 0 : Number.POSITIVE_INFINITY;
  return part(a, ellipse.long_m) + part(b, ellipse.short_m) <= 1;
}
