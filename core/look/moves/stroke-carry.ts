/**
 * A short stroke: film goes on with the tool while it passes and comes back round both sides. The flow round the tool is that
 * of a stream function psi = depth f(s) g(n), s along the path from where the tool is and n across; it vanishes two tool
 * widths off. The film is followed while the tool goes its way by the symplectic Euler rule (Hairer, Lubich & Wanner 2006,
 * Geometric Numerical Integration, section I.1.2; from memory), whose every step keeps areas exactly, where a plain step of
 * the flow loses several per cent.
 */

import { positive } from '#core/quantity/domain.ts';
import type { Stroke } from '../move.ts';
import { type Box, KIND, type Specks } from './specks.ts';

/** Steps of at most an eighth of a tool width: the implicit line of each step then has one root, found in a few rounds. */
const STEPS_PER_WIDTH = 8;

/** Figures 1 to 8: start, heading, length, reach, steps, go. The last is how far one step goes at the tool, in reaches. */
export function strokeFigures({ from, to, width_m, depth }: Stroke): readonly number[] {
  positive('stroke: width_m', width_m, 'm');
  if (!(depth >= 0 && depth <= 1)) throw new RangeError(`stroke: depth must be 0 to 1, not ${depth}`);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const reach = 2 * width_m;
  if (length === 0 || depth === 0) return [KIND.stroke, from[0], from[1], 1, 0, 0, reach, 0, 0];
  const steps = Math.ceil((length / width_m) * STEPS_PER_WIDTH);
  return [
    KIND.stroke,
    from[0],
    from[1],
    (to[0] - from[0]) / length,
    (to[1] - from[1]) / length,
    length,
    reach,
    steps,
    ((length / steps) * depth) / reach,
  ];
}

export function strokeOn(f: Float64Array, speck: Float64Array): void {
  const [bx, by, c, s, length, reach, steps, go] = [f[1]!, f[2]!, f[3]!, f[4]!, f[5]!, f[6]!, f[7]!, f[8]!];
  const px = speck[0]! - bx;
  const py = speck[1]! - by;
  let along = (px * c + py * s) / reach;
  let v = (py * c - px * s) / reach;
  // Nothing crosses the border of the stirred film, so a speck outside it stays where it is.
  if (steps === 0 || Math.abs(v) >= 1 || along <= -1 || along >= length / reach + 1) return;
  const step = length / steps / reach;
  for (let at = 0; at < steps; at++) {
    const u = along - (at + 0.5) * step;
    if (Math.abs(u) >= 1) continue;
    const q = 1 - u * u;
    const turn = go * -6 * u * q * q;
    // w + turn g(w) = v by Newton's rule, as in strokeBack.
    let w = v;
    for (let round = 0; round < 3; round++)
      w -= (w - v + turn * acrossShape(w)) / (1 + turn * acrossSlope(w));
    v = w;
    along += go * q * q * q * acrossSlope(v);
  }
  along *= reach;
  v *= reach;
  speck[0] = bx + along * c - v * s;
  speck[1] = by + along * s + v * c;
}

/** Specks in the reach of a stroke: where they stand in the list, and their places along and across it in reaches. */
let stirred = new Int32Array(0);
let alongs = new Float64Array(0);
let acrosses = new Float64Array(0);

export function strokeBack(f: Float64Array, at: number, { x, y, count }: Specks): void {
  const [bx, by, c, s] = [f[at + 1]!, f[at + 2]!, f[at + 3]!, f[at + 4]!];
  const [length, reach, steps, go] = [f[at + 5]!, f[at + 6]!, f[at + 7]!, f[at + 8]!];
  if (steps === 0) return;
  const step = length / steps / reach;
  const end = length / reach + 1;
  if (stirred.length < count) {
    stirred = new Int32Array(count);
    alongs = new Float64Array(count);
    acrosses = new Float64Array(count);
  }
  let n = 0;
  let furthest = -1;
  for (let i = 0; i < count; i++) {
    const px = x[i]! - bx;
    const py = y[i]! - by;
    const v = (py * c - px * s) / reach;
    const along = (px * c + py * s) / reach;
    if (v >= 1 || v <= -1 || along <= -1 || along >= end) continue;
    stirred[n] = i;
    alongs[n] = along;
    acrosses[n] = v;
    if (along > furthest) furthest = along;
    n++;
  }
  if (n === 0) return;
  // From the last place of the tool that reaches a speck back to where it reaches none any more. All specks take a step before
  // any takes the next: the processor can work at several at a time.
  for (let k = Math.min(steps - 1, Math.floor((furthest + 1) / step + 0.5)); k >= 0; k--) {
    const tool = (k + 0.5) * step;
    let ahead = true;
    for (let i = 0; i < n; i++) {
      const u0 = alongs[i]! - tool;
      if (u0 >= 1) continue;
      ahead = false;
      if (u0 <= -1) continue;
      const v = acrosses[i]!;
      const w = 1 - v * v;
      const push = go * w * (1 - 5 * v * v);
      // u + push f(u) = u0 by Newton's rule; three rounds come to rounding.
      let u = u0;
      for (let round = 0; round < 3; round++) {
        const q = Math.max(0, 1 - u * u);
        const q2 = q * q;
        u -= (u - u0 + push * q * q2) / (1 - 6 * push * u * q2);
      }
      const q = Math.max(0, 1 - u * u);
      acrosses[i] = v - go * 6 * u * q * q * v * w * w;
      alongs[i] = u + tool;
    }
    if (ahead) break;
  }
  for (let k = 0; k < n; k++) {
    const i = stirred[k]!;
    const along = alongs[k]! * reach;
    const across = acrosses[k]! * reach;
    x[i] = bx + along * c - across * s;
    y[i] = by + along * s + across * c;
  }
}

/** False when no speck in the box is moved. */
export function strokeReaches(f: Float64Array, at: number, box: Box): boolean {
  const [bx, by, c, s, length, reach] = [
    f[at + 1]!,
    f[at + 2]!,
    f[at + 3]!,
    f[at + 4]!,
    f[at + 5]!,
    f[at + 6]!,
  ];
  if (f[at + 7] === 0) return false;
  const px = (box.left + box.right) / 2 - bx;
  const py = (box.front + box.back) / 2 - by;
  const [wide, deep] = [(box.right - box.left) / 2, (box.back - box.front) / 2];
  const alongHalf = wide * Math.abs(c) + deep * Math.abs(s);
  const acrossHalf = wide * Math.abs(s) + deep * Math.abs(c);
  return (
    Math.abs(py * c - px * s) <= reach + acrossHalf &&
    Math.abs(px * c + py * s - length / 2) <= length / 2 + reach + alongHalf
  );
}

/**
 * How far the flow reaches along the path is (1 - u^2)^3: 1 at the tool, 0 from one reach off, smooth to the second
 * derivative. Across it is g(v) = v (1 - v^2)^2, so that the film at the tool goes with it and returns beside it.
 */
function acrossShape(v: number): number {
  const q = Math.max(0, 1 - v * v);
  return v * q * q;
}

function acrossSlope(v: number): number {
  return Math.max(0, 1 - v * v) * (1 - 5 * v * v);
}
