/** A stick or comb drawn across the film: a shear along the line, so areas are kept whatever the profile beside the tool. */

import { positive } from '#core/quantity/domain.ts';
import type { Drag } from '../move.ts';
import type { Carry } from './carry.ts';

/**
 * Share of the tool's way the surface goes along at a distance beside a thin blade in a film on a board that it sticks to:
 * (4 / pi) atan(exp(-pi d / (2 h))). From Laplace's equation for slow flow along the blade in a film that sticks to the board
 * and is free above (derived here; half as far at 0.5611 film thicknesses).
 *
 * dragShare(0.0015, 0.0015) is 0.2610.
 */
export function dragShare(distance_m: number, film_m: number): number {
  if (distance_m <= 0) return 1;
  return (4 / Math.PI) * Math.atan(Math.exp((-Math.PI * distance_m) / (2 * film_m)));
}

export function dragCarry(drag: Drag): Carry {
  const film_m = positive('drag: film_m', drag.film_m, 'm');
  if (drag.width_m < 0) throw new RangeError(`drag: width_m must be 0 or more, not ${drag.width_m}`);
  if (!Number.isInteger(drag.teeth) || drag.teeth < 1)
    throw new RangeError(`drag: teeth must be a whole number from 1, not ${drag.teeth}`);
  const pitch = drag.teeth > 1 ? positive('drag: pitch_m', drag.pitch_m, 'm') : 1;
  const [mx, my] = [Math.cos(drag.heading_rad), Math.sin(drag.heading_rad)];
  const [bx, by] = drag.through;
  const half = drag.width_m / 2;
  const last = drag.teeth - 1;
  // Past eight thicknesses the film moves by less than five millionths of the pull.
  const reach = half + 8 * film_m;
  const shift = (x: number, y: number): number => {
    const off = (x - bx) * -my + (y - by) * mx;
    const tooth = Math.min(last, Math.max(0, Math.round(off / pitch + last / 2)));
    const beside = Math.abs(off - (tooth - last / 2) * pitch);
    return beside > reach ? 0 : drag.pull_m * dragShare(beside - half, film_m);
  };
  const go = (speck: Float64Array, way: 1 | -1) => {
    const along = way * shift(speck[0]!, speck[1]!);
    speck[0] = speck[0]! + along * mx;
    speck[1] = speck[1]! + along * my;
  };
  return {
    on: (speck) => go(speck, 1),
    back(speck) {
      go(speck, -1);
      return true;
    },
  };
}
