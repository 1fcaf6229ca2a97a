/** The pours that were opened on this device, each with the plan as it was then. */
import type { FrozenPour } from '#core/pour/run/frozen-pour.ts';

export interface KeptRun {
  readonly id: string;
  readonly jobId: string;
  readonly coatId: string;
  readonly title: string;
  /** ISO 8601. */
  readonly openedAt: string;
  readonly pour: FrozenPour;
  /** The server has it. */
  readonly offered: boolean;
}

export interface RunShelf {
  keep(run: KeptRun): Promise<void>;
  get(id: string): Promise<KeptRun | null>;
  ofJob(jobId: string): Promise<readonly KeptRun[]>;
  all(): Promise<readonly KeptRun[]>;
}

/** Lives as long as the page; for tests, and where a browser keeps nothing. */
export function memoryShelf(): RunShelf {
  const kept = new Map<string, KeptRun>();
  return {
    keep: async (run) => {
      kept.set(run.id, run);
    },
    get: async (id) => kept.get(id) ?? null,
    ofJob: async (jobId) => [...kept.values()].filter((run) => run.jobId === jobId),
    all: async () => [...kept.values()],
  };
}
