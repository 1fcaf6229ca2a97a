/**
 * Where the clock of a run is kept between ticks. In localStorage, which is written before the call returns: a page that is being closed or
 * killed has no time to wait for a database.
 */
import type { ClockState } from '#core/pour/run/run-clock.ts';

export interface ClockKeep {
  read(run: string): ClockState | null;
  write(run: string, state: ClockState): void;
}

const keyOf = (run: string) => `pourwright.run-clock.${run}`;

export function clockKeep(storage: Pick<Storage, 'getItem' | 'setItem'>): ClockKeep {
  return {
    read(run) {
      try {
        const { elapsed_s, sample } = JSON.parse(storage.getItem(keyOf(run)) ?? 'null') as ClockState;
        const sound =
          Number.isFinite(elapsed_s) && Number.isFinite(sample.wall_ms) && Number.isFinite(sample.mono_ms);
        return sound ? { elapsed_s, sample } : null;
      } catch {
        return null;
      }
    },
    write(run, state) {
      try {
        storage.setItem(keyOf(run), JSON.stringify(state));
      } catch {
        // A device without storage starts from the events after a reload.
      }
    },
  };
}
