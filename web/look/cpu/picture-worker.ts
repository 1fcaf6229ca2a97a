/** Renders bands of the scene it was last given. */
import { renderRows } from '#core/look/render/render.ts';
import type { Scene } from '#core/look/render/scene.ts';
import type { PictureAsk, PictureReply } from './picture-messages.ts';

let held: { readonly number: number; readonly scene: Scene } | null = null;

const send = (reply: PictureReply, transfer: Transferable[] = []): void =>
  self.postMessage(reply, { transfer });

self.addEventListener('message', ({ data }: MessageEvent<PictureAsk>) => {
  if (data.kind === 'scene') {
    held = data;
    return;
  }
  const { number, from, to } = data;
  // A band of a scene that has been replaced is wanted by nobody.
  if (held?.number !== number) return;
  try {
    const pixels = renderRows(held.scene, from, to);
    send({ kind: 'rows', number, from, to, pixels }, [pixels.buffer]);
  } catch (error) {
    send({ kind: 'failed', number, message: error instanceof Error ? error.message : String(error) });
  }
});
