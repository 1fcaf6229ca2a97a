/** For the browser test: one look by the processor and by the graphics card, and how far they are apart. */
import { colourDifference } from '#core/look/colour-difference.ts';
import { labOfLinear } from '#core/look/lab.ts';
import { anyLook } from '#core/look/render/any-look.ts';
import { unfoldedDrawing } from '#core/look/render/drawing.ts';
import { fitInto } from '#core/look/render/grid.ts';
import { renderScene } from '#core/look/render/render.ts';
import { sceneOf } from '#core/look/render/scene.ts';
import { decodeSrgb } from '#core/look/srgb.ts';
import { glPicture } from './gl-picture.ts';

export interface Agreement {
  readonly renderer: string;
  /** CIEDE2000 over all pixels that show film. */
  readonly mean: number;
  readonly max: number;
  readonly column: number;
  readonly row: number;
  /** Share of those pixels that are more than 1 apart. */
  readonly apart: number;
  readonly cpu_ms: number;
  readonly gl_ms: number;
  /** FNV-1a of the processor's bytes: the same in every program that runs it. */
  readonly hash: number;
}

export function fnv(bytes: Uint8ClampedArray): number {
  let hash = 0x811c9dc5;
  for (const byte of bytes) hash = Math.imul(hash ^ byte, 0x01000193);
  return hash >>> 0;
}

export function agreement(seed: number, moves: number, columns: number, rows: number): Agreement {
  const look = anyLook(seed, moves);
  const drawing = unfoldedDrawing(look.panels);
  const scene = sceneOf({ look, drawing, sheet: fitInto(drawing, columns, rows), gloss: 0.5 });
  const start = performance.now();
  const cpu = renderScene(scene);
  const cpu_ms = performance.now() - start;
  const canvas = document.createElement('canvas');
  const picture = glPicture(canvas, { software: true });
  if (picture === null) throw new Error('no WebGL2 here');
  const gl = canvas.getContext('webgl2')!;
  picture.show(scene);
  const read = new Uint8Array(4 * columns * rows);
  picture.draw(true);
  gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, read);
  const again = performance.now();
  picture.draw(true);
  gl.readPixels(0, 0, columns, rows, gl.RGBA, gl.UNSIGNED_BYTE, read);
  const gl_ms = performance.now() - again;
  const info = gl.getExtension('WEBGL_debug_renderer_info');
  const renderer = String(gl.getParameter(info === null ? gl.RENDERER : info.UNMASKED_RENDERER_WEBGL));
  picture.dispose();
  let [sum, count, apart] = [0, 0, 0];
  let worst = { max: 0, column: 0, row: 0 };
  const lab = (from: ArrayLike<number>, i: number) =>
    labOfLinear([decodeSrgb(from[i]! / 255), decodeSrgb(from[i + 1]! / 255), decodeSrgb(from[i + 2]! / 255)]);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const i = 4 * (row * columns + column);
      const j = 4 * ((rows - 1 - row) * columns + column);
      if (Math.abs(cpu[i + 3]! - read[j + 3]!) > 1) throw new Error(`cover differs at ${column}, ${row}`);
      if (cpu[i + 3] === 0) continue;
      count++;
      if (cpu[i] === read[j] && cpu[i + 1] === read[j + 1] && cpu[i + 2] === read[j + 2]) continue;
      const difference = colourDifference(lab(cpu, i), lab(read, j));
      sum += difference;
      if (difference > 1) apart++;
      if (difference > worst.max) worst = { max: difference, column, row };
    }
  return { renderer, mean: sum / count, ...worst, apart: apart / count, cpu_ms, gl_ms, hash: fnv(cpu) };
}
