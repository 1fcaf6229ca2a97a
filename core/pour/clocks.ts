/** The plan runs on one clock (0 = the first cup's parts meet); every cup and film is computed on its own, from 0. */
import type { AirTemperature, TimeRange } from '#core/resin/model.ts';

/** The air as a body sees it whose clock starts `by_s` later than the air's. */
export function airFrom(air: AirTemperature, by_s: number): AirTemperature {
  if (by_s === 0 || air.time_s.length < 2) return air;
  return { time_s: air.time_s.map((time) => time - by_s), temperature_K: air.temperature_K };
}

/** A range on a body's own clock, told on the plan's. */
export function later(range: TimeRange | null, by_s: number): TimeRange | null {
  return range === null
    ? null
    : { low_s: range.low_s + by_s, mid_s: range.mid_s + by_s, high_s: range.high_s + by_s };
}
