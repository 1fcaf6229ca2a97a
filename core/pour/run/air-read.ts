/** The air of the shop as planned, corrected by what the thermometer said during the pour. */
import { surroundingsAt } from '#core/numeric/column.ts';
import { surroundingsOf } from '#core/resin/film.ts';
import type { AirTemperature } from '#core/resin/model.ts';
import type { RunReading } from './fold-run.ts';

/**
 * Up to the first reading the plan's air holds; through the readings it is theirs; after the last one the plan's air is moved by what that one
 * differed, for a shop that is warmer than forecast now will not be as forecast in an hour.
 */
export function airAsRead(planned: AirTemperature, readings: readonly RunReading[]): AirTemperature {
  const read = new Map<number, number>();
  for (const { of, at_s, temperature_K } of readings) if (of === 'air') read.set(at_s, temperature_K);
  if (read.size === 0) return planned;
  const times = [...read.keys()].sort((a, b) => a - b);
  const first_s = times[0]!;
  const last_s = times[times.length - 1]!;
  const at = (time_s: number) => surroundingsAt(surroundingsOf(planned), time_s);
  const off_K = read.get(last_s)! - at(last_s);
  const before = planned.time_s.filter((time_s) => time_s < first_s);
  if (before.length === 0 && first_s > 0) before.push(0);
  const after = planned.time_s.filter((time_s) => time_s > last_s);
  return {
    time_s: [...before, ...times, ...after],
    temperature_K: [
      ...before.map(at),
      ...times.map((time_s) => read.get(time_s)!),
      ...after.map((time_s) => at(time_s) + off_K),
    ],
  };
}
