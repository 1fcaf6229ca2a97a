/** Renders a scene in threads, so that the server answers others meanwhile. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { renderScene } from '#core/look/render/render.ts';
import type { Scene } from '#core/look/render/scene.ts';
import type { PaintTask } from './paint-worker.ts';

/** Fewer pixels than this are done before a thread has started. */
const SMALL = 20_000;
const MOST_THREADS = 4;

/** RGBA of the whole window. */
export async function paintScene(scene: Scene): Promise<Uint8ClampedArray> {
  const { columns, rows } = scene.window;
  if (columns * rows <= SMALL) return renderScene(scene);
  const threads = Math.max(1, Math.min(MOST_THREADS, rows, availableParallelism()));
  const bands = await Promise.all(
    Array.from({ length: threads }, (_, i) =>
      band({ scene, from: Math.floor((i * rows) / threads), to: Math.floor(((i + 1) * rows) / threads) }),
    ),
  );
  const out = new Uint8ClampedArray(4 * columns * rows);
  bands.forEach((pixels, i) => {
    out.set(pixels, 4 * columns * Math.floor((i * rows) / threads));
  });
  return out;
}

function band(task: PaintTask): Promise<Uint8ClampedArray> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./paint-worker.ts', import.meta.url), { workerData: task });
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', (code) => {
      if (code !== 0) reject(new Error(`the picture was not rendered: its thread ended with ${code}`));
    });
  });
}
