/** The run's zero on the clock of the day. Pure. */
import { quantileOfSorted } from '#core/numeric/quantile.ts';
import type { RunEvent } from '#core/pour/run/run-event.ts';

/** The median over the events: a clock that was set wrong for part of the pour does not move it. null before the start. */
export function zeroOf(events: readonly RunEvent[]): number | null {
  if (!events.some(({ kind }) => kind === 'started')) return null;
  const zeros = events
    .filter(({ kind, at_s }) => kind === 'started' || at_s > 0)
    .map(({ wall_ms, at_s }) => wall_ms - at_s * 1000);
  return quantileOfSorted(
    [...zeros].sort((a, b) => a - b),
    0.5,
  );
}
