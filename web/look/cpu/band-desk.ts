/** Hands the bands of a picture out to workers, one each at a time, so that a newer scene waits for one band at most. */
import type { Scene } from '#core/look/render/scene.ts';
import type { WorkerPort } from '#web/worker/port.ts';
import type { PictureAsk, PictureReply } from './picture-messages.ts';

export interface BandDesk {
  /** Starts a scene; the one before is dropped where it stands. */
  readonly show: (scene: Scene, hear: BandListener) => void;
  readonly close: () => void;
}

export interface BandListener {
  readonly band: (pixels: Uint8ClampedArray<ArrayBuffer>, from: number, to: number) => void;
  readonly done: () => void;
  readonly failed: (message: string) => void;
}

/** Rows of a band: short enough to show the picture growing, long enough to be worth a message. */
export const BAND = 32;

export function bandDesk(workers: readonly WorkerPort<PictureAsk, PictureReply>[]): BandDesk {
  let number = 0;
  let hear: BandListener | null = null;
  let rows = 0;
  let next = 0;
  let open = 0;
  const give = (worker: WorkerPort<PictureAsk, PictureReply>): void => {
    if (next >= rows) return;
    const to = Math.min(rows, next + BAND);
    worker.postMessage({ kind: 'rows', number, from: next, to });
    next = to;
    open++;
  };
  const fail = (message: string): void => {
    const listener = hear;
    number++;
    hear = null;
    listener?.failed(message);
  };
  for (const worker of workers) {
    worker.onReply((reply) => {
      if (reply.number !== number || hear === null) return;
      if (reply.kind === 'failed') return fail(reply.message);
      open--;
      hear.band(reply.pixels, reply.from, reply.to);
      give(worker);
      if (open === 0 && next >= rows) hear.done();
    });
    worker.onCrash(fail);
  }
  return {
    show(scene, listener) {
      number++;
      hear = listener;
      rows = scene.window.rows;
      next = 0;
      open = 0;
      for (const worker of workers) {
        worker.postMessage({ kind: 'scene', number, scene });
        give(worker);
      }
    },
    close() {
      number++;
      hear = null;
      for (const worker of workers) worker.close();
    },
  };
}
