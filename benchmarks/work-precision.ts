/** One run of a solver: what it cost and how exact it was. */
export interface Run {
  readonly tolerance: number;
  readonly cpu_s: number;
  readonly error: number;
}

/** The runs nothing beats: no other is at most as dear and more exact. Dearest last. */
export function front(runs: readonly Run[]): Run[] {
  const kept: Run[] = [];
  for (const run of [...runs].sort((a, b) => a.cpu_s - b.cpu_s || a.error - b.error))
    if (run.error < (kept.at(-1)?.error ?? Number.POSITIVE_INFINITY)) kept.push(run);
  return kept;
}

/**
 * CPU time a solver needs for an error, s: straight between neighbours of its front on logarithmic axes. The time of its cheapest run
 * where that is already more exact; null where none of its runs is exact enough.
 */
export function timeAtError(runs: readonly Run[], error: number): number | null {
  const kept = front(runs);
  const i = kept.findIndex((run) => run.error <= error);
  const to = kept[i];
  if (to === undefined) return null;
  const from = kept[i - 1];
  if (from === undefined) return to.cpu_s;
  const share = Math.log(from.error / error) / Math.log(from.error / to.error);
  return from.cpu_s * (to.cpu_s / from.cpu_s) ** share;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
