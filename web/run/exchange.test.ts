/** Phones, a server and a bad network: whatever is lost, repeated, late or reloaded, in the end everybody has everything once. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinEvents, type RunEvent } from '#core/pour/run/run-event.ts';
import { event, uuid } from '#core/pour/run/sample-run.check.ts';
import { type EventLog, memoryLog } from './event-log.ts';
import {
  type ExchangeAnswer,
  type ExchangeRequest,
  type Exchanger,
  exchangeAll,
  exchangeOnce,
} from './exchange.ts';

const run = uuid(0xffff);

/** The server as store/run-rows.ts has it: each event once, numbered as it came in. */
function plainServer() {
  const kept: RunEvent[] = [];
  const answer: Exchanger = async (_run, { after, events, now_ms }) => {
    for (const each of events) if (!kept.some(({ id }) => id === each.id)) kept.push(each);
    return {
      last: kept.length,
      now_ms,
      events: kept.slice(after).map((each, i) => ({ number: after + i + 1, happened_ms: 0, event: each })),
    };
  };
  return { kept, answer };
}

type Deed =
  | { readonly kind: 'write'; readonly phone: number }
  | { readonly kind: 'exchange'; readonly phone: number; readonly fate: Fate }
  | { readonly kind: 'late answer'; readonly phone: number }
  | { readonly kind: 'repeat request'; readonly phone: number };
type Fate = 'well' | 'request lost' | 'answer lost' | 'answer late' | 'crash before keeping';

const phone = fc.integer({ min: 0, max: 2 });
const deed: fc.Arbitrary<Deed> = fc.oneof(
  { weight: 4, arbitrary: phone.map((n): Deed => ({ kind: 'write', phone: n })) },
  {
    weight: 4,
    arbitrary: fc
      .tuple(
        phone,
        fc.constantFrom<Fate>('well', 'request lost', 'answer lost', 'answer late', 'crash before keeping'),
      )
      .map(([n, fate]): Deed => ({ kind: 'exchange', phone: n, fate })),
  },
  { weight: 1, arbitrary: phone.map((n): Deed => ({ kind: 'late answer', phone: n })) },
  { weight: 1, arbitrary: phone.map((n): Deed => ({ kind: 'repeat request', phone: n })) },
);

const LOST = new Error('no network');

async function play(deeds: readonly Deed[]) {
  const server = plainServer();
  const logs: readonly EventLog[] = [memoryLog(), memoryLog(), memoryLog()];
  const late: {
    readonly phone: number;
    readonly request: ExchangeRequest;
    readonly answer: ExchangeAnswer;
  }[] = [];
  const sent = new Map<number, ExchangeRequest>();
  const written: RunEvent[] = [];
  for (const each of deeds) {
    const log = logs[each.phone]!;
    if (each.kind === 'write') {
      const made = event(written.length + 2, {
        kind: 'done',
        step: 'mix-1',
        at_s: (written.length * 37) % 11,
      });
      written.push(made);
      await log.add(made);
    } else if (each.kind === 'repeat request') {
      const again = sent.get(each.phone);
      if (again !== undefined) await server.answer(run, again);
    } else if (each.kind === 'late answer') {
      const at = late.findIndex((one) => one.phone === each.phone);
      const [one] = at < 0 ? [] : late.splice(at, 1);
      if (one !== undefined)
        await log.take(run, {
          carried: one.request.events.map(({ id }) => id),
          events: one.answer.events.map((answered) => answered.event),
          last: one.answer.last,
        });
    } else {
      const { fate } = each;
      const network: Exchanger = async (of, request) => {
        sent.set(each.phone, request);
        if (fate === 'request lost') throw LOST;
        const answer = await server.answer(of, request);
        if (fate === 'answer late') late.push({ phone: each.phone, request, answer });
        if (fate !== 'well') throw LOST;
        return answer;
      };
      await exchangeOnce(log, network, run, () => 0).catch((error: unknown) => {
        if (error !== LOST) throw error;
      });
      // nothing a phone wrote is ever gone from it, whatever the exchange did
    }
    for (const [n, one] of logs.entries()) {
      const here = new Set((await one.events(run)).map(({ id }) => id));
      for (const unsent of await one.unsent(run)) expect(here.has(unsent.id), `phone ${n}`).toBe(true);
    }
  }
  return { server, logs, written };
}

describe('exchanges over a bad network', () => {
  it('leave every phone and the server with every event, once, in the end', {
    timeout: 300_000,
  }, async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(deed, { maxLength: 24 }), async (deeds) => {
        const { server, logs, written } = await play(deeds);
        for (const log of [...logs, ...logs]) await exchangeAll(log, server.answer, run, () => 0);
        const all = joinEvents(written);
        expect(joinEvents(server.kept)).toEqual(all);
        expect(server.kept).toHaveLength(written.length);
        for (const log of logs) {
          expect(joinEvents(await log.events(run))).toEqual(all);
          expect(await log.unsent(run)).toEqual([]);
          expect(await log.last(run)).toBe(written.length);
        }
      }),
      { numRuns: 10_000 },
    );
  });

  it('carry more than one request holds', async () => {
    const server = plainServer();
    const log = memoryLog();
    for (let i = 0; i < 1201; i++) await log.add(event(i + 2, { kind: 'done', step: 'mix-1', at_s: i }));
    await exchangeAll(log, server.answer, run, () => 0);
    expect(server.kept).toHaveLength(1201);
    expect(await log.unsent(run)).toEqual([]);
  });
});
