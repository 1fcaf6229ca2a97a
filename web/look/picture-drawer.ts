/**
 * Draws scenes on a canvas: by the graphics card where there is one worth it, else in workers. A card that is taken away
 * (sleep, a reset of its driver) leaves the picture standing; the next scene is drawn by the workers until it is back.
 */
import type { Scene } from '#core/look/render/scene.ts';
import { workerPort } from '#web/worker/port.ts';
import { type BandDesk, bandDesk } from './cpu/band-desk.ts';
import type { PictureAsk, PictureReply } from './cpu/picture-messages.ts';
import { type GlPicture, type GlWishes, glPicture } from './gl/gl-picture.ts';

export type DrawnBy = 'graphics card' | 'processor';

export interface PictureDrawer {
  readonly show: (scene: Scene) => void;
  readonly close: () => void;
}

export interface DrawerWishes extends GlWishes {
  /** The picture stands in full. */
  readonly onReady: (by: DrawnBy) => void;
  readonly onFailed: (message: string) => void;
  /** Never use the graphics card. */
  readonly processorOnly?: boolean;
}

/** A scene that comes within this of the one before is part of a movement of the hand. */
const MOVING_ms = 120;

/** @param host gets two canvases, one hidden: a canvas that has been a graphics card's can be nothing else. */
export function pictureDrawer(host: HTMLElement, wishes: DrawerWishes): PictureDrawer {
  const card = host.ownerDocument.createElement('canvas');
  const paper = host.ownerDocument.createElement('canvas');
  paper.hidden = true;
  host.append(card, paper);
  let gl: GlPicture | null = wishes.processorOnly === true ? null : glPicture(card, wishes);
  let desk: BandDesk | null = null;
  let shown: Scene | null = null;
  let last_ms = Number.NEGATIVE_INFINITY;
  let later: ReturnType<typeof setTimeout> | undefined;
  let frame = 0;
  let closed = false;

  const byCard = (picture: GlPicture, scene: Scene): void => {
    const now_ms = performance.now();
    const moving = now_ms - last_ms < MOVING_ms;
    last_ms = now_ms;
    cancelAnimationFrame(frame);
    clearTimeout(later);
    frame = requestAnimationFrame(() => {
      picture.show(scene);
      picture.draw(!moving);
      front(card, paper);
      if (!moving) wishes.onReady('graphics card');
    });
    if (moving)
      later = setTimeout(() => {
        picture.draw(true);
        wishes.onReady('graphics card');
      }, MOVING_ms);
  };
  const byWorkers = (scene: Scene): void => {
    const context = paper.getContext('2d');
    if (context === null) {
      wishes.onFailed('this browser draws no pictures');
      return;
    }
    desk ??= bandDesk(workers());
    const { columns, rows } = scene.window;
    // The picture before stays until the first band of this one is there.
    let first = true;
    desk.show(scene, {
      band(pixels, from, to) {
        if (first && (paper.width !== columns || paper.height !== rows)) {
          paper.width = columns;
          paper.height = rows;
        }
        first = false;
        context.putImageData(new ImageData(pixels, columns, to - from), 0, from);
        front(paper, card);
      },
      done: () => wishes.onReady('processor'),
      failed: wishes.onFailed,
    });
  };
  const show = (scene: Scene): void => {
    shown = scene;
    if (gl === null) byWorkers(scene);
    else byCard(gl, scene);
  };
  const lost = (event: Event): void => {
    // Without this the browser never gives the card back.
    event.preventDefault();
    cancelAnimationFrame(frame);
    clearTimeout(later);
    gl = null;
    if (shown !== null && !closed) show(shown);
  };
  const restored = (): void => {
    if (closed) return;
    gl = glPicture(card, wishes);
    if (gl !== null && shown !== null) show(shown);
  };
  card.addEventListener('webglcontextlost', lost);
  card.addEventListener('webglcontextrestored', restored);
  return {
    show,
    close() {
      closed = true;
      cancelAnimationFrame(frame);
      clearTimeout(later);
      card.removeEventListener('webglcontextlost', lost);
      card.removeEventListener('webglcontextrestored', restored);
      desk?.close();
      gl?.dispose();
      card.remove();
      paper.remove();
    },
  };
}

function front(one: HTMLCanvasElement, other: HTMLCanvasElement): void {
  one.hidden = false;
  other.hidden = true;
}

function workers() {
  // One processor is left to the page itself; more than four bring a phone nothing.
  const count = Math.max(1, Math.min(4, (navigator.hardwareConcurrency ?? 2) - 1));
  return Array.from({ length: count }, () =>
    workerPort<PictureAsk, PictureReply>(
      () => new Worker(new URL('./cpu/picture-worker.ts', import.meta.url), { type: 'module' }),
      'The picture could not be drawn.',
    ),
  );
}
