import { describe, expect, it } from 'vitest';
import { weighParts } from './parts.ts';
import { judgeRatio, leastPart_kg } from './ratio-verdict.ts';

const mix = { volumeA: 2, volumeB: 1, densityA_kg_m3: 1130, densityB_kg_m3: 980 };
const judged = (mass_kg: number, step_kg: number) =>
  judgeRatio({ number: 3, ...weighParts(mass_kg, mix, step_kg) }, step_kg);

describe('how far off its ratio a cup may be', () => {
  it('is fine for a kilogram on a 1 g scale', () => {
    expect(judged(1, 0.001)).toMatchObject({ verdict: 'fine', says: null });
  });

  it('puts the least part on a 1 g scale at 33.3 g', () => {
    expect(leastPart_kg(0.001)).toBeCloseTo(0.0333, 4);
    expect(() => leastPart_kg(0)).toThrow(RangeError);
  });

  it('warns between 3 and 10 %, naming cup, part, figure and what to do', () => {
    const cup = { number: 3, partA_kg: 0.05, partB_kg: 0.021, ratioError: 0.01, scaleError: 0.035 };
    const { verdict, says, error } = judgeRatio(cup, 0.001);
    expect(verdict).toBe('warn');
    expect(error).toBeCloseTo(0.045, 12);
    expect(says).toContain('Cup 3: part B is 21 g; on a scale of 1 g steps the ratio can be 4.5% off');
    expect(says).toContain('below 34 g cannot meet 3%');
    expect(says).not.toContain('never get hard');
  });

  it('says from 8 % on that it may stay soft, and refuses beyond 10 %', () => {
    const cup = { number: 1, partA_kg: 0.02, partB_kg: 0.009, scaleError: 0.08 };
    expect(judgeRatio({ ...cup, ratioError: -0.01 }, 0.001).says).toContain('may never get hard');
    expect(judgeRatio({ ...cup, ratioError: -0.021 }, 0.001)).toMatchObject({ verdict: 'refuse' });
    expect(judgeRatio({ ...cup, ratioError: 0.021 }, 0.001).says).toContain('Do not pour it');
  });

  it('counts A as the small part where there is less of it', () => {
    const cup = { number: 1, partA_kg: 0.01, partB_kg: 0.02, ratioError: 0, scaleError: 0.08 };
    expect(judgeRatio(cup, 0.001).says).toContain('part A is 10 g');
  });

  it('refuses a spoonful on a kitchen scale of 5 g', () => {
    expect(judged(0.03, 0.005).verdict).toBe('refuse');
  });
});
