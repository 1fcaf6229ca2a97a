/**
 * The picture of a scene, row by row: each pixel is followed back at 2 by 2 places, and at 4 by 4 where those differ, and the
 * light of all places is added up as light. Which rows are asked for together changes nothing, so bands can go to workers.
 */
import { FULL } from './cover.ts';
import { byteOfLight } from './encode.ts';
import { type Follow, followFigures } from './follow.ts';
import { streakShare } from './gloss.ts';
import { CELL_FIGURES, COLOUR_FIGURES, cellAt, PANEL_FIGURES, type Scene } from './scene.ts';
import { sparkle } from './sparkle.ts';

/** Places along each side of a pixel: first, and where the first ones differ. */
const FIRST = 2;
const FINE = 4;
/** Pixels followed together, small enough to stay close to the processor and close together on the piece. */
const WIDE = 32;
const HIGH = 16;

/** RGBA of rows `from` to before `to` of the window, four bytes a pixel, alpha by the share covered. RangeError outside the window. */
export function renderRows(scene: Scene, from: number, to: number): Uint8ClampedArray<ArrayBuffer> {
  const { columns, rows } = scene.window;
  if (!(Number.isInteger(from) && Number.isInteger(to) && from >= 0 && to > from && to <= rows))
    throw new RangeError(`rows ${from} to ${to} do not lie in the ${rows} rows of the window`);
  const out = new Uint8ClampedArray(4 * columns * (to - from));
  const block = blockOf(scene);
  // Blocks counted from the corner of the window: the samples of a pixel are the same in any block.
  for (let top = from; top < to; top += HIGH)
    for (let left = 0; left < columns; left += WIDE)
      block(left, top, Math.min(columns, left + WIDE), Math.min(to, top + HIGH), out, from);
  return out;
}

export function renderScene(scene: Scene): Uint8ClampedArray<ArrayBuffer> {
  return renderRows(scene, 0, scene.window.rows);
}

function blockOf(scene: Scene) {
  const { window, cover, panelOf, panels, cells, colours } = scene;
  const follow: Follow = followFigures(scene, scene.ground, WIDE * HIGH * FIRST * FIRST);
  const pixels = new Int32Array(WIDE * HIGH);
  const rough = new Int32Array(WIDE * HIGH);
  const fine = (WIDE * HIGH * FIRST * FIRST) / (FINE * FINE);
  const light = new Float64Array(3);

  /** Puts the places of a pixel into the follower. */
  const place = (index: number, side: number, count: number): void => {
    const row = Math.floor(index / window.columns);
    const column = window.column + index - row * window.columns;
    const cell = cellAt(panels, panelOf[index]!, column + 0.5, window.row + row + 0.5) * CELL_FIGURES;
    const [a, b, c] = [cells[cell]!, cells[cell + 1]!, cells[cell + 2]!];
    const [d, e, f] = [cells[cell + 3]!, cells[cell + 4]!, cells[cell + 5]!];
    for (let j = 0; j < side; j++)
      for (let i = 0; i < side; i++) {
        const p = column + (i + 0.5) / side;
        const q = window.row + row + (j + 0.5) / side;
        follow.x[count] = a + b * p + c * q;
        follow.y[count] = d + e * p + f * q;
        count++;
      }
  };
  /** Where the colours of the panel begin that covers a pixel: those of tops, or those of faces. */
  const firstColour = (index: number): number =>
    (panels[panelOf[index]! * PANEL_FIGURES + 7]! * colours.length) / COLOUR_FIGURES / 2;
  const gleams = (id: number): boolean => colours[id * COLOUR_FIGURES + 3]! > 0;
  /** Adds the light of one colour, its flakes being those at the place of sample k of the pixel. */
  const shine = (id: number, index: number, k: number, side: number, share: number): void => {
    const at = id * COLOUR_FIGURES;
    const flakes = colours[at + 3]!;
    let [film, bright] = [share, 0];
    if (flakes > 0) {
      const row = Math.floor(index / window.columns);
      const column = window.column + index - row * window.columns;
      const cell = cellAt(panels, panelOf[index]!, column + 0.5, window.row + row + 0.5) * CELL_FIGURES;
      const p = column + ((k % side) + 0.5) / side;
      const q = window.row + row + (Math.floor(k / side) + 0.5) / side;
      const spot = colours[at + 7]!;
      const x = cells[cell]! + cells[cell + 1]! * p + cells[cell + 2]! * q;
      const y = cells[cell + 3]! + cells[cell + 4]! * p + cells[cell + 5]! * q;
      film = share * (1 - flakes);
      bright =
        share * flakes * sparkle(Math.floor(x / spot), Math.floor(y / spot), scene.seed, colours[at + 8]!);
    }
    for (let c = 0; c < 3; c++)
      light[c] = light[c]! + film * colours[at + c]! + bright * colours[at + 4 + c]!;
  };
  const write = (index: number, out: Uint8ClampedArray, start: number): void => {
    const to = 4 * (index - start * window.columns);
    let [r, g, b] = [light[0]!, light[1]!, light[2]!];
    if (scene.fog !== null) {
      const keep = scene.fog[4 * index + 3]!;
      r = r * keep + scene.fog[4 * index]!;
      g = g * keep + scene.fog[4 * index + 1]!;
      b = b * keep + scene.fog[4 * index + 2]!;
    }
    if (scene.streak.light > 0) {
      const { streak } = scene;
      const row = Math.floor(index / window.columns);
      const column = window.column + index - row * window.columns;
      const across = (column + 0.5 - streak.left) / streak.wide;
      const up = (streak.front - window.row - row - 0.5) / streak.wide;
      const add = streak.light * streakShare(across, up);
      r += add;
      g += add;
      b += add;
    }
    out[to] = byteOfLight(r);
    out[to + 1] = byteOfLight(g);
    out[to + 2] = byteOfLight(b);
    out[to + 3] = Math.round((cover[index]! * 255) / FULL);
  };
  const sum = (ids: Uint8Array, from: number, index: number, side: number): void => {
    light.fill(0);
    const first = firstColour(index);
    for (let k = 0; k < side * side; k++) shine(first + ids[from + k]!, index, k, side, 1 / (side * side));
  };

  return (
    left: number,
    top: number,
    right: number,
    bottom: number,
    out: Uint8ClampedArray,
    start: number,
  ) => {
    let count = 0;
    for (let row = top; row < bottom; row++)
      for (let column = left; column < right; column++) {
        const index = row * window.columns + column;
        if (cover[index] === 0) continue;
        place(index, FIRST, count * FIRST * FIRST);
        pixels[count++] = index;
      }
    if (count === 0) return;
    let ids = follow.colours(count * FIRST * FIRST);
    let differ = 0;
    for (let i = 0; i < count; i++) {
      const at = 4 * i;
      const id = ids[at]!;
      const index = pixels[i]!;
      if (id !== ids[at + 1] || id !== ids[at + 2] || id !== ids[at + 3]) {
        rough[differ++] = index;
        continue;
      }
      const own = firstColour(index) + id;
      if (gleams(own)) sum(ids, at, index, FIRST);
      else for (let c = 0; c < 3; c++) light[c] = colours[own * COLOUR_FIGURES + c]!;
      write(index, out, start);
    }
    for (let done = 0; done < differ; done += fine) {
      const some = Math.min(fine, differ - done);
      for (let i = 0; i < some; i++) place(rough[done + i]!, FINE, i * FINE * FINE);
      ids = follow.colours(some * FINE * FINE);
      for (let i = 0; i < some; i++) {
        sum(ids, i * FINE * FINE, rough[done + i]!, FINE);
        write(rough[done + i]!, out, start);
      }
    }
  };
}
