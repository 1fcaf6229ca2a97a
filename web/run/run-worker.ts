/** Computes the windows of a pour under way off the main thread, so that the clock never stutters. */
import { forecastRun } from '#core/pour/run/forecast-run.ts';
import type { RunQuestion, RunReply } from './run-messages.ts';

self.addEventListener('message', (event: MessageEvent<RunQuestion>) => {
  const { number, ...ask } = event.data;
  let reply: RunReply;
  try {
    reply = { number, forecast: forecastRun(ask) };
  } catch (error) {
    reply = { number, failed: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(reply);
});
