/** Works thickness maps out off the main thread; a newer question or a cancel ends the one it is at. */
import { filmMap } from '#core/film/film-map.ts';
import { driveMap } from './drive-map.ts';
import type { MapAsk, MapReply } from './map-messages.ts';

let wanted = 0;

const send = (reply: MapReply): void => self.postMessage(reply);

async function draw({ number, request }: Extract<MapAsk, { kind: 'draw' }>): Promise<void> {
  try {
    const result = await driveMap(filmMap(request), {
      report: (share) => send({ kind: 'progress', number, share }),
      wanted: () => wanted === number,
      pause: () => new Promise((resolve) => setTimeout(resolve, 0)),
      now_ms: () => performance.now(),
    });
    send(result === null ? { kind: 'cancelled', number } : { kind: 'done', number, result });
  } catch (error) {
    send({ kind: 'failed', number, message: error instanceof Error ? error.message : String(error) });
  }
}

self.addEventListener('message', (event: MessageEvent<MapAsk>) => {
  const ask = event.data;
  wanted = ask.kind === 'draw' ? ask.number : 0;
  if (ask.kind === 'draw') void draw(ask);
});
