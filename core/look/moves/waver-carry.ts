/**
 * Natural edges: four shears one after another, headings an eighth of a turn apart, each a smooth seeded wave of the
 * coordinate across it. A shear keeps areas exactly, which a plain displacement by noise does not (at an amplitude of a
 * fifth of the wavelength that makes puddles several per cent larger).
 */
import { randomStream } from '#core/numeric/random.ts';
import { positive } from '#core/quantity/domain.ts';
import type { Waver } from '../move.ts';
import { KIND, type Specks } from './specks.ts';

export const SHEARS = 4;
/** Values of a wave before it repeats. */
export const WAVE = 256;

export interface WaverFigures {
  readonly figures: readonly number[];
  /** The waves of the four shears, one after the other. */
  readonly waves: Float64Array;
}

/**
 * Figures 1 to 11: amplitude, wavelength, which block of four waves, headings of the shears.
 * @param block place of this waver among the wavers of a pattern.
 */
export function waverFigures({ amplitude_m, wavelength_m, seed }: Waver, block: number): WaverFigures {
  positive('waver: wavelength_m', wavelength_m, 'm');
  const stream = randomStream(seed);
  const first = stream.uniform() * Math.PI;
  const headings = Array.from({ length: SHEARS }, (_, at) => first + (at * Math.PI) / SHEARS);
  return {
    figures: [
      KIND.waver,
      amplitude_m,
      wavelength_m,
      block,
      ...headings.flatMap((heading) => [Math.cos(heading), Math.sin(heading)]),
    ],
    waves: Float64Array.from({ length: SHEARS * WAVE }, () => 2 * stream.uniform() - 1),
  };
}

export function waverOn(f: Float64Array, waves: Float64Array, speck: Float64Array): void {
  for (let shear = 0; shear < SHEARS; shear++) {
    const [c, s] = [f[4 + 2 * shear]!, f[5 + 2 * shear]!];
    const along = f[1]! * smooth(waves, shear * WAVE, (speck[1]! * c - speck[0]! * s) / f[2]!);
    speck[0] = speck[0]! + along * c;
    speck[1] = speck[1]! + along * s;
  }
}

export function waverBack(f: Float64Array, at: number, waves: Float64Array, { x, y, count }: Specks): void {
  const [amplitude, wavelength, block] = [f[at + 1]!, f[at + 2]!, f[at + 3]!];
  for (let shear = SHEARS - 1; shear >= 0; shear--) {
    const c = f[at + 4 + 2 * shear]!;
    const s = f[at + 5 + 2 * shear]!;
    const from = (block * SHEARS + shear) * WAVE;
    for (let i = 0; i < count; i++) {
      const px = x[i]!;
      const py = y[i]!;
      const along = amplitude * smooth(waves, from, (py * c - px * s) / wavelength);
      x[i] = px - along * c;
      y[i] = py - along * s;
    }
  }
}

/** The wave at a place between its values, by a quintic that is flat at each of them; -1 to 1. */
function smooth(waves: Float64Array, from: number, at: number): number {
  const floor = Math.floor(at);
  const t = at - floor;
  // WAVE is a power of two, so this is the remainder for places left of 0 too.
  const low = waves[from + (floor & (WAVE - 1))]!;
  const high = waves[from + ((floor + 1) & (WAVE - 1))]!;
  return low + (high - low) * t * t * t * (t * (6 * t - 15) + 10);
}
