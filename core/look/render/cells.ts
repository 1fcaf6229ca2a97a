/** A panel cut into cells across its length so narrow that the way to the plane of the look is linear in each. */
import type { Panel } from '../look.ts';

/** x = a + b u + c v and y = d + e u + f v in metres, six figures a cell, cells from left to right. */
export interface Cells {
  readonly width_m: number;
  readonly count: number;
  readonly maps: Float64Array;
}

/** Further off than this from the true place is not seen in a full-size print. */
const CLOSE_M = 5e-5;
const MOST = 512;

export function cellsOf(panel: Panel): Cells {
  for (let count = 1; ; count *= 2) {
    const width_m = panel.width_m / count;
    const maps = new Float64Array(6 * count);
    let stray = 0;
    for (let cell = 0; cell < count; cell++) {
      stray = Math.max(stray, layMap(panel, panel.left_m + cell * width_m, width_m, maps, 6 * cell));
      if (stray > CLOSE_M && count < MOST) break;
    }
    if (stray <= CLOSE_M || count >= MOST) return { width_m, count, maps };
  }
}

/** Lays a linear map through three corners of a cell; answers how far off it is elsewhere. */
function layMap(
  { front_m, depth_m, toPlane }: Panel,
  left_m: number,
  width_m: number,
  maps: Float64Array,
  at: number,
) {
  const origin = toPlane(left_m, front_m);
  const right = toPlane(left_m + width_m, front_m);
  const back = toPlane(left_m, front_m + depth_m);
  for (const axis of [0, 1] as const) {
    const b = (right[axis] - origin[axis]) / width_m;
    const c = (back[axis] - origin[axis]) / depth_m;
    maps.set([origin[axis] - b * left_m - c * front_m, b, c], at + 3 * axis);
  }
  let stray = 0;
  for (const i of [0.25, 0.5, 0.75, 1])
    for (const j of [0, 0.5, 1]) {
      const [u, v] = [left_m + i * width_m, front_m + j * depth_m];
      const [x, y] = toPlane(u, v);
      const dx = maps[at]! + maps[at + 1]! * u + maps[at + 2]! * v - x;
      const dy = maps[at + 3]! + maps[at + 4]! * u + maps[at + 5]! * v - y;
      stray = Math.max(stray, Math.hypot(dx, dy));
    }
  return stray;
}
