import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lowerBound } from './bound.ts';
import { STEP_M, type Task, toSteps } from './counts.ts';
import type { CutPart, CuttingOptions, CuttingPlan, StockSheet } from './cutting.ts';
import { cheapestOfAll } from './every-plan.ts';
import { brokenRules, NEAR_M, sawByList } from './layout-rules.check.ts';
import { planCutting } from './plan-cutting.ts';

const INCH = 0.0254;
const board: StockSheet = { name: 'MDF 3/4 in', length_m: 97 * INCH, width_m: 49 * INCH };

function planOf(
  parts: readonly CutPart[],
  stock: readonly StockSheet[],
  options?: CuttingOptions,
): CuttingPlan {
  const result = planCutting(parts, stock, options);
  if (!result.ok) throw new Error(result.problems.map((each) => each.message).join(' '));
  return result.value;
}

const anyPart = fc.record({
  name: fc.constant('part'),
  length_m: fc.integer({ min: 20, max: 1100 }).map((mm) => mm / 1000),
  width_m: fc.integer({ min: 20, max: 700 }).map((mm) => mm / 1000),
  grain: fc.constantFrom('fixed' as const, 'free' as const),
});
const anyParts = fc
  .array(anyPart, { minLength: 1, maxLength: 12 })
  .map((list) => list.map((part, i) => ({ ...part, name: `part ${i}` })));
const anyStock = fc.record({
  kerf_m: fc.constantFrom(0, 0.0022, 0.003175, 0.004),
  trim_m: fc.constantFrom(0, 0.006, 0.0127),
  offcut: fc.boolean(),
});

describe('cutting plans', () => {
  it('keep every rule of the saw, whatever the parts', () => {
    fc.assert(
      fc.property(anyParts, anyStock, (parts, { kerf_m, trim_m, offcut }) => {
        const stock: StockSheet[] = [{ name: 'sheet', length_m: 1.22, width_m: 0.8 }];
        if (offcut) stock.push({ name: 'offcut', length_m: 0.7, width_m: 0.3, count: 1, offcut: true });
        const plan = planOf(parts, stock, { kerf_m, trim_m, rounds: 60, tidyRounds: 20 });
        for (const sheet of plan.sheets) expect(brokenRules(sheet, parts, kerf_m)).toEqual([]);
        const placed = plan.sheets
          .flatMap((sheet) => sheet.parts.map((part) => part.part))
          .sort((a, b) => a - b);
        expect(placed).toEqual(parts.map((_, i) => i));
        expect(plan.price).toBeGreaterThanOrEqual(plan.lowerBound);
        const area = plan.sheets.reduce((sum, sheet) => sum + sheet.length_m * sheet.width_m, 0);
        expect(plan.partsArea_m2 + plan.offcutArea_m2 + plan.wasteArea_m2).toBeCloseTo(area, 9);
      }),
      { numRuns: 80 },
    );
  });

  it('can be sawn from the list of cuts alone, with every part coming out at its size', () => {
    fc.assert(
      fc.property(anyParts, anyStock, (parts, { kerf_m, trim_m }) => {
        const plan = planOf(parts, [{ name: 'sheet', length_m: 1.22, width_m: 0.8 }], {
          kerf_m,
          trim_m,
          rounds: 40,
          tidyRounds: 10,
        });
        for (const sheet of plan.sheets) {
          if (sheet.tree.kind === 'part') continue;
          const sawn = sawByList(sheet, kerf_m);
          expect(sawn.map((each) => each.name).sort()).toEqual(sheet.parts.map((part) => part.name).sort());
          for (const part of sheet.parts) {
            const got = sawn.find((each) => each.name === part.name)!;
            expect(Math.abs(got.alongX_m - part.alongX_m)).toBeLessThan(NEAR_M);
            expect(Math.abs(got.alongY_m - part.alongY_m)).toBeLessThan(NEAR_M);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('cost what looking at every layout finds, never less than the bound', () => {
    const few = fc.array(anyPart, { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(few, (parts) => {
        const task: Task = {
          items: parts.map((part, i) => ({
            part: i,
            x: toSteps(part.length_m),
            y: toSteps(part.width_m),
            turns: part.grain === 'free',
          })),
          sheets: [
            { stock: 0, x: toSteps(1.22), y: toSteps(0.8), price: 1, count: Number.POSITIVE_INFINITY },
          ],
        };
        const cheapest = cheapestOfAll(task)!.price;
        expect(lowerBound(task)).toBeLessThanOrEqual(cheapest + 1e-9);
        const sheet = { name: 'sheet', length_m: 1.22, width_m: 0.8, price: 1 };
        const plan = planOf(parts, [sheet], { kerf_m: 0, trim_m: 0, rounds: 400, tidyRounds: 0 });
        expect(plan.price).toBe(cheapest);
        expect(plan.proof).not.toBe('none');
      }),
      { numRuns: 60 },
    );
  });

  it('fill a sheet to the last step when kerf and parts add up to it', () => {
    const kerf_m = 0.003175;
    const side = (0.6 - kerf_m) / 2;
    const parts: CutPart[] = [{ name: 'quarter', length_m: side, width_m: side, count: 4, grain: 'free' }];
    const sheet: StockSheet = { name: 'sheet', length_m: 0.6, width_m: 0.6 };
    const plan = planOf(parts, [sheet], { kerf_m, trim_m: 0 });
    expect(plan.sheets).toHaveLength(1);
    expect(plan.sheets[0]!.cuts).toHaveLength(3);
    const wider = parts.map((part) => ({ ...part, length_m: side + 2 * STEP_M }));
    expect(planOf(wider, [sheet], { kerf_m, trim_m: 0 }).sheets).toHaveLength(2);
  });

  it('take an offcut from the shelf before a new sheet', () => {
    const parts: CutPart[] = [
      { name: 'field', length_m: 42 * INCH, width_m: 21.5 * INCH, grain: 'free' },
      { name: 'front strip', length_m: 42 * INCH, width_m: 3 * INCH, grain: 'free' },
    ];
    const shelf: StockSheet = {
      name: 'offcut',
      length_m: 45 * INCH,
      width_m: 26 * INCH,
      count: 1,
      offcut: true,
    };
    const plan = planOf(parts, [board, shelf]);
    expect(plan.sheets.map((sheet) => sheet.name)).toEqual(['offcut']);
    expect([plan.price, plan.gap, plan.proof]).toEqual([0, 0, 'bound']);
  });

  it('take the dearer sheet only where it saves money', () => {
    const parts: CutPart[] = [{ name: 'field', length_m: 1.1, width_m: 0.55, count: 2, grain: 'fixed' }];
    const small = { name: 'half sheet', length_m: 1.22, width_m: 0.61, price: 30 };
    const large = { name: 'sheet', length_m: 1.22, width_m: 1.22, price: 50 };
    expect(planOf(parts, [small, large]).price).toBe(50);
    expect(planOf(parts, [small, { ...large, price: 70 }]).price).toBe(60);
    expect(
      planOf(parts, [
        { ...small, count: 1 },
        { ...large, price: 70 },
      ]).price,
    ).toBe(70);
  });

  it('turn a part only when its grain is free', () => {
    const part = { name: 'end', length_m: 0.5, width_m: 1, grain: 'free' as const };
    const sheet: StockSheet = { name: 'sheet', length_m: 1.22, width_m: 0.61 };
    expect(planOf([part], [sheet]).sheets[0]!.parts[0]!.turned).toBe(true);
    const fixed = planCutting([{ ...part, grain: 'fixed' }], [sheet]);
    expect(fixed.ok ? '' : fixed.problems[0]!.message).toBe(
      'end fits into none of the sheets once they are trimmed.',
    );
  });

  it('trim four edges first and make the strips before the parts', () => {
    const parts: CutPart[] = [{ name: 'strip', length_m: 1, width_m: 0.075, count: 6, grain: 'fixed' }];
    const [sheet] = planOf(parts, [board]).sheets;
    expect(sheet!.cuts.slice(0, 4).map((cut) => cut.kind)).toEqual([
      'trim rip',
      'trim rip',
      'trim crosscut',
      'trim crosscut',
    ]);
    expect(sheet!.cuts.map((cut) => cut.number)).toEqual(sheet!.cuts.map((_, i) => i + 1));
    expect(sheet!.offcuts.length).toBeGreaterThan(0);
  });

  it('are the same for the same seed', () => {
    const parts: CutPart[] = Array.from({ length: 20 }, (_, i) => ({
      name: `part ${i}`,
      length_m: 0.2 + 0.037 * i,
      width_m: 0.9 - 0.031 * i,
      grain: 'free' as const,
    }));
    const once = planOf(parts, [board], { rounds: 300, seed: 7 });
    expect(planOf(parts, [board], { rounds: 300, seed: 7 })).toEqual(once);
  });

  it('say what is wrong with what was typed', () => {
    const say = (parts: CutPart[], stock: StockSheet[]) => {
      const result = planCutting(parts, stock);
      return result.ok ? [] : result.problems.map((each) => each.code);
    };
    const part: CutPart = { name: 'field', length_m: 1, width_m: 0.5, grain: 'free' };
    expect(say([], [])).toEqual(['cutting.no-parts', 'cutting.no-stock']);
    expect(say([{ ...part, length_m: Number.NaN }], [board])).toEqual(['cutting.size']);
    expect(say([{ ...part, count: 301 }], [board])).toEqual(['cutting.too-many']);
    expect(say([{ ...part, count: 0 }], [board])).toEqual(['cutting.count']);
    expect(say([{ ...part, count: 6 }], [{ ...board, count: 1 }])).toEqual(['cutting.not-enough']);
    expect(say([part], [{ ...board, price: -1, trim_m: 1 }])).toEqual(['cutting.price', 'cutting.trim']);
    expect(() => planCutting([part], [board], { kerf_m: -0.001 })).toThrow(RangeError);
    expect(() => planCutting([part], [board], { rounds: 0.5 })).toThrow(RangeError);
  });
});
