import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { instantOf, isTimeZone } from './zone-time.ts';

const utc = (local: string, zone: string) => {
  const at = instantOf(local, zone);
  return at === null ? null : new Date(at).toISOString();
};

describe('a local time in a time zone', () => {
  it('is the instant of the zone, summer and winter', () => {
    expect(utc('2026-05-14T09:00', 'America/Chicago')).toBe('2026-05-14T14:00:00.000Z');
    expect(utc('2026-01-14T09:00', 'America/Chicago')).toBe('2026-01-14T15:00:00.000Z');
    expect(utc('2026-05-14T09:00', 'Asia/Kathmandu')).toBe('2026-05-14T03:15:00.000Z');
    expect(utc('2026-05-14T09:00', 'UTC')).toBe('2026-05-14T09:00:00.000Z');
  });

  it('that does not occur is read with the offset before the gap, and one that occurs twice is the first (RFC 5545, 3.3.5)', () => {
    // The example of RFC 5545: New York, DTSTART;TZID=America/New_York:20070311T023000 is 2007-03-11 03:30 daylight time.
    expect(utc('2007-03-11T02:30', 'America/New_York')).toBe('2007-03-11T07:30:00.000Z');
    // and 20071104T013000 is the first, in daylight time, UTC-4.
    expect(utc('2007-11-04T01:30', 'America/New_York')).toBe('2007-11-04T05:30:00.000Z');
    expect(utc('2026-03-29T03:00', 'Europe/Berlin')).toBe('2026-03-29T01:00:00.000Z');
    expect(utc('2026-03-29T01:59', 'Europe/Berlin')).toBe('2026-03-29T00:59:00.000Z');
  });

  it('is nothing when it is no time, and a zone nobody knows is refused by name', () => {
    expect(instantOf('', 'UTC')).toBeNull();
    expect(instantOf('2026-02-30T09:00', 'UTC')).toBeNull();
    expect(() => instantOf('2026-05-14T09:00', 'Mars/Base')).toThrow(/zone is "Mars\/Base"; allowed/);
    expect(isTimeZone('Europe/Berlin')).toBe(true);
    expect(isTimeZone('Mars/Base')).toBe(false);
  });

  it('is shown again by the zone as what was typed, unless the clocks jumped over it', () => {
    const zones = [
      'America/Chicago',
      'Europe/London',
      'Australia/Lord_Howe',
      'America/St_Johns',
      'Asia/Tokyo',
    ];
    const minute = fc.integer({ min: Date.UTC(2020, 0, 1) / 60_000, max: Date.UTC(2035, 0, 1) / 60_000 });
    fc.assert(
      fc.property(minute, fc.constantFrom(...zones), (at, zone) => {
        const local = new Date(at * 60_000).toISOString().slice(0, 16);
        const again = new Intl.DateTimeFormat('sv-SE', {
          timeZone: zone,
          dateStyle: 'short',
          timeStyle: 'short',
        }).format(instantOf(local, zone)!);
        const shown = again.replace(' ', 'T');
        // an hour lost at the most, and only on the day the clocks go forward
        if (shown !== local)
          expect([30, 60]).toContain((Date.parse(`${shown}Z`) - Date.parse(`${local}Z`)) / 60_000);
      }),
    );
  });
});
