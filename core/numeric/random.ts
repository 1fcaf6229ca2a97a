/** A seeded stream of random numbers. The same seed gives the same stream on every machine. */
export interface RandomStream {
  /** Uniform on the open interval (0, 1), 32 bits. */
  uniform(): number;
  /** Standard normal, by inversion of `uniform`. */
  normal(): number;
  /** Whole number from 0 to `count` - 1. */
  below(count: number): number;
}

/**
 * Small fast counter generator "sfc32" (Doty-Humphrey, PractRand; from memory), its state filled by splitmix32 and run in
 * for 12 rounds.
 *
 * @param seed whole number; taken modulo 2^32.
 * @throws RangeError when the seed is not a safe integer.
 */
export function randomStream(seed: number): RandomStream {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`seed ${seed} must be a whole number`);
  let mix = seed | 0;
  const fill = () => {
    mix = (mix + 0x9e3779b9) | 0;
    let z = mix ^ (mix >>> 16);
    z = Math.imul(z, 0x21f0aaad);
    z ^= z >>> 15;
    z = Math.imul(z, 0x735a2d97);
    return (z ^ (z >>> 15)) | 0;
  };
  let a = fill();
  let b = fill();
  let c = fill();
  let counter = 1;
  const next = () => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    c |= 0;
    return sum >>> 0;
  };
  for (let i = 0; i < 12; i++) next();
  const uniform = () => (next() + 0.5) / 4294967296;
  return {
    uniform,
    normal: () => normalQuantile(uniform()),
    below: (count) => {
      if (!(Number.isInteger(count) && count >= 1)) {
        throw new RangeError(`count ${count} must be a whole number, at least 1`);
      }
      return Math.floor(uniform() * count);
    },
  };
}

const CENTRE_TOP = [
  -39.69683028665376, 220.9460984245205, -275.9285104469687, 138.357751867269, -30.66479806614716,
  2.506628277459239,
];
const CENTRE_BOTTOM = [
  -54.47609879822406, 161.5858368580409, -155.6989798598866, 66.80131188771972, -13.28068155288572, 1,
];
const TAIL_TOP = [
  -0.007784894002430293, -0.3223964580411365, -2.400758277161838, -2.549732539343734, 4.374664141464968,
  2.938163982698783,
];
const TAIL_BOTTOM = [0.007784695709041462, 0.3224671290700398, 2.445134137142996, 3.754408661907416, 1];

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (const c of coefficients) sum = sum * x + c;
  return sum;
}

/**
 * Standard normal quantile, relative error below 1.2e-9 (rational approximations of Acklam 2003; from memory, checked
 * against tabulated quantiles).
 *
 * @throws RangeError unless 0 < p < 1.
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`probability ${p} must lie between 0 and 1`);
  const edge = 0.02425;
  if (p < edge || p > 1 - edge) {
    const q = Math.sqrt(-2 * Math.log(Math.min(p, 1 - p)));
    const z = polynomial(TAIL_TOP, q) / polynomial(TAIL_BOTTOM, q);
    return p < edge ? z : -z;
  }
  const q = p - 0.5;
  const r = q * q;
  return (q * polynomial(CENTRE_TOP, r)) / polynomial(CENTRE_BOTTOM, r);
}

/**
 * Latin hypercube (McKay, Beckman and Conover 1979, Technometrics 21, 239): `count` points in `dimensions` dimensions, each
 * marginal having exactly one point in each of `count` equal strata, paired at random. For a few dozen points in ten
 * dimensions this keeps every marginal even, where lattice and radical-inverse sequences still show stripes.
 *
 * @returns one array a point, entries in (0, 1).
 * @throws RangeError unless both numbers are whole and at least 1.
 */
export function latinHypercube(count: number, dimensions: number, stream: RandomStream): Float64Array[] {
  if (!(Number.isInteger(count) && count >= 1 && Number.isInteger(dimensions) && dimensions >= 1)) {
    throw new RangeError(`count ${count} and dimensions ${dimensions} must be whole and at least 1`);
  }
  const points = Array.from({ length: count }, () => new Float64Array(dimensions));
  const order = Array.from({ length: count }, (_, i) => i);
  for (let k = 0; k < dimensions; k++) {
    for (let i = count - 1; i > 0; i--) {
      const j = stream.below(i + 1);
      const swap = order[i]!;
      order[i] = order[j]!;
      order[j] = swap;
    }
    for (let i = 0; i < count; i++) points[i]![k] = (order[i]! + stream.uniform()) / count;
  }
  return points;
}
