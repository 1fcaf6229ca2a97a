/** Where the handles of puddles stand: on their puddles, moved apart where they would cover each other. */
import type { Pixel } from '#web/drawing/frame.ts';

/** Middle to middle, px: a handle is 26 px wide, and each must have 24 px to itself. */
export const HANDLE_GAP_px = 30;

const ROUNDS = 200;

/**
 * Places at least `gap` apart, inside a room of the given size as far as it is large enough. Places that are apart already stay;
 * those that coincide part in directions of their own, by their order. Deterministic.
 */
export function spreadHandles(
  at: readonly Pixel[],
  room: { readonly width: number; readonly height: number },
  gap = HANDLE_GAP_px,
): Pixel[] {
  const places = at.map(({ x, y }) => ({ x, y }));
  const edge = gap / 2;
  const keep = (value: number, size: number): number =>
    Math.min(Math.max(size - edge, edge), Math.max(edge, value));
  for (let round = 0; round < ROUNDS; round++) {
    let moved = false;
    for (let i = 0; i < places.length; i++)
      for (let j = 0; j < i; j++) {
        const [a, b] = [places[i]!, places[j]!];
        const away = Math.hypot(a.x - b.x, a.y - b.y);
        if (away >= gap - 0.01) continue;
        // A turn of the golden angle for each pair, so that a heap of handles opens to all sides.
        const turn = 2.399963 * (i + 1) + 0.7 * round;
        const ux = away > 0.5 ? (a.x - b.x) / away : Math.cos(turn);
        const uy = away > 0.5 ? (a.y - b.y) / away : Math.sin(turn);
        const by = (gap - away) / 2 + 0.1;
        a.x = keep(a.x + ux * by, room.width);
        a.y = keep(a.y + uy * by, room.height);
        b.x = keep(b.x - ux * by, room.width);
        b.y = keep(b.y - uy * by, room.height);
        moved = true;
      }
    if (!moved) break;
  }
  return places;
}
