/** A turned stick: every ring goes round by its own angle, turn exp(-d / reach); rings keep their areas. */

import { positive } from '#core/quantity/domain.ts';
import type { Swirl } from '../move.ts';
import type { Carry } from './carry.ts';

export function swirlCarry({ centre, turn_rad, reach_m }: Swirl): Carry {
  const [cx, cy] = centre;
  positive('swirl: reach_m', reach_m, 'm');
  const go = (speck: Float64Array, way: 1 | -1) => {
    const x = speck[0]! - cx;
    const y = speck[1]! - cy;
    const angle = way * turn_rad * Math.exp(-Math.hypot(x, y) / reach_m);
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    speck[0] = cx + c * x - s * y;
    speck[1] = cy + s * x + c * y;
  };
  return {
    on: (speck) => go(speck, 1),
    back(speck) {
      go(speck, -1);
      return true;
    },
  };
}
