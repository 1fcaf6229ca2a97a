import { useEffect, useState, useSyncExternalStore } from 'react';
import type { ClockSample } from '#core/pour/run/run-clock.ts';
import { uuid7 } from '#web/draft/uuid7.ts';
import { clockKeep } from './clock-keep.ts';
import { deviceId, risingIds } from './device.ts';
import { runStore } from './idb-log.ts';
import { pageLine } from './page-line.ts';
import { runEngine } from './run-engine.ts';
import { RunSession, type RunView } from './run-session.ts';
import type { KeptRun } from './run-shelf.ts';
import { exchangeWithServer, fetchRun, openRun } from './runs-api.ts';
import { screenAwake } from './wake-lock.ts';

export type OpenedRun =
  | { readonly state: 'opening' }
  | { readonly state: 'missing' }
  | { readonly state: 'failed'; readonly error: unknown }
  | {
      readonly state: 'open';
      readonly kept: KeptRun;
      readonly session: RunSession;
      /** False: this browser keeps nothing over a reload. */
      readonly lasting: boolean;
    };

/** Names the life of this page for the clock. */
const PAGE = uuid7();
const TICK_EVERY_MS = 500;

const sample = (): ClockSample => ({
  wall_ms: Date.now(),
  mono_ms: performance.now(),
  page: PAGE,
  awake: screenAwake(),
});

const newId = risingIds();

async function find(id: string): Promise<OpenedRun> {
  const { log, shelf, lasting } = await runStore();
  let kept = await shelf.get(id);
  if (kept === null) {
    kept = await fetchRun(id);
    if (kept === null) return { state: 'missing' };
    await shelf.keep(kept);
  }
  const run = kept;
  const session = await RunSession.open(id, run.pour, {
    log,
    keep: clockKeep(localStorage),
    engine: runEngine(),
    server: exchangeWithServer,
    offer: async () => {
      if (run.offered) return;
      await openRun(run);
      await shelf.keep({ ...run, offered: true });
    },
    line: (hear) => pageLine(id, hear),
    sample,
    newId,
    device: deviceId(),
  });
  return { state: 'open', kept: run, session, lasting };
}

/** Opens a run from this device, else from the server, and keeps its clock going as long as the page shows it. */
export function useOpenRun(id: string): OpenedRun {
  const [opened, setOpened] = useState<OpenedRun>({ state: 'opening' });
  useEffect(() => {
    let gone = false;
    let session: RunSession | null = null;
    find(id).then(
      (found) => {
        if (found.state === 'open') {
          if (gone) return found.session.close();
          session = found.session;
        }
        if (!gone) setOpened(found);
      },
      (error: unknown) => {
        if (!gone) setOpened({ state: 'failed', error });
      },
    );
    const timer = setInterval(() => session?.tick(), TICK_EVERY_MS);
    const keep = () => {
      session?.tick();
      session?.keepClock();
    };
    const hurry = () => session?.hurry();
    window.addEventListener('pagehide', keep);
    document.addEventListener('visibilitychange', keep);
    window.addEventListener('online', hurry);
    return () => {
      gone = true;
      clearInterval(timer);
      window.removeEventListener('pagehide', keep);
      document.removeEventListener('visibilitychange', keep);
      window.removeEventListener('online', hurry);
      session?.close();
    };
  }, [id]);
  return opened;
}

export function useRunView(session: RunSession): RunView {
  return useSyncExternalStore(session.subscribe, session.view);
}
