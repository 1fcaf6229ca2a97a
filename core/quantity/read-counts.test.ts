import { describe, expect, it, test } from 'vitest';
import type { Result } from './problem.ts';
import { readCount, readFactor, readPercent, readRatio, readRelativeHumidity } from './read-counts.ts';
import { readDuration_s } from './read-duration.ts';

function outcome<T>(result: Result<T>): T | string {
  return result.ok ? result.value : (result.problems[0]?.code ?? '');
}

describe('durations', () => {
  test.each([
    ['20 min', 1200],
    ['20m', 1200],
    ['90s', 90],
    ['1 h 30', 5400],
    ['1h30m', 5400],
    ['1:30 h', 5400],
    ['1:30:15', 5415],
    ['1:30 min', 90],
    ['1.5 hours', 5400],
    ['1 1/2 hr', 5400],
    ['2 d', 172800],
    ['1 day, 4 hrs', 100800],
    ['1 wk', 604800],
    ['1:30', 'duration.no-unit'],
    ['1:75 h', 'duration.no-unit'],
    ['20', 'duration.no-unit'],
    ['30 min 1 h', 'duration.unreadable'],
    ['18-24 min', 'duration.unreadable'],
    ['-5 min', 'duration.range'],
  ])('%s is %s', (text, expected) => {
    expect(outcome(readDuration_s(text))).toBe(expected);
  });

  it('takes the unit of the question for a figure with a colon', () => {
    expect(outcome(readDuration_s('1:30', { unit: 'h' }))).toBe(5400);
    expect(outcome(readDuration_s('1:30', { unit: 'min' }))).toBe(90);
    const over = readDuration_s('9:00 h', { max: 3600 });
    expect(over.ok ? '' : over.problems[0]?.read).toBe('9:00 h');
  });
});

describe('ratios', () => {
  test.each([
    ['1:1', 1, 1, 'volume'],
    ['2:1', 2, 1, 'volume'],
    ['2 : 1 by volume', 2, 1, 'volume'],
    ['3 to 1 by volume', 3, 1, 'volume'],
    ['100:45 by weight', 100, 45, 'weight'],
    ['100:45 (by weight)', 100, 45, 'weight'],
    ['100 : 45 w', 100, 45, 'weight'],
    ['100:45wt', 100, 45, 'weight'],
    ['100:42,5 pbw', 100, 42.5, 'weight'],
    ['2 parts A to 1 part B', 2, 1, 'volume'],
    ['2A:1B by mass', 2, 1, 'weight'],
  ] as const)('%s is read', (text, a, b, basis) => {
    expect(outcome(readRatio(text))).toEqual({ a, b, basis });
  });

  test.each([
    ['0:0', 'ratio.range'],
    ['1:0', 'ratio.range'],
    ['0:1', 'ratio.range'],
    ['2:1:1', 'ratio.unreadable'],
    ['2', 'ratio.unreadable'],
    ['-2:1', 'ratio.unreadable'],
    ['1,200:100', 'ratio.ambiguous'],
    ['100:45 g', 'ratio.unknown-unit'],
  ])('%s is refused as %s', (text, code) => {
    expect(outcome(readRatio(text))).toBe(code);
  });

  it('bounds A over B', () => {
    expect(outcome(readRatio('10:1', { max: 5 }))).toBe('ratio.range');
    expect(outcome(readRatio('5:1', { max: 5 }))).toEqual({ a: 5, b: 1, basis: 'volume' });
  });
});

describe('percentages, humidity, counts and plain figures', () => {
  it('reads a percentage as a fraction', () => {
    expect(outcome(readPercent('35%'))).toBe(0.35);
    expect(outcome(readPercent('2 1/2 percent'))).toBe(0.025);
    expect(outcome(readPercent('35'))).toBe('percent.no-unit');
    expect(outcome(readPercent('35', { unit: '%' }))).toBe(0.35);
    expect(outcome(readPercent('120%', { max: 1 }))).toBe('percent.range');
  });

  test.each([
    ['55%', 0.55],
    ['55 % RH', 0.55],
    ['55 rh', 0.55],
    ['55', 0.55],
    ['0', 0],
    ['100', 1],
    ['0.5 %', 0.005],
    ['0.55', 'humidity.ambiguous'],
    ['101', 'humidity.range'],
    ['-1%', 'humidity.range'],
  ])('humidity %s is %s', (text, expected) => {
    expect(outcome(readRelativeHumidity(text))).toBe(expected);
  });

  test.each([
    ['3', 3],
    [' 12 ', 12],
    ['-1', 'count.range'],
    ['101', 'count.range'],
    ['99999999999999999999', 'count.range'],
    ['3.5', 'count.unreadable'],
    ['3 cups', 'count.unreadable'],
    ['1,200', 'count.ambiguous'],
  ])('count %s is %s', (text, expected) => {
    expect(outcome(readCount(text, { max: 100 }))).toBe(expected);
  });

  it('says the range of a count', () => {
    const result = readCount('7', { what: 'number of cups', min: 1, max: 6 });
    expect(result.ok ? '' : result.problems[0]?.allowed).toBe('a whole number, 1 to 6');
  });

  it('reads plain figures, and refuses units', () => {
    expect(outcome(readFactor('1 1/2'))).toBe(1.5);
    expect(outcome(readFactor('1,5'))).toBe(1.5);
    expect(outcome(readFactor('1.5 mm'))).toBe('factor.unreadable');
    expect(outcome(readFactor('2.5', { min: 1, max: 2 }))).toBe('factor.range');
    expect(outcome(readFactor('-1'))).toBe('factor.range');
  });
});
