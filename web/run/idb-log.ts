/** Pours and their events in the browser's own database (IndexedDB): there with no network, after a reload, and after the battery went flat. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { RunEvent } from '#core/pour/run/run-event.ts';
import { type EventLog, memoryLog } from './event-log.ts';
import { type KeptRun, memoryShelf, type RunShelf } from './run-shelf.ts';

interface KeptEvent {
  readonly id: string;
  readonly run: string;
  readonly event: RunEvent;
  /** Carried by an exchange; numbers, for the database has no index over booleans. */
  readonly sent: 0 | 1;
}

interface Tables extends DBSchema {
  runs: { key: string; value: KeptRun; indexes: { job: string } };
  events: { key: string; value: KeptEvent; indexes: { run: string; unsent: [string, number] } };
  lasts: { key: string; value: { readonly run: string; readonly last: number } };
}

type Database = IDBPDatabase<Tables>;

const open = (name: string): Promise<Database> =>
  openDB<Tables>(name, 1, {
    upgrade(database) {
      database.createObjectStore('runs', { keyPath: 'id' }).createIndex('job', 'jobId');
      const events = database.createObjectStore('events', { keyPath: 'id' });
      events.createIndex('run', 'run');
      events.createIndex('unsent', ['run', 'sent']);
      database.createObjectStore('lasts', { keyPath: 'run' });
    },
  });

function idbLog(database: Database): EventLog {
  return {
    async add(event) {
      const { id, run } = event;
      const change = database.transaction('events', 'readwrite', { durability: 'strict' });
      if ((await change.store.getKey(id)) === undefined) await change.store.put({ id, run, event, sent: 0 });
      await change.done;
    },
    events: async (run) => (await database.getAllFromIndex('events', 'run', run)).map(({ event }) => event),
    unsent: async (run) =>
      (await database.getAllFromIndex('events', 'unsent', [run, 0])).map(({ event }) => event),
    last: async (run) => (await database.get('lasts', run))?.last ?? 0,
    async take(run, { carried, events, last }) {
      const change = database.transaction(['events', 'lasts'], 'readwrite');
      const kept = change.objectStore('events');
      for (const id of carried) {
        const found = await kept.get(id);
        if (found !== undefined) await kept.put({ ...found, sent: 1 });
      }
      for (const event of events) await kept.put({ id: event.id, run, event, sent: 1 });
      const lasts = change.objectStore('lasts');
      const known = (await lasts.get(run))?.last ?? 0;
      await lasts.put({ run, last: Math.max(last, known) });
      await change.done;
    },
  };
}

function idbShelf(database: Database): RunShelf {
  return {
    keep: async (run) => {
      await database.put('runs', run);
    },
    get: async (id) => (await database.get('runs', id)) ?? null,
    ofJob: async (jobId) => database.getAllFromIndex('runs', 'job', jobId),
    all: async () => database.getAll('runs'),
  };
}

export interface RunStore {
  readonly log: EventLog;
  readonly shelf: RunShelf;
  /** False: this browser keeps nothing (a private window, no room); the pour lives as long as the page. */
  readonly lasting: boolean;
}

let opened: Promise<RunStore> | null = null;

/** The one store of this browser; every page of it opens the same one. */
export function runStore(name = 'pourwright-runs'): Promise<RunStore> {
  opened ??= open(name).then(
    (database) => ({ log: idbLog(database), shelf: idbShelf(database), lasting: true }),
    () => ({ log: memoryLog(), shelf: memoryShelf(), lasting: false }),
  );
  return opened;
}
