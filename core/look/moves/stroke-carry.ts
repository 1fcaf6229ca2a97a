/**
 * A short stroke: film goes on with the tool while it passes and comes back round both sides. The flow round the tool is that
 * of a stream function psi = depth f(s) g(n), s along the path from where the tool is and n across; it vanishes two tool
 * widths off. The film is followed while the tool goes its way by the symplectic Euler rule (Hairer, Lubich & Wanner 2006,
 * Geometric Numerical Integration, section I.1.2; from memory), whose every step keeps areas exactly, where a plain step of
 * the flow loses several per cent.
 */

import { positive } from '#core/quantity/domain.ts';
import type { Stroke } from '../move.ts';
import type { Carry } from './carry.ts';

/** Steps of at most an eighth of a tool width: the implicit line of each step then has one root, found in a few rounds. */
const STEPS_PER_WIDTH = 8;

export function strokeCarry({ from, to, width_m, depth }: Stroke): Carry {
  positive('stroke: width_m', width_m, 'm');
  if (!(depth >= 0 && depth <= 1)) throw new RangeError(`stroke: depth must be 0 to 1, not ${depth}`);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length === 0 || depth === 0) return { on: () => undefined, back: () => true };
  const [c, s] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const reach = 2 * width_m;
  const steps = Math.ceil((length / width_m) * STEPS_PER_WIDTH);
  const step = length / steps;

  const outside = (along: number, across: number) =>
    Math.abs(across) >= reach || along <= -reach || along >= length + reach;
  /** Follows a speck in the frame of the path through the steps whose tool can reach it, in the order given. */
  const go = (speck: Float64Array, walk: (place: Float64Array, tool_m: number) => void, way: 1 | -1) => {
    const x = speck[0]! - from[0];
    const y = speck[1]! - from[1];
    speck[0] = x * c + y * s;
    speck[1] = y * c - x * s;
    // Nothing crosses the border of the stirred film, so a speck outside it stays where it is.
    if (!outside(speck[0]!, speck[1]!))
      for (let at = 0; at < steps; at++) {
        const tool_m = ((way > 0 ? at : steps - 1 - at) + 0.5) * step;
        if (Math.abs(speck[0]! - tool_m) < reach + step) walk(speck, tool_m);
      }
    const [along, across] = [speck[0]!, speck[1]!];
    speck[0] = from[0] + along * c - across * s;
    speck[1] = from[1] + along * s + across * c;
  };
  const go_m = step * depth;
  return {
    on(speck) {
      go(
        speck,
        (place, tool_m) => {
          const near = (place[0]! - tool_m) / reach;
          const turn = go_m * alongSlope(near);
          const across = fixedPoint(place[1]!, (n) => place[1]! - turn * acrossShape(n / reach));
          place[0] = place[0]! + go_m * alongShape(near) * acrossSlope(across / reach);
          place[1] = across;
        },
        1,
      );
    },
    back(speck) {
      go(
        speck,
        (place, tool_m) => {
          const push = go_m * acrossSlope(place[1]! / reach);
          const along = fixedPoint(place[0]!, (x) => place[0]! - push * alongShape((x - tool_m) / reach));
          place[1] = place[1]! + go_m * alongSlope((along - tool_m) / reach) * acrossShape(place[1]! / reach);
          place[0] = along;
        },
        -1,
      );
      return true;
    },
  };
}

/** How far the flow reaches along the path: 1 at the tool, 0 from one reach off, smooth to the second derivative. */
function alongShape(q: number): number {
  return Math.abs(q) >= 1 ? 0 : (1 - q * q) ** 3;
}

function alongSlope(q: number): number {
  return Math.abs(q) >= 1 ? 0 : -6 * q * (1 - q * q) ** 2;
}

/** The same across it: q (1 - q^2)^2, so that the film at the tool goes with it and returns beside it. */
function acrossShape(q: number): number {
  return Math.abs(q) >= 1 ? 0 : q * (1 - q * q) ** 2;
}

function acrossSlope(q: number): number {
  return Math.abs(q) >= 1 ? 0 : (1 - q * q) * (1 - 5 * q * q);
}

/** The step's implicit line contracts by about 1/8 a round: to rounding within 20. */
function fixedPoint(start: number, next: (value: number) => number): number {
  let value = start;
  for (let round = 0; round < 40; round++) {
    const better = next(value);
    if (Math.abs(better - value) <= 1e-16 + 1e-15 * Math.abs(value)) return better;
    value = better;
  }
  return value;
}
