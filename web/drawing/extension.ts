/** Extension lines: from a measured point to its dimension line and a little past it. */
import type { Box } from '#web/charts/label-places.ts';
import type { Pixel } from './frame.ts';

/** How far past the dimension line they run, px. */
const PAST_PX = 5;

export interface ExtensionLine {
  readonly from: Pixel;
  readonly to: Pixel;
}

/** The two lines of a dimension; none where the measured point lies on the dimension line. */
export function extensionEnds(d: {
  readonly from: Pixel;
  readonly to: Pixel;
  readonly measuredFrom: Pixel;
  readonly measuredTo: Pixel;
}): ExtensionLine[] {
  return [run(d.measuredFrom, d.from), run(d.measuredTo, d.to)].filter((line) => line !== null);
}

function run(from: Pixel, to: Pixel): ExtensionLine | null {
  const size = Math.hypot(to.x - from.x, to.y - from.y);
  if (!(size > 1)) return null;
  const past = PAST_PX / size;
  return { from, to: { x: to.x + (to.x - from.x) * past, y: to.y + (to.y - from.y) * past } };
}

/** Does the line run through the box? Touching its border counts. */
export function crossesBox(line: ExtensionLine, box: Box): boolean {
  return inside(line, box) !== null;
}

/** What is left of a line outside boxes: it is broken where it would run through a figure. */
export function outsideOf(line: ExtensionLine, boxes: readonly Box[]): ExtensionLine[] {
  const covered = boxes
    .map((box) => inside(line, box))
    .filter((part) => part !== null)
    .sort((a, b) => a[0] - b[0]);
  const at = (part: number): Pixel => ({
    x: line.from.x + (line.to.x - line.from.x) * part,
    y: line.from.y + (line.to.y - line.from.y) * part,
  });
  const left: ExtensionLine[] = [];
  let done = 0;
  for (const [start, end] of [...covered, [1, 1] as const]) {
    if (start > done + 1e-9) left.push({ from: at(done), to: at(start) });
    done = Math.max(done, end);
  }
  return left;
}

/** From which part of the line to which it lies in the box; null where it does not. */
function inside({ from, to }: ExtensionLine, box: Box): readonly [number, number] | null {
  let enter = 0;
  let leave = 1;
  for (const [start, end, low, high] of [
    [from.x, to.x, box.left, box.right],
    [from.y, to.y, box.top, box.bottom],
  ] as const) {
    const go = end - start;
    if (go === 0) {
      if (start < low || start > high) return null;
      continue;
    }
    const [a, b] = [(low - start) / go, (high - start) / go];
    enter = Math.max(enter, Math.min(a, b));
    leave = Math.min(leave, Math.max(a, b));
  }
  return enter <= leave ? [enter, leave] : null;
}
