/**
 * A puddle pushes the film away on all sides: a speck at distance d goes to sqrt(d^2 + r^2). Areas outside are kept and the
 * puddle takes pi r^2. Lu, Jaffer, Jin, Zhao & Mao 2012, IEEE Computer Graphics and Applications 32(6), 26 (not opened; the
 * map follows from volume alone).
 */

import { positive } from '#core/quantity/domain.ts';
import type { Puddle } from '../move.ts';
import { KIND, type Specks } from './specks.ts';

/** Figures 1 to 4: centre, radius squared, colour. */
export function puddleFigures({ centre, radius_m, colour }: Puddle): readonly number[] {
  return [KIND.puddle, centre[0], centre[1], positive('puddle: radius_m', radius_m, 'm') ** 2, colour];
}

export function puddleOn(f: Float64Array, speck: Float64Array): void {
  const [cx, cy, r2] = [f[1]!, f[2]!, f[3]!];
  const x = speck[0]! - cx;
  const y = speck[1]! - cy;
  const d2 = x * x + y * y;
  // The speck exactly under the spout goes to one point of the rim, any one being as good.
  if (d2 === 0) {
    speck[0] = cx + Math.sqrt(r2);
    return;
  }
  const grow = Math.sqrt(1 + r2 / d2);
  speck[0] = cx + x * grow;
  speck[1] = cy + y * grow;
}

/** Specks in the puddle get its colour and leave the list; the rest keep their order. */
export function puddleBack(f: Float64Array, at: number, specks: Specks, colours: Uint8Array): void {
  const { x, y, sample, count } = specks;
  const [cx, cy, r2, colour] = [f[at + 1]!, f[at + 2]!, f[at + 3]!, f[at + 4]!];
  let left = 0;
  for (let i = 0; i < count; i++) {
    const px = x[i]! - cx;
    const py = y[i]! - cy;
    const d2 = px * px + py * py;
    if (d2 <= r2) {
      colours[sample[i]!] = colour;
      continue;
    }
    const shrink = Math.sqrt(1 - r2 / d2);
    x[left] = cx + px * shrink;
    y[left] = cy + py * shrink;
    sample[left] = sample[i]!;
    left++;
  }
  specks.count = left;
}

/** Radius of the puddle a volume makes in a film of this thickness once it lies flat: sqrt(V / (pi h)). Both above 0. */
export function puddleRadius_m(volume_m3: number, film_m: number): number {
  return Math.sqrt(positive('volume_m3', volume_m3, 'm3') / (Math.PI * positive('film_m', film_m, 'm')));
}
