/** Where the panels of a look lie on a drawing: the top alone, or with its faces unfolded round it. */

import type { Panel } from '../look.ts';
import type { Place } from '../move.ts';

/** A panel on a drawing: its own left front corner comes to `at`, turned counter-clockwise. Nothing is stretched. */
export interface PlacedPanel {
  readonly panel: Panel;
  readonly at: Place;
  readonly turn_rad: number;
}

export interface Drawing {
  readonly panels: readonly PlacedPanel[];
  readonly left_m: number;
  readonly front_m: number;
  readonly width_m: number;
  readonly depth_m: number;
}

/** Between the top and a face on a drawing, so that the arris is seen; m. */
export const FACE_GAP_M = 0.004;

/** The top and the pieces that go on beside it, as they lie. RangeError without a panel. */
export function topDrawing(panels: readonly Panel[]): Drawing {
  return framed(
    panels.filter(({ kind }) => kind === 'top' || kind === 'piece').map((panel) => placed(panel)),
  );
}

/**
 * The same with every face and splash folded flat against its edge. A face that follows a curve cannot lie against it without
 * being torn: it is drawn straight, in strips no longer
 * than the top, in front of all others.
 */
export function unfoldedDrawing(panels: readonly Panel[]): Drawing {
  const lying: PlacedPanel[] = [];
  const loose: Panel[] = [];
  for (const panel of panels)
    if (panel.kind === 'top' || panel.kind === 'piece') lying.push(placed(panel));
    else if (isStraight(panel)) lying.push(placed(panel));
    else loose.push(panel);
  const box = framed(lying);
  let front = box.front_m - 0.02;
  for (const panel of loose) {
    const parts = Math.ceil(panel.width_m / box.width_m - 1e-9);
    const width_m = panel.width_m / parts;
    for (let part = 0; part < parts; part++) {
      front -= panel.depth_m;
      const left_m = panel.left_m + part * width_m;
      const inside: Panel['inside'] = (u, v) => u >= left_m && u <= left_m + width_m && panel.inside(u, v);
      const strip = { ...panel, left_m, width_m, inside };
      lying.push({ panel: strip, at: [box.left_m + (box.width_m - width_m) / 2, front], turn_rad: 0 });
      front -= 0.01;
    }
  }
  return framed(lying);
}

/** The edge by which a panel hangs on the top, end, middle, end: the upper one of a face, the lower one of everything else. */
function hinge(panel: Panel): readonly [Place, Place, Place] {
  const v = panel.kind === 'face' ? panel.front_m + panel.depth_m : panel.front_m;
  const on = (share: number) => panel.toPlane(panel.left_m + share * panel.width_m, v);
  return [on(0), on(0.5), on(1)];
}

/** Rounded corners take a little of an edge's length; a rim takes a third and more. */
const STRAIGHT = 0.05;

function isStraight(panel: Panel): boolean {
  const [a, , b] = hinge(panel);
  return Math.hypot(b[0] - a[0], b[1] - a[1]) > (1 - STRAIGHT) * panel.width_m;
}

function placed(panel: Panel): PlacedPanel {
  const [a, middle, b] = hinge(panel);
  const turn_rad = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const up_m = panel.kind === 'face' ? -panel.depth_m - FACE_GAP_M : panel.kind === 'splash' ? FACE_GAP_M : 0;
  const [c, s] = [Math.cos(turn_rad), Math.sin(turn_rad)];
  const back_m = panel.width_m / 2;
  return { panel, at: [middle[0] - back_m * c - up_m * s, middle[1] - back_m * s + up_m * c], turn_rad };
}

/** Where own coordinates of a placed panel lie on the drawing. */
export function onDrawing({ panel, at, turn_rad }: PlacedPanel, u_m: number, v_m: number): Place {
  const [c, s] = [Math.cos(turn_rad), Math.sin(turn_rad)];
  const [u, v] = [u_m - panel.left_m, v_m - panel.front_m];
  return [at[0] + c * u - s * v, at[1] + s * u + c * v];
}

function framed(panels: readonly PlacedPanel[]): Drawing {
  if (panels.length === 0) throw new RangeError('a drawing needs a panel');
  const corners = panels.flatMap((each) => {
    const { left_m, front_m, width_m, depth_m } = each.panel;
    return [0, 1, 2, 3].map((i) => onDrawing(each, left_m + (i % 2) * width_m, front_m + (i >> 1) * depth_m));
  });
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const [left_m, front_m] = [Math.min(...xs), Math.min(...ys)];
  return { panels, left_m, front_m, width_m: Math.max(...xs) - left_m, depth_m: Math.max(...ys) - front_m };
}
