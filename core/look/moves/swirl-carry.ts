/** A turned stick: every ring goes round by its own angle, turn exp(-d / reach); rings keep their areas. */

import { positive } from '#core/quantity/domain.ts';
import type { Swirl } from '../move.ts';
import { type Box, KIND, type Specks } from './specks.ts';

/** Past so many reaches the angle is under the rounding of a coordinate. */
const FAR = 40;

/** Figures 1 to 4: centre, turn, reach. */
export function swirlFigures({ centre, turn_rad, reach_m }: Swirl): readonly number[] {
  return [KIND.swirl, centre[0], centre[1], turn_rad, positive('swirl: reach_m', reach_m, 'm')];
}

export function swirlOn(f: Float64Array, speck: Float64Array): void {
  const x = speck[0]! - f[1]!;
  const y = speck[1]! - f[2]!;
  const angle = f[3]! * Math.exp(-Math.sqrt(x * x + y * y) / f[4]!);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  speck[0] = f[1]! + c * x - s * y;
  speck[1] = f[2]! + s * x + c * y;
}

export function swirlBack(f: Float64Array, at: number, { x, y, count }: Specks): void {
  const [cx, cy, turn, reach] = [f[at + 1]!, f[at + 2]!, f[at + 3]!, f[at + 4]!];
  const far = FAR * reach;
  for (let i = 0; i < count; i++) {
    const px = x[i]! - cx;
    const py = y[i]! - cy;
    const d = Math.sqrt(px * px + py * py);
    if (d > far) continue;
    const angle = turn * Math.exp(-d / reach);
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    x[i] = cx + c * px + s * py;
    y[i] = cy - s * px + c * py;
  }
}

/** False when no speck in the box is moved. */
export function swirlReaches(f: Float64Array, at: number, box: Box): boolean {
  const dx = Math.max(box.left - f[at + 1]!, f[at + 1]! - box.right, 0);
  const dy = Math.max(box.front - f[at + 2]!, f[at + 2]! - box.back, 0);
  return Math.hypot(dx, dy) <= FAR * f[at + 4]!;
}
