/** Where the figures of contour lines stand: on their line, clear of each other and of the mark of the thinnest place. */
import type { Point } from '#core/piece/piece.ts';
import { type Box, covered, textWidth } from '#web/charts/label-places.ts';
import { type Frame, toPixel } from '#web/drawing/frame.ts';

export interface ContourLabel {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

/** Shorter lines carry no figure, px. */
const SHORTEST = 70;

/** At most two figures a level, on its longest lines. */
const MOST = 2;

/** Room that a figure leaves around everything else, px: text is drawn with a rim, and widths are estimates. */
export const CLEAR_px = 4;

/** Where along a line a figure is tried: its middle first, then outwards to both sides. */
const TRIES = Array.from({ length: 47 }, (_, i) => 0.5 + (i % 2 === 0 ? 0.02 : -0.02) * Math.ceil(i / 2));

/** The box with room around it. */
export function grown(box: Box, by = CLEAR_px): Box {
  return { left: box.left - by, right: box.right + by, top: box.top - by, bottom: box.bottom + by };
}

/** `lines` and `texts` by level; `room` holds all figures. A level with no room has no figure on the map; the legend has all. */
export function contourLabels(
  lines: readonly (readonly (readonly Point[])[])[],
  texts: readonly string[],
  frame: Frame,
  size: number,
  room: Box,
  taken: readonly Box[],
): ContourLabel[] {
  const boxes = taken.map((box) => grown(box));
  const labels: ContourLabel[] = [];
  for (const [level, runs] of lines.entries()) {
    const text = texts[level] ?? '';
    const half = textWidth(text, size) / 2 + 1;
    const pixels = runs
      .map((run) => run.map((point) => toPixel(frame, point)))
      .map((run) => ({ run, length: lengthOf(run) }))
      .filter(({ length }) => length >= SHORTEST)
      .sort((a, b) => b.length - a.length)
      .slice(0, MOST);
    for (const { run } of pixels)
      for (const part of TRIES) {
        const at = run[Math.round(part * (run.length - 1))]!;
        const box = {
          left: at.x - half,
          right: at.x + half,
          top: at.y - size * 0.5,
          bottom: at.y + size * 0.5,
        };
        const out =
          box.left < room.left || box.right > room.right || box.top < room.top || box.bottom > room.bottom;
        if (out || covered(box, boxes) > 0) continue;
        boxes.push(grown(box, 2));
        labels.push({ text, x: at.x, y: at.y });
        break;
      }
  }
  return labels;
}

function lengthOf(run: readonly { readonly x: number; readonly y: number }[]): number {
  let length = 0;
  for (let i = 1; i < run.length; i++)
    length += Math.hypot(run[i]!.x - run[i - 1]!.x, run[i]!.y - run[i - 1]!.y);
  return length;
}
