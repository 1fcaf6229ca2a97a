import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { civilDays, localMinutes, secondsBetween } from './local-time.ts';

const day_ms = 86_400_000;

describe('days of the calendar', () => {
  it('count from 1 January 1970 over leap days, whole centuries and 400 years', () => {
    expect(civilDays(1970, 1, 1)).toBe(0);
    expect(civilDays(1969, 12, 31)).toBe(-1);
    expect(civilDays(2000, 3, 1) - civilDays(2000, 2, 28)).toBe(2);
    expect(civilDays(1900, 3, 1) - civilDays(1900, 2, 28)).toBe(1);
    expect(civilDays(2026, 5, 14)).toBe(20_587);
    expect(civilDays(2400, 1, 1) - civilDays(2000, 1, 1)).toBe(146_097);
  });

  it('agree with the calendar of the language from the year 100 to 9999', () => {
    const first = Date.UTC(100, 0, 1) / day_ms;
    const last = Date.UTC(9999, 11, 31) / day_ms;
    fc.assert(
      fc.property(fc.integer({ min: first, max: last }), (days) => {
        const date = new Date(days * day_ms);
        expect(civilDays(date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate())).toBe(days);
      }),
    );
  });

  it.each([
    [2026, 2, 29, 'day'],
    [2026, 4, 31, 'day'],
    [2026, 13, 1, 'month'],
    [10_000, 1, 1, 'year'],
    [2026.5, 1, 1, 'year'],
    [2026, 1, Number.NaN, 'day'],
  ])('refuse %d-%d-%d by its %s', (year, month, day, named) => {
    expect(() => civilDays(year, month, day)).toThrow(RangeError);
    expect(() => civilDays(year, month, day)).toThrow(named);
  });
});

describe('a local time', () => {
  it('is read to the minute', () => {
    expect(localMinutes('1970-01-02T01:05')).toBe(1440 + 65);
    expect(localMinutes('2028-02-29T23:59')).not.toBeNull();
  });

  it.each(['', '2026-05-14', '2026-02-29T09:00', '2026-13-01T09:00', '2026-05-14T24:00', '2026-05-14T09:60'])(
    'is none in %j',
    (text) => {
      expect(localMinutes(text)).toBeNull();
      expect(secondsBetween(text, '2026-05-14T09:00')).toBeNull();
      expect(secondsBetween('2026-05-14T09:00', text)).toBeNull();
    },
  );

  it('is subtracted over midnight, month ends and a leap day', () => {
    expect(secondsBetween('2026-05-14T22:00', '2026-05-15T06:30')).toBe(8.5 * 3600);
    expect(secondsBetween('2028-02-28T12:00', '2028-03-01T12:00')).toBe(2 * 86_400);
    expect(secondsBetween('2026-12-31T23:59', '2027-01-01T00:00')).toBe(60);
    expect(secondsBetween('2026-05-15T06:30', '2026-05-14T22:00')).toBe(-8.5 * 3600);
  });
});
