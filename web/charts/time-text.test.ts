import { describe, expect, it } from 'vitest';
import {
  afterPourRange,
  afterPourText,
  minutesRange,
  minutesSpan,
  minutesText,
  minutesWithUnit,
} from './time-text.ts';

const range = (low: number, mid: number, high: number) => ({ low_s: low, mid_s: mid, high_s: high });

describe('times in words', () => {
  it('says minutes to the half under ten, whole above, hours from two on', () => {
    expect([150, 570, 590, 840, 7140, 7200, 11_400].map(minutesText)).toEqual([
      '2.5',
      '9.5',
      '10',
      '14',
      '119',
      '2 h 00',
      '3 h 10',
    ]);
    expect(minutesWithUnit(840)).toBe('14 min');
    expect(minutesWithUnit(11_400)).toBe('3 h 10');
    expect(minutesText(-0.001)).toBe('0');
  });

  it('says spans and ranges once with their unit', () => {
    expect(minutesSpan(540, 840)).toBe('9 to 14 min');
    expect(minutesSpan(450, 460)).toBe('at 7.5 min');
    expect(minutesSpan(1680, 9900)).toBe('28 min to 2 h 45');
    expect(minutesRange(range(960, 1080, 1320))).toBe('18 (16 to 22) min');
    expect(minutesRange(range(900, 900, 900))).toBe('15 min');
  });

  it('says hours to two days, then days', () => {
    expect([2400, 19_800, 36 * 3600, 4.5 * 86_400, 28 * 86_400].map(afterPourText)).toEqual([
      '40 min',
      '5.5 h',
      '36 h',
      '4.5 d',
      '28 d',
    ]);
    expect(afterPourRange(range(18 * 3600, 26 * 3600, 40 * 3600))).toBe('26 h (18 to 40 h)');
    expect(afterPourRange(range(40 * 3600, 50 * 3600, 70 * 3600))).toBe('2 d (40 h to 3 d)');
  });

  it('says a question mark for what is no number', () => {
    expect(minutesText(Number.NaN)).toBe('?');
    expect(afterPourText(Number.POSITIVE_INFINITY)).toBe('?');
  });
});
