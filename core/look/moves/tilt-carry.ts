/** Board tilted and levelled: drawn out along the heading, narrowed across it by the same factor, so areas are kept. */

import { positive } from '#core/quantity/domain.ts';
import type { Tilt } from '../move.ts';
import { KIND, type Specks } from './specks.ts';

/** Figures 1 to 5: centre, heading, draw. */
export function tiltFigures({ centre, heading_rad, draw }: Tilt): readonly number[] {
  positive('tilt: draw', draw, '');
  return [KIND.tilt, centre[0], centre[1], Math.cos(heading_rad), Math.sin(heading_rad), draw];
}

export function tiltOn(f: Float64Array, speck: Float64Array): void {
  const [cx, cy, c, s, draw] = [f[1]!, f[2]!, f[3]!, f[4]!, f[5]!];
  const x = speck[0]! - cx;
  const y = speck[1]! - cy;
  const along = (x * c + y * s) * draw;
  const across = (y * c - x * s) / draw;
  speck[0] = cx + along * c - across * s;
  speck[1] = cy + along * s + across * c;
}

export function tiltBack(f: Float64Array, at: number, { x, y, count }: Specks): void {
  const [cx, cy, c, s, draw] = [f[at + 1]!, f[at + 2]!, f[at + 3]!, f[at + 4]!, f[at + 5]!];
  const shorter = 1 / draw;
  for (let i = 0; i < count; i++) {
    const px = x[i]! - cx;
    const py = y[i]! - cy;
    const along = (px * c + py * s) * shorter;
    const across = (py * c - px * s) * draw;
    x[i] = cx + along * c - across * s;
    y[i] = cy + along * s + across * c;
  }
}
