/** Renders some rows of a scene off the server's own thread. */
import { parentPort, workerData } from 'node:worker_threads';
import { renderRows } from '#core/look/render/render.ts';
import type { Scene } from '#core/look/render/scene.ts';

export interface PaintTask {
  readonly scene: Scene;
  readonly from: number;
  readonly to: number;
}

const { scene, from, to } = workerData as PaintTask;
const pixels = renderRows(scene, from, to);
parentPort?.postMessage(pixels, [pixels.buffer]);
