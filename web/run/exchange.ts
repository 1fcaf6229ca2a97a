/**
 * Brings a device and the shop's server to the same events: hands in what is unsent, takes what is new, in one request that may be lost, repeated
 * or answered late without harm, because events have ids and the server numbers them as they come in.
 */
import type { RunEvent } from '#core/pour/run/run-event.ts';
import type { EventLog } from './event-log.ts';

export interface ExchangeRequest {
  readonly after: number;
  readonly now_ms: number;
  readonly events: readonly RunEvent[];
}

export interface ExchangeAnswer {
  readonly last: number;
  readonly now_ms: number;
  readonly events: readonly {
    readonly number: number;
    readonly happened_ms: number;
    readonly event: RunEvent;
  }[];
}

/** The server, by whatever way it is reached. Fails when no answer came. */
export type Exchanger = (run: string, request: ExchangeRequest) => Promise<ExchangeAnswer>;

/** In one request at most; a phone that was away for hours sends several. */
export const MOST_EVENTS = 500;

/** One exchange; answers whether more is waiting to be sent. */
export async function exchangeOnce(
  log: EventLog,
  server: Exchanger,
  run: string,
  now_ms: () => number,
): Promise<{ readonly answer: ExchangeAnswer; readonly more: boolean }> {
  const [unsent, after] = await Promise.all([log.unsent(run), log.last(run)]);
  const events = unsent.slice(0, MOST_EVENTS);
  const answer = await server(run, { after, now_ms: now_ms(), events });
  await log.take(run, {
    carried: events.map(({ id }) => id),
    events: answer.events.map(({ event }) => event),
    last: answer.last,
  });
  return { answer, more: unsent.length > events.length };
}

/** Exchanges until nothing is waiting. */
export async function exchangeAll(
  log: EventLog,
  server: Exchanger,
  run: string,
  now_ms: () => number,
): Promise<ExchangeAnswer> {
  for (;;) {
    const { answer, more } = await exchangeOnce(log, server, run, now_ms);
    if (!more) return answer;
  }
}
