/** Computes forecasts off the main thread, one question at a time; the engine sends the next when this one is answered. */
import { computeJob } from '#core/job/compute-job.ts';
import type { Question, Reply } from './forecast/messages.ts';

self.addEventListener('message', (event: MessageEvent<Question>) => {
  const { number, document, rates, system, cards = [] } = event.data;
  let reply: Reply;
  try {
    reply = { number, forecast: computeJob(document, { rates, system, cards }) };
  } catch (error) {
    reply = { number, failed: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(reply);
});
