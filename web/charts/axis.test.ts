import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { afterPourTicks, logTicks, minuteTicks, niceTicks, thinned } from './axis.ts';

describe('axis marks', () => {
  it('are round numbers inside the range', () => {
    expect(niceTicks(0, 1, 6)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1]);
    expect(niceTicks(68, 129, 5)).toEqual([80, 100, 120]);
    expect(niceTicks(-3, 3, 7)).toEqual([-3, -2, -1, 0, 1, 2, 3]);
  });

  it('never number more than asked nor leave the range', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        fc.integer({ min: 2, max: 12 }),
        (low, size, most) => {
          const ticks = niceTicks(low, low + size, most);
          expect(ticks.length).toBeLessThanOrEqual(most);
          for (const t of ticks) {
            expect(t).toBeGreaterThanOrEqual(low - size * 1e-6);
            expect(t).toBeLessThanOrEqual(low + size * (1 + 1e-6));
          }
        },
      ),
    );
  });

  it('step minutes as a clock does', () => {
    expect(minuteTicks(0, 46, 12)).toEqual([0, 5, 10, 15, 20, 25, 30, 35, 40, 45]);
    expect(minuteTicks(0, 46, 5)).toEqual([0, 10, 20, 30, 40]);
    expect(minuteTicks(0, 46, 4)).toEqual([0, 15, 30, 45]);
    expect(minuteTicks(0, 240, 6)).toEqual([0, 60, 120, 180, 240]);
  });

  it('mark each 1 to 9 of a decade, the powers of ten as major', () => {
    const ticks = logTicks(0.5, 20);
    expect(ticks.filter((t) => t.major).map((t) => t.value)).toEqual([1, 10]);
    expect(ticks.map((t) => t.value)).toEqual([0.5, 0.6, 0.7, 0.8, 0.9, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 20]);
  });

  it('say hours in the first day and days after it', () => {
    expect(afterPourTicks(3600, 8 * 86_400).map((t) => t.text)).toEqual([
      '1 h',
      '2 h',
      '4 h',
      '8 h',
      '12 h',
      '1 d',
      '2 d',
      '4 d',
      '7 d',
    ]);
  });

  it('are thinned to what there is room for, the first one kept', () => {
    expect(thinned([0, 5, 12, 30, 33], (t) => t, 10)).toEqual([0, 12, 30]);
  });

  it('refuse an empty range', () => {
    expect(() => niceTicks(2, 2, 5)).toThrow(RangeError);
    expect(() => minuteTicks(0, Number.NaN, 5)).toThrow(RangeError);
    expect(() => logTicks(0, 3)).toThrow(RangeError);
    expect(() => niceTicks(0, 2, 1)).toThrow(/most is 1/);
  });
});
