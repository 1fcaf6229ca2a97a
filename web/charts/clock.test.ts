import { describe, expect, it } from 'vitest';
import { clockStart_ms, dayAndTime, dayText, hourMarks, hourOfDay, timeOfDay } from './clock.ts';

/** Local times are built and read in the same zone, so these hold wherever they run. */
const at = (text: string): number => new Date(text).getTime();

describe('clock', () => {
  it('reads a local time and refuses anything else', () => {
    expect(clockStart_ms('2026-03-04T09:30')).toBe(at('2026-03-04T09:30'));
    expect(clockStart_ms('2026-13-45T09:30')).toBeNull();
    expect(clockStart_ms('tomorrow')).toBeNull();
    expect(clockStart_ms(undefined)).toBeNull();
  });

  it('says the time of day as each system does', () => {
    expect(timeOfDay(at('2026-03-04T09:05'), 'us')).toBe('9:05 am');
    expect(timeOfDay(at('2026-03-04T00:00'), 'us')).toBe('12:00 am');
    expect(timeOfDay(at('2026-03-04T15:40'), 'us')).toBe('3:40 pm');
    expect(timeOfDay(at('2026-03-04T09:05'), 'metric')).toBe('09:05');
    expect(timeOfDay(at('2026-03-04T09:59:40'), 'metric')).toBe('10:00');
  });

  it('says hours and days', () => {
    expect(hourOfDay(at('2026-03-04T12:00'), 'us')).toBe('noon');
    expect(hourOfDay(at('2026-03-04T18:00'), 'us')).toBe('6 pm');
    expect(dayText(at('2026-03-04T12:00'), 'us')).toBe('Wed Mar 4');
    expect(dayText(at('2026-03-04T12:00'), 'metric')).toBe('Wed 4 Mar');
    expect(dayAndTime(at('2026-03-04T15:40'), 'metric')).toBe('Wed 4 Mar, 15:40');
  });

  it('marks midnights and the hours between them', () => {
    const marks = hourMarks(at('2026-03-04T09:30'), at('2026-03-05T13:00'), 12);
    expect(marks).toEqual([
      { at_ms: at('2026-03-04T12:00'), midnight: false },
      { at_ms: at('2026-03-05T00:00'), midnight: true },
      { at_ms: at('2026-03-05T12:00'), midnight: false },
    ]);
  });

  it('refuses marks without end', () => {
    expect(() => hourMarks(0, Number.POSITIVE_INFINITY, 6)).toThrow(RangeError);
    expect(() => hourMarks(0, 1, 5)).toThrow(/everyHours/);
  });
});
