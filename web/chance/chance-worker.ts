/** Throws the pours off the main thread. */
import { chanceToFinish } from '#core/pour/chance/chance.ts';
import { waysByChance } from '#core/pour/chance/ways-chance.ts';
import { betterOrder } from '#core/pour/search/order-of-plan.ts';
import type { ChanceAsk, ChanceReply } from './chance-messages.ts';

self.addEventListener('message', ({ data }: MessageEvent<ChanceAsk>) => {
  const { number, what, of } = data;
  let reply: ChanceReply;
  try {
    reply =
      what === 'chance'
        ? { number, what, chance: chanceToFinish(of), order: betterOrder(of.request, of.plan) }
        : { number, what, ways: waysByChance(of) };
  } catch (error) {
    reply = { number, what: 'failed', failed: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(reply);
});
