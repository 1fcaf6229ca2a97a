import { describe, expect, it } from 'vitest';
import { measurePiece } from '#core/piece/measure.ts';
import { inOneUnit, problemInOneUnit } from './one-unit.ts';

describe('figures of core/piece in the shop’s units alone', () => {
  it.each([
    ['53.97 mm (2.125 in)', '2.125 in', '53.97 mm'],
    ['10 mm (0.394 in) to 10000 mm (393.701 in)', '0.394 in to 393.701 in', '10 mm to 10000 mm'],
    ['up to -3 mm (-0.118 in) beyond', 'up to -0.118 in beyond', 'up to -3 mm beyond'],
    ['0.10 cm2 (0.016 sq in)', '0.016 sq in', '0.10 cm2'],
    [
      '13 mm (1/2 in) or more (shop default)',
      '1/2 in or more (shop default)',
      '13 mm or more (shop default)',
    ],
    ['nothing left', 'nothing left', 'nothing left'],
  ])('"%s"', (both, us, metric) => {
    expect(inOneUnit(both, 'us')).toBe(us);
    expect(inOneUnit(both, 'metric')).toBe(metric);
  });

  it('leaves no second unit in what a piece that cannot be made is told', () => {
    const measured = measurePiece({
      outline: { shape: 'rectangle', length_m: 1, width_m: 0.5, cornerRadius_m: 0.4 },
      edges: {},
      cutOuts: [],
      bodyThickness_m: 0.038,
    });
    const problems = measured.ok ? [] : measured.problems;
    expect(problems.length).toBeGreaterThan(0);
    for (const problem of problems) {
      expect(JSON.stringify(problemInOneUnit(problem, 'us'))).not.toContain(' mm');
      expect(JSON.stringify(problemInOneUnit(problem, 'metric'))).not.toContain(' in)');
    }
  });
});
