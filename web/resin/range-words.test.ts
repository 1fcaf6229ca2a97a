import { describe, expect, it } from 'vitest';
import { narrowedText, spanText } from './range-words.ts';

const range = (low_s: number, high_s: number, reached = 1) => ({ low_s, mid_s: low_s, high_s, reached });

describe('a range in words', () => {
  it('says its unit once, and both where they differ', () => {
    expect(spanText(range(36 * 60, 56 * 60))).toBe('36 to 56 min');
    expect(spanText(range(95 * 60, 4.5 * 3600))).toBe('95 min to 4.5 h');
    expect(spanText(range(600, 610))).toBe('10 min');
  });

  it('says that it may be later, or not at all', () => {
    expect(spanText(range(9 * 3600, 20 * 3600, 0.7))).toBe('9 h or later');
    expect(spanText(null)).toBe('not within 30 days');
  });

  it('says how its width changed', () => {
    expect([0.84, 1.12, 1.002, null].map(narrowedText)).toEqual([
      '16 % narrower',
      '12 % wider',
      'as wide as before',
      '',
    ]);
  });
});
