/** Composes looks off the page, so that a phone stays quick under the finger. */
import { coatLook } from '#core/job/look-of-coat.ts';
import { readJob } from '#core/job/read-job.ts';
import { composeLook } from '#core/look/compose.ts';
import { GENERIC_CARDS } from '#core/resin/cards.ts';
import type { ComposeAsk, ComposeReply } from './compose-messages.ts';

const send = (reply: ComposeReply): void => self.postMessage(reply);

self.addEventListener('message', ({ data }: MessageEvent<ComposeAsk>) => {
  const { ask, document, system, index, wanted, looks } = data;
  const cards = [...GENERIC_CARDS, ...data.cards];
  const read = readJob(document, cards, system);
  const density = cards.find((card) => card.id === document.coats[index]?.resin)?.model.density_kg_m3;
  const made = coatLook(document, read, index, density, system);
  if (!made.ok) {
    send({ ask, at: 0, problems: made.problems });
    return;
  }
  looks.forEach((look, at) => {
    const composed = composeLook(look, new Map(wanted), made.value.setting);
    send(
      composed.ok
        ? { ask, at, look: composed.value.look, off: composed.value.off, warnings: composed.warnings }
        : { ask, at, problems: composed.problems },
    );
  });
});
