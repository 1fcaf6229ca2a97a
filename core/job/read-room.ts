import { readDuration_s, readRelativeHumidity, readTemperature_K } from '#core/quantity/read.ts';
import type { AirTemperature } from '#core/resin/model.ts';
import { DRIEST_RELATIVE_HUMIDITY } from '#core/room/dew-point.ts';
import type { RoomDocument } from './document.ts';
import type { Asked, Notes } from './notes.ts';

export interface RoomRead {
  /** Air when the first cup is mixed. */
  readonly air_K: number | null;
  readonly board_K: number | null;
  /** 0..1. */
  readonly humidity: number | null;
  /** null while no air temperature is known. */
  readonly air: AirTemperature | null;
}

/** Below 5 C no resin of this kind gels before it turns to glass; above 45 C nobody works. */
const AIR_MIN_K = 278.15;
const AIR_MAX_K = 318.15;

export function readRoom(document: RoomDocument, notes: Notes): RoomRead {
  const temperature = (what: string) => (text: string, ask: Asked) =>
    readTemperature_K(text, { ...ask, what, min: AIR_MIN_K, max: AIR_MAX_K });
  const typed_K = notes.take('room.air', document.air, temperature('air temperature'));
  const board_K = notes.take('room.board', document.board, temperature('board temperature'));
  const humidity = notes.take('room.humidity', document.humidity, (text, ask) =>
    readRelativeHumidity(text, { ...ask, what: 'relative humidity', min: DRIEST_RELATIVE_HUMIDITY }),
  );
  const points: { time_s: number; temperature_K: number }[] = [];
  document.readings.forEach((reading, index) => {
    const path = `room.readings.${index}`;
    const time_s = notes.need(`${path}.at`, reading.at, 'the time of this reading', (text, ask) =>
      readDuration_s(text, { ...ask, what: 'time of the reading', unit: 'h', min: 0, max: 60 * 86_400 }),
    );
    const temperature_K = notes.need(
      `${path}.air`,
      reading.air,
      'the air temperature',
      temperature('air temperature'),
    );
    if (time_s === null || temperature_K === null) return;
    const last = points.at(-1);
    if (last !== undefined && time_s <= last.time_s)
      notes.problem(
        `${path}.at`,
        'room.reading-order',
        'Readings go forward in time.',
        reading.at,
        `later than ${document.readings[index - 1]?.at ?? 'the one before'}`,
      );
    else points.push({ time_s, temperature_K });
  });
  const first = points[0];
  const air_K = typed_K ?? first?.temperature_K ?? null;
  if (air_K === null) {
    if (document.air.trim() === '') notes.miss('room.air', 'the air temperature in the shop');
    return { air_K: null, board_K, humidity, air: null };
  }
  if (typed_K !== null && (first === undefined || first.time_s > 0))
    points.unshift({ time_s: 0, temperature_K: typed_K });
  return {
    air_K,
    board_K,
    humidity,
    air: { time_s: points.map((p) => p.time_s), temperature_K: points.map((p) => p.temperature_K) },
  };
}
