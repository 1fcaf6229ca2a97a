/**
 * Cutting plans on the ten published classes of two-dimensional bin packing: Berkey and Wang 1987 (Journal of the Operational
 * Research Society 38, 423) and Martello and Vigo 1998 (Management Science 44, 388). The rules of the classes are from memory;
 * the published instances were not at hand, so these are our own draws from the rules. No printed figure is compared: what
 * is checked is that every layout keeps the saw's rules and that no plan ever has fewer sheets than the bound.
 * `benchmarks/cutting.ts` counts how often both meet.
 */
import { describe, expect, it } from 'vitest';
import { brokenRules } from '#core/piece/cutting/layout-rules.check.ts';
import { planCutting } from '#core/piece/cutting/plan-cutting.ts';
import { CLASSES, drawClass } from '#core/piece/cutting/published-classes.check.ts';

describe('draws from the published classes', () => {
  it.each(CLASSES.map((name, index) => ({ name, index })))(
    'class $name: sound layouts of 20 and 50 parts, at most one sheet over the bound',
    ({ index }) => {
      for (const count of [20, 50]) {
        for (const grain of ['fixed', 'free'] as const) {
          const { parts, stock } = drawClass(index, count, 3, grain);
          const plan = planCutting(parts, stock, { kerf_m: 0, trim_m: 0, rounds: 1500, tidyRounds: 0 });
          if (!plan.ok) throw new Error(plan.problems[0]!.message);
          const { sheets, lowerBound } = plan.value;
          for (const sheet of sheets) expect(brokenRules(sheet, parts, 0)).toEqual([]);
          expect(sheets.reduce((sum, sheet) => sum + sheet.parts.length, 0)).toBe(count);
          expect(sheets.length).toBeGreaterThanOrEqual(lowerBound - 1e-9);
          expect(sheets.length).toBeLessThanOrEqual(Math.ceil(lowerBound - 1e-7) + 1);
        }
      }
    },
  );
});

describe('bounds worked by hand', () => {
  const sheet = [{ name: 'sheet', length_m: 0.1, width_m: 0.1, price: 1 }];
  const options = { kerf_m: 0, trim_m: 0, rounds: 500 };
  it('parts over half the sheet both ways take a sheet each, whatever their area', () => {
    const parts = [{ name: 'large', length_m: 0.051, width_m: 0.051, count: 7, grain: 'free' as const }];
    const plan = planCutting(parts, sheet, options);
    expect(plan.ok && [plan.value.lowerBound, plan.value.sheets.length, plan.value.proof]).toEqual([
      7,
      7,
      'bound',
    ]);
  });
  it('parts over a third of the sheet one way and over half the other go two to a sheet', () => {
    const parts = [{ name: 'strip', length_m: 0.051, width_m: 0.034, count: 7, grain: 'fixed' as const }];
    const plan = planCutting(parts, sheet, options);
    expect(plan.ok && [plan.value.lowerBound, plan.value.sheets.length, plan.value.proof]).toEqual([
      4,
      4,
      'bound',
    ]);
  });
  it('five parts around a hole fit one sheet only without going right through, so the saw needs two', () => {
    // The pinwheel: four parts 60 by 40 around a middle of 20 by 20 fill a 100 by 100 sheet exactly.
    const parts = [
      { name: 'arm', length_m: 0.06, width_m: 0.04, count: 2, grain: 'fixed' as const },
      { name: 'upright', length_m: 0.04, width_m: 0.06, count: 2, grain: 'fixed' as const },
      { name: 'middle', length_m: 0.02, width_m: 0.02, grain: 'fixed' as const },
    ];
    const plan = planCutting(parts, sheet, options);
    expect(plan.ok && [plan.value.sheets.length, plan.value.proof]).toEqual([2, 'every plan']);
  });
});
