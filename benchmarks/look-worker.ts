/** Renders rows of a scene in a thread of its own, for look.ts. */
import { parentPort } from 'node:worker_threads';
import { renderRows } from '#core/look/render/render.ts';
import type { Scene } from '#core/look/render/scene.ts';

let scene: Scene | null = null;

parentPort?.on('message', (ask: { scene: Scene } | { from: number; to: number }) => {
  if ('scene' in ask) scene = ask.scene;
  else if (scene !== null) parentPort?.postMessage(renderRows(scene, ask.from, ask.to));
});
