/** A stick or comb drawn across the film: a shear along the line, so areas are kept whatever the profile beside the tool. */

import { positive } from '#core/quantity/domain.ts';
import type { Drag } from '../move.ts';
import { type Box, KIND, type Specks } from './specks.ts';

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

/** Past eight thicknesses the film moves by less than five millionths of the pull. */
const REACH_FILMS = 8;

/** Figures 1 to 9: place, heading, pull, half width, film, last tooth, pitch. */
export function dragFigures(drag: Drag): readonly number[] {
  const film_m = positive('drag: film_m', drag.film_m, 'm');
  if (drag.width_m < 0) throw new RangeError(`drag: width_m must be 0 or more, not ${drag.width_m}`);
  if (!Number.isInteger(drag.teeth) || drag.teeth < 1)
    throw new RangeError(`drag: teeth must be a whole number from 1, not ${drag.teeth}`);
  const pitch = drag.teeth > 1 ? positive('drag: pitch_m', drag.pitch_m, 'm') : 1;
  const [mx, my] = [Math.cos(drag.heading_rad), Math.sin(drag.heading_rad)];
  const [bx, by] = drag.through;
  return [KIND.drag, bx, by, mx, my, drag.pull_m, drag.width_m / 2, film_m, drag.teeth - 1, pitch];
}

function shift(f: Float64Array, at: number, off: number): number {
  const half = f[at + 6]!;
  const film = f[at + 7]!;
  const last = f[at + 8]!;
  const pitch = f[at + 9]!;
  const tooth = Math.min(last, Math.max(0, Math.floor(off / pitch + last / 2 + 0.5)));
  const beside = Math.abs(off - (tooth - last / 2) * pitch);
  return beside > half + REACH_FILMS * film ? 0 : f[at + 5]! * dragShare(beside - half, film);
}

export function dragOn(f: Float64Array, speck: Float64Array): void {
  const [bx, by, mx, my] = [f[1]!, f[2]!, f[3]!, f[4]!];
  const along = shift(f, 0, (speck[1]! - by) * mx - (speck[0]! - bx) * my);
  speck[0] = speck[0]! + along * mx;
  speck[1] = speck[1]! + along * my;
}

export function dragBack(f: Float64Array, at: number, { x, y, count }: Specks): void {
  const [bx, by, mx, my] = [f[at + 1]!, f[at + 2]!, f[at + 3]!, f[at + 4]!];
  const band = (f[at + 8]! / 2) * f[at + 9]! + f[at + 6]! + REACH_FILMS * f[at + 7]!;
  for (let i = 0; i < count; i++) {
    const off = (y[i]! - by) * mx - (x[i]! - bx) * my;
    if (off > band || off < -band) continue;
    const along = shift(f, at, off);
    x[i] = x[i]! - along * mx;
    y[i] = y[i]! - along * my;
  }
}

/** False when no speck in the box is moved. */
export function dragReaches(f: Float64Array, at: number, box: Box): boolean {
  const [bx, by, mx, my] = [f[at + 1]!, f[at + 2]!, f[at + 3]!, f[at + 4]!];
  const band = (f[at + 8]! / 2) * f[at + 9]! + f[at + 6]! + REACH_FILMS * f[at + 7]!;
  const off = ((box.front + box.back) / 2 - by) * mx - ((box.left + box.right) / 2 - bx) * my;
  const wide = ((box.back - box.front) * Math.abs(mx) + (box.right - box.left) * Math.abs(my)) / 2;
  return Math.abs(off) <= band + wide;
}
