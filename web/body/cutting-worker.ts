/** Plans the cuts off the main thread. */
import { planCutting } from '#core/piece/cutting/plan-cutting.ts';
import type { CuttingAsk, CuttingReply } from './cutting-messages.ts';

self.addEventListener('message', (event: MessageEvent<CuttingAsk>) => {
  const { number, request } = event.data;
  let reply: CuttingReply;
  try {
    reply = { number, plan: planCutting(request.parts, request.stock, request.options) };
  } catch (error) {
    reply = { number, failed: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(reply);
});
