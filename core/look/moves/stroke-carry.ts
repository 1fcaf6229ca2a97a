/**
 * A short stroke: film goes on with the tool along its path and comes back round both sides. The flow is that of a stream
 * function psi = f(s) g(n) which vanishes two tool widths off the path, s along it and n across. It is followed by the
 * symplectic Euler rule (Hairer, Lubich & Wanner 2006, Geometric Numerical Integration, section I.1.2; from memory), whose
 * every step keeps areas exactly, where a plain step of the flow loses several per cent.
 */

import type { Stroke } from '../move.ts';
import { above } from './above.ts';
import type { Carry } from './carry.ts';

/** Steps of at most an eighth of a tool width: the implicit line of each step then has one root, found in a few rounds. */
const STEPS_PER_WIDTH = 8;

export function strokeCarry({ from, to, width_m, depth }: Stroke): Carry {
  above('stroke: width_m', width_m);
  if (!(depth >= 0 && depth <= 1)) throw new RangeError(`stroke: depth must be 0 to 1, not ${depth}`);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const way = length * depth;
  if (way === 0) return { on: () => undefined, back: () => true };
  const [c, s] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const reach = 2 * width_m;
  const steps = Math.ceil((way / width_m) * STEPS_PER_WIDTH);
  const step = way / steps;

  // f rises from 0 to 1 over `reach` before the start of the path and falls after its end; g(n) = n (1 - (n / reach)^2)^2.
  const f = (along: number) => ramp((along + reach) / reach) * ramp((length + reach - along) / reach);
  const fSlope = (along: number) =>
    (rampSlope((along + reach) / reach) * ramp((length + reach - along) / reach) -
      ramp((along + reach) / reach) * rampSlope((length + reach - along) / reach)) /
    reach;
  const g = (across: number) => (Math.abs(across) >= reach ? 0 : across * (1 - (across / reach) ** 2) ** 2);
  const gSlope = (across: number) => {
    const q = (across / reach) ** 2;
    return q >= 1 ? 0 : (1 - q) * (1 - 5 * q);
  };
  const outside = (along: number, across: number) =>
    Math.abs(across) >= reach || along <= -reach || along >= length + reach;

  const go = (speck: Float64Array, walk: (place: Float64Array) => void) => {
    const x = speck[0]! - from[0];
    const y = speck[1]! - from[1];
    speck[0] = x * c + y * s;
    speck[1] = y * c - x * s;
    // Nothing crosses the border of the stirred film, so a speck outside it stays where it is.
    if (!outside(speck[0]!, speck[1]!)) for (let at = 0; at < steps; at++) walk(speck);
    const [along, across] = [speck[0]!, speck[1]!];
    speck[0] = from[0] + along * c - across * s;
    speck[1] = from[1] + along * s + across * c;
  };
  return {
    on(speck) {
      go(speck, (place) => {
        const turn = step * fSlope(place[0]!);
        const across = fixedPoint(place[1]!, (n) => place[1]! - turn * g(n));
        place[0] = place[0]! + step * f(place[0]!) * gSlope(across);
        place[1] = across;
      });
    },
    back(speck) {
      go(speck, (place) => {
        const push = step * gSlope(place[1]!);
        const along = fixedPoint(place[0]!, (x) => place[0]! - push * f(x));
        place[1] = place[1]! + step * fSlope(along) * g(place[1]!);
        place[0] = along;
      });
      return true;
    },
  };
}

/** 0 below 0, 1 above 1, smooth between with slope and curvature 0 at both ends. */
function ramp(t: number): number {
  return t <= 0 ? 0 : t >= 1 ? 1 : t * t * t * (t * (6 * t - 15) + 10);
}

function rampSlope(t: number): number {
  return t <= 0 || t >= 1 ? 0 : 30 * t * t * (1 - t) ** 2;
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
