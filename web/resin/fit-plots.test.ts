import { describe, expect, it } from 'vitest';
import type { FitCurve } from '#core/resin/fit-curves.ts';
import { fitPlot } from './fit-plots.ts';

const cup: FitCurve = {
  quantity: 'cup temperature',
  body: { mass_kg: 0.1, temperature_K: 297.15 },
  time_s: [600, 1200],
  band: [
    { low: 298.15, mid: 299.15, high: 303.15 },
    { low: 303.15, mid: 313.15, high: 460 },
  ],
  points: [
    { time_s: 900, value: 313.15, said: 'a cup at 40 C', source: 'shop', withdrawn: true },
    { time_s: 1000, value: null, said: 'pot life 15 min', source: 'label', withdrawn: false },
  ],
};

describe('a chart of the fit', () => {
  it('is in the units on screen', () => {
    expect(fitPlot(cup, 'metric').marks[0]!.y).toBeCloseTo(40, 9);
    expect(fitPlot(cup, 'us').marks[0]!.y).toBeCloseTo(104, 9);
    expect(fitPlot(cup, 'us').title).toBe('Cup of 100 g at 75 °F: temperature in it');
  });

  it('shows a band that runs away no further than a maker stands beside it', () => {
    expect(fitPlot(cup, 'metric').y.high).toBeLessThan(130);
  });

  it('lists where each mark is from', () => {
    const { marks, list } = fitPlot(cup, 'metric');
    expect(list.map(({ words }) => words)).toEqual([
      'a cup at 40 C (shop, withdrawn)',
      'pot life 15 min (label)',
    ]);
    expect(marks.map(({ number, faint, y }) => [number, faint, y === null])).toEqual([
      [1, true, false],
      [2, false, true],
    ]);
  });

  it('of a film hardness counts kelvin above the film in the units on screen', () => {
    const film: FitCurve = {
      quantity: 'film hardness',
      body: { film_m: 0.0025, temperature_K: 297.15 },
      time_s: [3600, 36_000],
      band: [
        { low: -30, mid: -20, high: -10 },
        { low: 5, mid: 10, high: 15 },
      ],
      points: [{ time_s: 36_000, value: 10, said: 'dry hard 10 h', source: 'label', withdrawn: false }],
    };
    expect(fitPlot(film, 'us').marks[0]!.y).toBeCloseTo(18, 9);
    expect(fitPlot(film, 'us').x.ticks.map((tick) => tick.text)).toEqual(['1 h', '2 h', '4 h', '8 h']);
  });
});
