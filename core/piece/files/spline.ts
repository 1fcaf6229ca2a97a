/** Rational B-splines: a point and its direction by de Boor's recursion (de Boor 1978, A Practical Guide to Splines, from memory). */

import type { Spot } from './affine.ts';

export interface Spline {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly controls: readonly Spot[];
  /** One a control point; all 1 when empty. */
  readonly weights: readonly number[];
}

/** What is wrong with the figures of a spline; undefined for a sound one. */
export function splineFault(s: Spline): string | undefined {
  if (!(Number.isInteger(s.degree) && s.degree >= 1 && s.degree <= 11))
    return `degree ${s.degree}; allowed: 1 to 11`;
  if (s.controls.length <= s.degree)
    return `${s.controls.length} control points; allowed: ${s.degree + 1} or more`;
  const needs = s.controls.length + s.degree + 1;
  if (s.knots.length !== needs) return `${s.knots.length} knots; allowed: ${needs}`;
  if (s.knots.some((k, i) => i > 0 && k < s.knots[i - 1]!))
    return 'knots that fall; allowed: knots that rise';
  if (s.weights.length > 0 && s.weights.length !== s.controls.length)
    return `${s.weights.length} weights; allowed: ${s.controls.length}`;
  if (s.weights.some((w) => !(w > 0))) return 'a weight of zero or less; allowed: above 0';
  return undefined;
}

/** A Bezier curve of any degree, as a spline. */
export function bezier(...controls: readonly Spot[]): Spline {
  const n = controls.length;
  return {
    degree: n - 1,
    controls,
    weights: [],
    knots: Array.from({ length: 2 * n }, (_, i) => (i < n ? 0 : 1)),
  };
}

/** The knot spans of its domain that have a length. */
export function splineSpans(
  s: Spline,
): { readonly from: number; readonly to: number; readonly index: number }[] {
  const spans = [];
  for (let index = s.degree; index < s.controls.length; index += 1) {
    const from = s.knots[index]!;
    const to = s.knots[index + 1]!;
    if (to > from) spans.push({ from, to, index });
  }
  return spans;
}

/** Point and derivative at t within the span. */
export function splineAt(s: Spline, index: number, t: number): { readonly p: Spot; readonly along: Spot } {
  const n = s.degree;
  const x: number[] = [];
  const y: number[] = [];
  const w: number[] = [];
  for (let i = 0; i <= n; i += 1) {
    const k = index - n + i;
    const weight = s.weights[k] ?? 1;
    x.push(s.controls[k]!.x * weight);
    y.push(s.controls[k]!.y * weight);
    w.push(weight);
  }
  let slope = { x: 0, y: 0, w: 0 };
  for (let level = 1; level <= n; level += 1) {
    if (level === n) {
      const width = s.knots[index + 1]! - s.knots[index]!;
      const rise = (v: readonly number[]): number => (n * (v[n]! - v[n - 1]!)) / width;
      slope = { x: rise(x), y: rise(y), w: rise(w) };
    }
    for (let i = n; i >= level; i -= 1) {
      const low = s.knots[index - n + i]!;
      const high = s.knots[index + 1 + i - level]!;
      const f = (t - low) / (high - low);
      x[i] = x[i - 1]! + f * (x[i]! - x[i - 1]!);
      y[i] = y[i - 1]! + f * (y[i]! - y[i - 1]!);
      w[i] = w[i - 1]! + f * (w[i]! - w[i - 1]!);
    }
  }
  const p = { x: x[n]! / w[n]!, y: y[n]! / w[n]! };
  return {
    p,
    along: { x: (slope.x - p.x * slope.w) / w[n]!, y: (slope.y - p.y * slope.w) / w[n]! },
  };
}
