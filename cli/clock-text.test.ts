import { describe, expect, test } from 'vitest';
import { clockText, signedText } from './clock-text.ts';

describe('times on the plan’s clock', () => {
  test.each([
    [0, '0:00'],
    [65, '1:05'],
    [3599.4, '59:59'],
    [3599.6, '1 h 00'],
    [8280, '2 h 18'],
    [8311, '2 h 19'],
    [172_769, '47 h 59'],
    [172_800, '2 d'],
    [-65, '-1:05'],
    [-0.2, '0:00'],
  ])('%f s is "%s"', (time_s, text) => {
    expect(clockText(time_s)).toBe(text);
  });

  test.each([
    [310, '+5:10'],
    [-40, '-0:40'],
    [6900, '+1 h 55'],
    [0, '+0:00'],
  ])('a slack of %f s is "%s"', (time_s, text) => {
    expect(signedText(time_s)).toBe(text);
  });
});
