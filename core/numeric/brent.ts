/**
 * Root of f between two points of opposite sign: inverse quadratic interpolation, secant and bisection (Brent 1973,
 * Algorithms for Minimization Without Derivatives, ch. 4).
 *
 * @param tolerance absolute, on the argument; must be positive.
 * @throws RangeError when f does not change sign, an end is not finite, or f returns NaN.
 */
export function brent(f: (x: number) => number, from: number, to: number, tolerance: number): number {
  if (!(tolerance > 0)) throw new RangeError(`tolerance ${tolerance} must be positive`);
  let a = from;
  let b = to;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa < 0 !== fb < 0) || Number.isNaN(fa) || Number.isNaN(fb)) {
    throw new RangeError(`f(${from}) = ${fa} and f(${to}) = ${fb} must differ in sign`);
  }
  let c = a;
  let fc = fa;
  let d = b - a;
  let e = d;
  for (let i = 0; i < 200; i++) {
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      d = b - a;
      e = d;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const small = 2 * Number.EPSILON * Math.abs(b) + 0.5 * tolerance;
    const half = 0.5 * (c - b);
    if (Math.abs(half) <= small || fb === 0) return b;
    if (Math.abs(e) >= small && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa;
      let p: number;
      let q: number;
      if (a === c) {
        p = 2 * half * s;
        q = 1 - s;
      } else {
        const t = fa / fc;
        const r = fb / fc;
        p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      if (2 * p < Math.min(3 * half * q - Math.abs(small * q), Math.abs(e * q))) {
        e = d;
        d = p / q;
      } else {
        d = half;
        e = half;
      }
    } else {
      d = half;
      e = half;
    }
    a = b;
    fa = fb;
    b += Math.abs(d) > small ? d : half > 0 ? small : -small;
    fb = f(b);
    if (Number.isNaN(fb)) throw new RangeError(`f(${b}) is not a number`);
  }
  return b;
}
