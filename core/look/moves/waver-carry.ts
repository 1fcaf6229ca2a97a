/**
 * Natural edges: four shears one after another, headings an eighth of a turn apart, each a smooth seeded wave of the
 * coordinate across it. A shear keeps areas exactly, which a plain displacement by noise does not (at an amplitude of a
 * fifth of the wavelength that makes puddles several per cent larger).
 */
import { randomStream } from '#core/numeric/random.ts';
import { positive } from '#core/quantity/domain.ts';
import type { Waver } from '../move.ts';
import type { Carry } from './carry.ts';

const SHEARS = 4;
/** Values of a wave before it repeats. */
const LENGTH = 256;

export function waverCarry({ amplitude_m, wavelength_m, seed }: Waver): Carry {
  positive('waver: wavelength_m', wavelength_m, 'm');
  const stream = randomStream(seed);
  const first = stream.uniform() * Math.PI;
  const shears = Array.from({ length: SHEARS }, (_, at) => {
    const heading = first + (at * Math.PI) / SHEARS;
    const wave = Float64Array.from({ length: LENGTH }, () => 2 * stream.uniform() - 1);
    return { c: Math.cos(heading), s: Math.sin(heading), wave };
  });
  const backwards = [...shears].reverse();
  const go = (speck: Float64Array, { c, s, wave }: (typeof shears)[number], way: 1 | -1) => {
    const across = (speck[1]! * c - speck[0]! * s) / wavelength_m;
    const along = way * amplitude_m * smooth(wave, across);
    speck[0] = speck[0]! + along * c;
    speck[1] = speck[1]! + along * s;
  };
  return {
    on(speck) {
      for (const shear of shears) go(speck, shear, 1);
    },
    back(speck) {
      for (const shear of backwards) go(speck, shear, -1);
      return true;
    },
  };
}

/** The wave at a place between its values, by a quintic that is flat at each of them; -1 to 1. */
function smooth(wave: Float64Array, at: number): number {
  const floor = Math.floor(at);
  const t = at - floor;
  const from = wave[((floor % LENGTH) + LENGTH) % LENGTH]!;
  const to = wave[(((floor + 1) % LENGTH) + LENGTH) % LENGTH]!;
  return from + (to - from) * t * t * t * (t * (6 * t - 15) + 10);
}
