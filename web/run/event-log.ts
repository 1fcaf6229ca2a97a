/** The events of runs as one device keeps them: its own at once, before anything else; those of others when they come. */
import type { RunEvent } from '#core/pour/run/run-event.ts';

export interface EventLog {
  /** Keeps an event made on this device; it is unsent until an exchange has carried it. */
  add(event: RunEvent): Promise<void>;
  /** Every event of a run that is here, in no order. */
  events(run: string): Promise<readonly RunEvent[]>;
  /** Events of a run made here that no exchange has carried yet. */
  unsent(run: string): Promise<readonly RunEvent[]>;
  /** Number of the newest event of the server that is here; 0: none. */
  last(run: string): Promise<number>;
  /**
   * What an exchange brought, in one step: these were carried, those are new, and everything up to a number is here. The number never
   * goes back, so a late answer does no harm.
   */
  take(run: string, got: Exchanged): Promise<void>;
}

export interface Exchanged {
  /** Ids of events that were carried. */
  readonly carried: readonly string[];
  readonly events: readonly RunEvent[];
  readonly last: number;
}

/** A log that lives as long as the page; for tests, and where a browser keeps nothing. */
export function memoryLog(): EventLog {
  const kept = new Map<string, { readonly event: RunEvent; sent: boolean }>();
  const lasts = new Map<string, number>();
  const of = (run: string) => [...kept.values()].filter(({ event }) => event.run === run);
  return {
    async add(event) {
      if (!kept.has(event.id)) kept.set(event.id, { event, sent: false });
    },
    events: async (run) => of(run).map(({ event }) => event),
    unsent: async (run) =>
      of(run)
        .filter(({ sent }) => !sent)
        .map(({ event }) => event),
    last: async (run) => lasts.get(run) ?? 0,
    async take(run, { carried, events, last }) {
      for (const id of carried) {
        const found = kept.get(id);
        if (found !== undefined) found.sent = true;
      }
      for (const event of events) kept.set(event.id, { event, sent: true });
      lasts.set(run, Math.max(last, lasts.get(run) ?? 0));
    },
  };
}
