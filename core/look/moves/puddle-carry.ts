/**
 * A puddle pushes the film away on all sides: a speck at distance d goes to sqrt(d^2 + r^2). Areas outside are kept and the
 * puddle takes pi r^2. Lu, Jaffer, Jin, Zhao & Mao 2012, IEEE Computer Graphics and Applications 32(6), 26 (not opened; the
 * map follows from volume alone).
 */

import { positive } from '#core/quantity/domain.ts';
import type { Puddle } from '../move.ts';
import type { Carry } from './carry.ts';

export function puddleCarry({ centre, radius_m }: Puddle): Carry {
  const [cx, cy] = centre;
  const r2 = positive('puddle: radius_m', radius_m, 'm') ** 2;
  return {
    on(speck) {
      const x = speck[0]! - cx;
      const y = speck[1]! - cy;
      const d2 = x * x + y * y;
      // The speck exactly under the spout goes to one point of the rim, any one being as good.
      if (d2 === 0) {
        speck[0] = cx + radius_m;
        return;
      }
      const grow = Math.sqrt(1 + r2 / d2);
      speck[0] = cx + x * grow;
      speck[1] = cy + y * grow;
    },
    back(speck) {
      const x = speck[0]! - cx;
      const y = speck[1]! - cy;
      const d2 = x * x + y * y;
      if (d2 <= r2) return false;
      const shrink = Math.sqrt(1 - r2 / d2);
      speck[0] = cx + x * shrink;
      speck[1] = cy + y * shrink;
      return true;
    },
  };
}

/** Radius of the puddle a volume makes in a film of this thickness once it lies flat: sqrt(V / (pi h)). Both above 0. */
export function puddleRadius_m(volume_m3: number, film_m: number): number {
  return Math.sqrt(positive('volume_m3', volume_m3, 'm3') / (Math.PI * positive('film_m', film_m, 'm')));
}
