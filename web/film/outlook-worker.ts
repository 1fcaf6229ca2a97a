/** Works out the film answers of a coat off the main thread. */
import { filmOutlook } from '#core/pour/film-outlook.ts';
import type { OutlookAsk, OutlookReply } from './outlook-messages.ts';

self.addEventListener('message', (event: MessageEvent<OutlookAsk>) => {
  const { number, request } = event.data;
  let reply: OutlookReply;
  try {
    reply = { number, outlook: filmOutlook(request) ?? null };
  } catch (error) {
    reply = { number, failed: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(reply);
});
