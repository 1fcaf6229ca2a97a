/**
 * Cubic Hermite interpolation on [0, h]: value at `at` from the end values and end slopes. Error at most
 * h^4/384 max|y''''| (de Boor, A Practical Guide to Splines). `h` must be positive; nothing is checked, this is inner-loop
 * code.
 */
export function hermite(y0: number, s0: number, y1: number, s1: number, h: number, at: number): number {
  const u = at / h;
  const v = 1 - u;
  return v * v * ((1 + 2 * u) * y0 + at * s0) + u * u * ((1 + 2 * v) * y1 - (h - at) * s1);
}

/** Slope of the same cubic. */
export function hermiteSlope(y0: number, s0: number, y1: number, s1: number, h: number, at: number): number {
  const u = at / h;
  const v = 1 - u;
  return (6 * u * v * (y1 - y0)) / h + v * (1 - 3 * u) * s0 + u * (3 * u - 2) * s1;
}

/** Where the cubic has its largest value on [0, h]. */
export function hermitePeak(y0: number, s0: number, y1: number, s1: number, h: number): number {
  // slope = c0 + c1 u + c2 u^2
  const chord = (6 * (y1 - y0)) / h;
  const c0 = s0;
  const c1 = chord - 4 * s0 - 2 * s1;
  const c2 = 3 * (s0 + s1) - chord;
  let best = y1 > y0 ? h : 0;
  let top = Math.max(y0, y1);
  const consider = (u: number) => {
    if (!(u > 0 && u < 1)) return;
    const y = hermite(y0, s0, y1, s1, h, u * h);
    if (y > top) {
      top = y;
      best = u * h;
    }
  };
  const root = c1 * c1 - 4 * c2 * c0;
  if (root >= 0) {
    const q = -0.5 * (c1 + (c1 >= 0 ? Math.sqrt(root) : -Math.sqrt(root)));
    if (c2 !== 0) consider(q / c2);
    if (q !== 0) consider(c0 / q);
  }
  return best;
}
