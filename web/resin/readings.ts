/** Thermometer readings between a logger's numbers, what an observation keeps, and the clock. Pure. */
import type { System } from '#core/quantity/units.ts';
import type { ObservationDocument } from '#core/resin/card-document.ts';
import type { CupReading } from '#core/resin/observations.ts';

type TypedReadings = ObservationDocument['readings'];

/** More readings say nothing more of one cup; a card stays small. */
export const MOST_READINGS = 240;

/** A logger's readings as texts of an observation; of more than `MOST_READINGS` evenly spaced ones, first and last kept. */
export function asTypedReadings(readings: readonly CupReading[]): TypedReadings {
  const last = readings.length - 1;
  const kept =
    readings.length <= MOST_READINGS
      ? readings
      : Array.from(
          { length: MOST_READINGS },
          (_, i) => readings[Math.round((i * last) / (MOST_READINGS - 1))]!,
        );
  return kept.map(({ time_s, temperature_K }) => ({
    at: `${Number(time_s.toFixed(1))} s`,
    temperature: `${(temperature_K - 273.15).toFixed(2)} C`,
  }));
}

/** What was typed at the cup test, with the shop's unit where none was typed. */
export function withUnit(text: string, system: System): string {
  const typed = text.trim();
  return /^[+-]?[\d.,]+$/.test(typed) ? `${typed} ${system === 'us' ? 'F' : 'C'}` : typed;
}

/** Cup test: a reading each minute for ten minutes, then every other minute until 30. Seconds from when the parts met. */
export function nextReadingAt_s(elapsed_s: number): number | null {
  const step = elapsed_s < 600 ? 60 : 120;
  const next = (Math.floor(elapsed_s / step) + 1) * step;
  return next <= CUP_TEST_s ? next : null;
}

export const CUP_TEST_s = 1800;
