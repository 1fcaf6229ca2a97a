/** Board tilted and levelled: drawn out along the heading, narrowed across it by the same factor, so areas are kept. */

import { positive } from '#core/quantity/domain.ts';
import type { Tilt } from '../move.ts';
import type { Carry } from './carry.ts';

export function tiltCarry({ centre, heading_rad, draw }: Tilt): Carry {
  positive('tilt: draw', draw, '');
  const [cx, cy] = centre;
  const [c, s] = [Math.cos(heading_rad), Math.sin(heading_rad)];
  const go = (speck: Float64Array, longer: number) => {
    const x = speck[0]! - cx;
    const y = speck[1]! - cy;
    const along = (x * c + y * s) * longer;
    const across = (y * c - x * s) / longer;
    speck[0] = cx + along * c - across * s;
    speck[1] = cy + along * s + across * c;
  };
  return {
    on: (speck) => go(speck, draw),
    back(speck) {
      go(speck, 1 / draw);
      return true;
    },
  };
}
