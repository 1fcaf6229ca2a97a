import { describe, expect, it } from 'vitest';
import { clockText, dayText, localTime_ms, pourClock } from './dates.ts';

describe('days and times', () => {
  it('read local dates and times, and nothing else', () => {
    expect(localTime_ms('2026-05-14T09:00')).toBe(new Date(2026, 4, 14, 9).getTime());
    expect(localTime_ms('2026-05-14')).toBe(new Date(2026, 4, 14).getTime());
    expect(localTime_ms('')).toBeNull();
    expect(localTime_ms('2026-02-31')).toBeNull();
    expect(localTime_ms('14.5.2026')).toBeNull();
  });

  it('are said the way each system says them', () => {
    const noon = new Date(2026, 4, 14, 12, 5).getTime();
    expect(clockText(noon, 'us')).toBe('12:05 pm');
    expect(clockText(noon, 'metric')).toBe('12:05');
    expect(clockText(new Date(2026, 4, 14, 0, 5).getTime(), 'us')).toBe('12:05 am');
    expect(dayText('2026-05-14', 'us', 2026)).toBe('Thu May 14');
    expect(dayText('2026-05-14', 'metric', 2026)).toBe('Thu 14 May');
    expect(dayText('2026-05-14', 'metric', 2025)).toBe('Thu 14 May 2026');
  });

  it('count a pour in minutes and seconds', () => {
    expect(pourClock(0)).toBe('0:00');
    expect(pourClock(270)).toBe('4:30');
    expect(pourClock(3870)).toBe('1:04:30');
    expect(pourClock(-0.2)).toBe('0:00');
    expect(pourClock(-90)).toBe('-1:30');
  });
});
