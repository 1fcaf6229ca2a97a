import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CELLS_m, FIRST_CHOICES, readChoices, sayChoices, type TypedChoices } from './map-choices.ts';

const read = (change: Partial<TypedChoices> = {}) => readChoices({ ...FIRST_CHOICES, ...change }, 10, 90);
const value = (change: Partial<TypedChoices> = {}) => {
  const found = read(change);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.value;
};
const problems = (change: Partial<TypedChoices>) => {
  const found = read(change);
  return found.ok ? [] : found.problems;
};

describe('what is typed beside a map', () => {
  it('is a level bench at gel in cells of 5 mm when nothing is', () => {
    expect(value()).toEqual({ cell_m: 0.005, slope: { x: 0, y: 0 }, minute: null });
  });
  it.each([
    ['5 mm', 0.005],
    ['2.5', 0.0025],
    ['1/8 in', 0.003175],
    ['0.5 cm', 0.005],
  ])('reads a cell of %s', (cell, cell_m) => {
    expect(value({ cell }).cell_m).toBeCloseTo(cell_m, 12);
  });
  it.each([
    ['2', 0.002],
    ['-1.5', -0.0015],
    ['−1.5', -0.0015],
    ['0,5', 0.0005],
    ['+.5', 0.0005],
    [' 50 ', 0.05],
  ])('reads a fall of %s mm per m to either side', (typed, slope) => {
    expect(value({ tiltX: typed }).slope).toEqual({ x: slope, y: 0 });
    expect(value({ tiltY: typed }).slope).toEqual({ x: 0, y: slope });
  });
  it('reads the minute only when a minute is shown, from the first to the last', () => {
    expect(value({ minute: 'whatever' }).minute).toBeNull();
    for (const minute of ['10', '34.5', '90'])
      expect(value({ moment: 'minute', minute }).minute).toBe(Number(minute));
    for (const minute of ['9', '90.5', '', 'noon'])
      expect(problems({ moment: 'minute', minute })).toHaveLength(1);
  });
  it.each([
    ['cell', '6 mm', '1 mm to 5 mm, typed as 5 mm, 2.5 mm or 1/8 in'],
    ['cell', '0.5 mm', '1 mm to 5 mm, typed as 5 mm, 2.5 mm or 1/8 in'],
    ['cell', '', '1 mm to 5 mm, typed as 5 mm, 2.5 mm or 1/8 in'],
    ['tiltX', '51', '−50 to 50 mm per m'],
    ['tiltY', '-51', '−50 to 50 mm per m'],
    ['tiltY', '1e1', '−50 to 50 mm per m'],
    ['tiltX', '', '−50 to 50 mm per m'],
  ] as const)('says of %s "%s" what was read and what is allowed', (field, typed, allowed) => {
    const [problem, ...more] = problems({ [field]: typed });
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ path: field, read: typed, allowed });
    expect(problem!.message).toMatch(/^[A-Z].*\.$/);
  });
  it('tells every field that is wrong, at once', () => {
    const all = problems({ cell: 'x', tiltX: 'x', tiltY: 'x', moment: 'minute', minute: 'x' });
    expect(all.map(({ path }) => path)).toEqual(['cell', 'tiltX', 'tiltY', 'minute']);
  });
  it('is either a problem or in range, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 40 }), fc.double(), (text, number) => {
        for (const typed of [text, String(number), `${number} mm`]) {
          const found = read({ cell: typed, tiltX: typed, moment: 'minute', minute: typed });
          if (!found.ok) {
            expect(found.problems.length).toBeGreaterThan(0);
            continue;
          }
          const { cell_m, slope, minute } = found.value;
          expect(cell_m >= CELLS_m.min && cell_m <= CELLS_m.max).toBe(true);
          expect(Math.abs(slope.x)).toBeLessThanOrEqual(0.05);
          expect(minute! >= 10 && minute! <= 90).toBe(true);
        }
      }),
    );
  });
});

describe('what is chosen, in words', () => {
  it.each([
    [{}, 'at gel, on a level bench'],
    [{ tiltX: '2' }, 'at gel, on a bench that falls 2 mm per m to the right'],
    [
      { tiltX: '-2', tiltY: '0.3' },
      'at gel, on a bench that falls 2 mm per m to the left and 0.3 mm per m to the back',
    ],
    [{ tiltY: '-1' }, 'at gel, on a bench that falls 1 mm per m to the front'],
    [{ moment: 'minute', minute: '30' }, 'at minute 30, on a level bench'],
  ] as const)('%o: %s', (change, words) => {
    expect(sayChoices(value(change))).toBe(words);
  });
});
