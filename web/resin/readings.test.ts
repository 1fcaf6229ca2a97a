import { describe, expect, it } from 'vitest';
import { readDuration_s } from '#core/quantity/read.ts';
import { readObservation } from '#core/resin/observations.ts';
import { asTypedReadings, MOST_READINGS, nextReadingAt_s, withUnit } from './readings.ts';

describe('readings of a logger as an observation keeps them', () => {
  it('are read back as they were, to a hundredth of a kelvin', () => {
    const logged = [0, 30, 61.5].map((time_s) => ({ time_s, temperature_K: 297.153 + time_s / 10 }));
    const read = readObservation({
      id: 'o',
      kind: 'cup temperatures',
      mass: '100 g',
      air: '75 F',
      readings: asTypedReadings(logged),
    });
    if (!read.ok || read.value.kind !== 'cup temperatures') throw new Error('the readings were not taken');
    read.value.readings.forEach((reading, i) => {
      expect(reading.time_s).toBe(logged[i]!.time_s);
      expect(Math.abs(reading.temperature_K - logged[i]!.temperature_K)).toBeLessThan(0.006);
    });
  });

  it('are thinned evenly to what one cup can tell, first and last kept, times going forward', () => {
    const many = Array.from({ length: 86_400 }, (_, time_s) => ({ time_s, temperature_K: 300 }));
    const kept = asTypedReadings(many).map(({ at }) => {
      const read = readDuration_s(at);
      return read.ok ? read.value : Number.NaN;
    });
    expect(kept).toHaveLength(MOST_READINGS);
    expect([kept[0], kept.at(-1)]).toEqual([0, 86_399]);
    expect(kept.every((time, i) => i === 0 || time > kept[i - 1]!)).toBe(true);
  });
});

describe('the cup test', () => {
  it('takes a bare number in the unit on screen, and a typed unit as typed', () => {
    expect(withUnit(' 81.5 ', 'us')).toBe('81.5 F');
    expect(withUnit('27,4', 'metric')).toBe('27,4 C');
    expect(withUnit('27 C', 'us')).toBe('27 C');
  });

  it('asks for a reading each minute, later every other minute, and ends after half an hour', () => {
    expect(nextReadingAt_s(0)).toBe(60);
    expect(nextReadingAt_s(61)).toBe(120);
    expect(nextReadingAt_s(599)).toBe(600);
    expect(nextReadingAt_s(600)).toBe(720);
    expect(nextReadingAt_s(1700)).toBe(1800);
    expect(nextReadingAt_s(1800)).toBeNull();
  });
});
