/** The zero of a run for a device that was not there when it started. */
import { quantileOfSorted } from '#core/numeric/quantile.ts';
import type { RunEvent } from '#core/pour/run/run-event.ts';
import type { ExchangeAnswer } from './exchange.ts';

/**
 * Seconds on the run's clock now, from when its events happened on the clock of the server. The median over the events: one that was handed
 * in by a device with its clock set wrong meanwhile does not move it. null: none of them has begun to count.
 */
export function elapsedByServer({ events, now_ms }: ExchangeAnswer): number | null {
  if (!events.some(({ event }) => event.kind === 'started')) return null;
  const counted = events.filter(({ event }) => event.kind === 'started' || event.at_s > 0);
  return median(counted.map(({ event, happened_ms }) => event.at_s + (now_ms - happened_ms) / 1000));
}

/** The same from the events alone, by the clock of the device that wrote them: for a device that lost everything but its events. */
export function elapsedByEvents(events: readonly RunEvent[], now_ms: number): number | null {
  if (!events.some(({ kind }) => kind === 'started')) return null;
  const counted = events.filter(({ kind, at_s }) => kind === 'started' || at_s > 0);
  const newest_s = Math.max(...counted.map(({ at_s }) => at_s));
  return Math.max(newest_s, median(counted.map(({ at_s, wall_ms }) => at_s + (now_ms - wall_ms) / 1000)));
}

const median = (values: readonly number[]) =>
  quantileOfSorted(
    [...values].sort((a, b) => a - b),
    0.5,
  );
