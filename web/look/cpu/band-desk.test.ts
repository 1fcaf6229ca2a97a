import { describe, expect, test } from 'vitest';
import { anyLook } from '#core/look/render/any-look.ts';
import { topDrawing } from '#core/look/render/drawing.ts';
import { fitInto } from '#core/look/render/grid.ts';
import { renderRows, renderScene } from '#core/look/render/render.ts';
import { type Scene, sceneOf } from '#core/look/render/scene.ts';
import type { WorkerPort } from '#web/worker/port.ts';
import { bandDesk } from './band-desk.ts';
import type { PictureAsk, PictureReply } from './picture-messages.ts';

const look = anyLook(5, 10);
const drawing = topDrawing(look.panels);
const scene = sceneOf({ look, drawing, sheet: fitInto(drawing, 60, 100) });

/** A worker that answers when it is told to. */
function slowWorker() {
  let held: { number: number; scene: Scene } | null = null;
  let reply: (reply: PictureReply) => void = () => {};
  let crash: (reason: string) => void = () => {};
  const asked: Extract<PictureAsk, { kind: 'rows' }>[] = [];
  const port: WorkerPort<PictureAsk, PictureReply> = {
    postMessage(ask) {
      if (ask.kind === 'scene') held = ask;
      else asked.push(ask);
    },
    onReply: (listen) => {
      reply = listen;
    },
    onCrash: (listen) => {
      crash = listen;
    },
    close: () => {},
  };
  const work = (): boolean => {
    const ask = asked.shift();
    if (ask === undefined || held === null) return false;
    const { number, from, to } = ask;
    if (held.number === number)
      reply({ kind: 'rows', number, from, to, pixels: renderRows(held.scene, from, to) });
    return true;
  };
  return { port, work, crash: (reason: string) => crash(reason) };
}

function listener() {
  const pixels = new Uint8ClampedArray(4 * 60 * 100);
  const told: string[] = [];
  return {
    pixels,
    told,
    hear: {
      band: (band: Uint8ClampedArray, from: number) => pixels.set(band, 4 * 60 * from),
      done: () => told.push('done'),
      failed: (message: string) => told.push(message),
    },
  };
}

describe('bands handed out to two workers', () => {
  test('make the picture whole, in whatever order they come back', () => {
    const [one, other] = [slowWorker(), slowWorker()];
    const desk = bandDesk([one.port, other.port]);
    const { pixels, told, hear } = listener();
    desk.show(scene, hear);
    while (other.work());
    while (one.work());
    expect(told).toEqual(['done']);
    expect(pixels).toEqual(renderScene(scene));
  });

  test('of a scene that was replaced are not heard any more', () => {
    const worker = slowWorker();
    const desk = bandDesk([worker.port]);
    const [old, fresh] = [listener(), listener()];
    desk.show(scene, old.hear);
    worker.work();
    desk.show(scene, fresh.hear);
    while (worker.work());
    expect(old.told).toEqual([]);
    expect(fresh.told).toEqual(['done']);
    expect(fresh.pixels).toEqual(renderScene(scene));
  });

  test('stop with the reason when a worker ends', () => {
    const worker = slowWorker();
    const desk = bandDesk([worker.port]);
    const { told, hear } = listener();
    desk.show(scene, hear);
    worker.crash('out of memory');
    expect(told).toEqual(['out of memory']);
  });
});
