/** Nodes and weights of a Gauss-Legendre rule on [-1, 1]. */
export interface GaussRule {
  readonly node: Float64Array;
  readonly weight: Float64Array;
}

/**
 * Gauss-Legendre rule with `points` points (1 to 64), exact for polynomials of degree 2 points - 1. Roots of the Legendre
 * polynomial by Newton from Tricomi's starting values; weights 2/((1 - x^2) P'(x)^2) (Abramowitz and Stegun 25.4.29).
 *
 * @throws RangeError outside 1..64 or for a fraction.
 */
export function gaussRule(points: number): GaussRule {
  if (!(Number.isInteger(points) && points >= 1 && points <= 64)) {
    throw new RangeError(`points ${points} must be a whole number from 1 to 64`);
  }
  const node = new Float64Array(points);
  const weight = new Float64Array(points);
  for (let i = 0; i < points; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (points + 0.5));
    let slope = 1;
    for (let pass = 0; pass < 50; pass++) {
      let before = 1;
      let p = x;
      for (let n = 2; n <= points; n++) {
        const next = ((2 * n - 1) * x * p - (n - 1) * before) / n;
        before = p;
        p = next;
      }
      slope = (points * (x * p - before)) / (x * x - 1);
      const move = p / slope;
      x -= move;
      if (Math.abs(move) < 1e-16) break;
    }
    node[i] = x;
    weight[i] = 2 / ((1 - x * x) * slope * slope);
  }
  return { node, weight };
}

/** Integral of f from `from` to `to` by a rule repeated on `pieces` equal pieces (default 1). */
export function integrate(
  rule: GaussRule,
  f: (x: number) => number,
  from: number,
  to: number,
  pieces = 1,
): number {
  if (!(Number.isInteger(pieces) && pieces >= 1)) {
    throw new RangeError(`pieces ${pieces} must be a whole number, at least 1`);
  }
  const half = (to - from) / (2 * pieces);
  let sum = 0;
  for (let piece = 0; piece < pieces; piece++) {
    const middle = from + (2 * piece + 1) * half;
    for (let i = 0; i < rule.node.length; i++) sum += rule.weight[i]! * f(middle + half * rule.node[i]!);
  }
  return sum * half;
}
