/** From parts and stock to a cutting plan. */
import { within } from '#core/quantity/domain.ts';
import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import { lowerBound } from './bound.ts';
import { fits, type Item, type Sheet, type Task, toSteps } from './counts.ts';
import type { CutPart, CuttingOptions, CuttingPlan, StockSheet } from './cutting.ts';
import { cheapestOfAll, MOST_FOR_EVERY_PLAN } from './every-plan.ts';
import { layOutSheet } from './lay-out-sheet.ts';
import { type Found, SAME_PRICE, searchPlan, tidyPlan } from './search.ts';

export const KERF_M = 0.003175;
export const TRIM_M = 0.006;
/** Single parts (counts multiplied out). */
export const MOST_PARTS = 300;

const LARGEST_M = 20;

/**
 * The cheapest plan found for cutting the parts out of the stock with guillotine cuts, each cut one kerf wide. Offcuts
 * cost nothing unless a price is given, so they are used first. Effort is counted in rounds, not in time; the same input
 * gives the same plan. The plan says how far it can be from the cheapest (`gap`, `proof`).
 *
 * Answers with problems when there is nothing to cut, when a size is not a number above 0 and up to 20 m, when a part fits
 * into no sheet, or when the stock is too little (then `read` names what is left over).
 * @throws RangeError when an option is out of range: kerf_m 0 to 0.02, trim_m 0 to 0.1, keep sizes 0 or more, rounds and
 * tidyRounds whole numbers from 0 (rounds from 1).
 */
export function planCutting(
  parts: readonly CutPart[],
  stock: readonly StockSheet[],
  options: CuttingOptions = {},
): Result<CuttingPlan> {
  const { kerf_m = KERF_M, trim_m = TRIM_M, rounds = 20_000, tidyRounds = 1_000, seed = 1 } = options;
  const keep = options.keep ?? { length_m: 0.6, width_m: 0.1 };
  within('kerf_m', kerf_m, 0, 0.02, 'm');
  within('trim_m', trim_m, 0, 0.1, 'm');
  within('keep.length_m', keep.length_m, 0, LARGEST_M, 'm');
  within('keep.width_m', keep.width_m, 0, LARGEST_M, 'm');
  whole('rounds', rounds, 1);
  whole('tidyRounds', tidyRounds, 0);
  const problems = sizeProblems(parts, stock);
  if (problems.length > 0) return bad(...problems);

  const kerf = toSteps(kerf_m);
  const trimOf = (sheet: StockSheet) => sheet.trim_m ?? (sheet.offcut === true ? 0 : trim_m);
  const items: Item[] = parts.flatMap((part, i) =>
    Array.from({ length: part.count ?? 1 }, () => ({
      part: i,
      x: toSteps(part.length_m) + kerf,
      y: toSteps(part.width_m) + kerf,
      turns: part.grain === 'free' && part.length_m !== part.width_m,
    })),
  );
  const priceOf = (sheet: StockSheet) =>
    sheet.price ?? (sheet.offcut === true ? 0 : sheet.length_m * sheet.width_m);
  const usable: Sheet[] = stock
    .map((sheet, i) => ({
      stock: i,
      x: toSteps(sheet.length_m - 2 * trimOf(sheet)) + kerf,
      y: toSteps(sheet.width_m - 2 * trimOf(sheet)) + kerf,
      price: priceOf(sheet),
      count: sheet.count ?? Number.POSITIVE_INFINITY,
    }))
    .filter((sheet) => sheet.count > 0 && items.some((item) => fits(item, sheet)));
  const tooLarge = parts.flatMap((part, i): Problem[] => {
    const item = items.find((each) => each.part === i);
    if (item === undefined || usable.some((sheet) => fits(item, sheet))) return [];
    return [
      {
        path: `parts.${i}`,
        code: 'cutting.part-too-large',
        message: `${part.name} fits into none of the sheets once they are trimmed.`,
        read: `${part.length_m} m by ${part.width_m} m${part.grain === 'fixed' ? ', grain along its length' : ''}`,
      },
    ];
  });
  if (tooLarge.length > 0) return bad(...tooLarge);
  const task: Task = { items, sheets: usable };
  const bound = lowerBound(task);
  let found = searchPlan(task, bound, rounds, seed);
  let proof: CuttingPlan['proof'] = found !== null && samePrice(found.price, bound) ? 'bound' : 'none';
  if (proof === 'none' && items.length <= MOST_FOR_EVERY_PLAN) {
    const exact = cheapestOfAll(task);
    if (exact !== null && (found === null || !samePrice(exact.price, found.price))) found = exact;
    proof = 'every plan';
  }
  if (found === null) {
    return bad({
      path: 'stock',
      code: 'cutting.not-enough',
      message:
        proof === 'every plan'
          ? 'The sheets there are cannot hold all parts.'
          : 'No plan was found that cuts all parts from the sheets there are; add a sheet or more rounds.',
    });
  }
  return good(
    describe(tidyPlan(found, task, tidyRounds, seed), proof === 'none' ? bound : found.price, proof),
  );

  function describe(best: Found, least: number, by: CuttingPlan['proof']): CuttingPlan {
    const names = parts.map((part) => part.name);
    const sheets = best.open.map(({ sheet, root }) => {
      const from = stock[usable[sheet]!.stock]!;
      return layOutSheet(root, {
        stock: usable[sheet]!.stock,
        sheet: from,
        price: usable[sheet]!.price,
        kerf,
        trim_m: trimOf(from),
        keep,
        items,
        names,
      });
    });
    const sum = (list: readonly number[]) => list.reduce((total, each) => total + each, 0);
    const price = sum(sheets.map((sheet) => sheet.price));
    const partsArea_m2 = sum(sheets.map((sheet) => sheet.partsArea_m2));
    const offcutArea_m2 = sum(
      sheets.flatMap((sheet) => sheet.offcuts.map((rest) => rest.alongX_m * rest.alongY_m)),
    );
    const lowest = Math.min(least, price);
    return {
      sheets,
      price,
      lowerBound: lowest,
      gap: price > 0 ? (price - lowest) / price : 0,
      proof: by,
      partsArea_m2,
      offcutArea_m2,
      wasteArea_m2: sum(sheets.map((sheet) => sheet.length_m * sheet.width_m)) - partsArea_m2 - offcutArea_m2,
    };
  }
}

const samePrice = (a: number, b: number) => Math.abs(a - b) <= SAME_PRICE * Math.max(1, a, b);

function whole(name: string, value: number, least: number): void {
  if (!(Number.isSafeInteger(value) && value >= least))
    throw new RangeError(`${name} is ${value}; allowed: whole numbers from ${least}`);
}

function sizeProblems(parts: readonly CutPart[], stock: readonly StockSheet[]): Problem[] {
  const problems: Problem[] = [];
  const say = (path: string, code: string, message: string, read?: string, allowed?: string) =>
    problems.push({
      path,
      code,
      message,
      ...(read === undefined ? {} : { read }),
      ...(allowed === undefined ? {} : { allowed }),
    });
  const sizes = (path: string, each: CutPart | StockSheet, least: number) => {
    for (const key of ['length_m', 'width_m'] as const)
      if (!(each[key] > 0 && each[key] <= LARGEST_M))
        say(
          `${path}.${key}`,
          'cutting.size',
          `A size of ${each.name} cannot be cut.`,
          `${each[key]} m`,
          'above 0 to 20 m',
        );
    if (each.count !== undefined && !(Number.isSafeInteger(each.count) && each.count >= least))
      say(
        `${path}.count`,
        'cutting.count',
        `How many of ${each.name}?`,
        String(each.count),
        `whole numbers from ${least}`,
      );
  };
  parts.forEach((part, i) => {
    sizes(`parts.${i}`, part, 1);
  });
  stock.forEach((sheet, i) => {
    sizes(`stock.${i}`, sheet, 0);
    if (sheet.price !== undefined && !(sheet.price >= 0 && sheet.price <= 1e9))
      say(
        `stock.${i}.price`,
        'cutting.price',
        `The price of ${sheet.name} cannot be used.`,
        String(sheet.price),
        '0 to 1e9',
      );
    if (sheet.trim_m !== undefined && !(sheet.trim_m >= 0 && sheet.trim_m <= 0.1))
      say(
        `stock.${i}.trim_m`,
        'cutting.trim',
        `The trim of ${sheet.name} cannot be used.`,
        `${sheet.trim_m} m`,
        '0 to 0.1 m',
      );
  });
  if (parts.length === 0) say('parts', 'cutting.no-parts', 'There is nothing to cut.');
  if (stock.length === 0) say('stock', 'cutting.no-stock', 'There is no sheet to cut from.');
  const total = parts.reduce((sum, part) => sum + (part.count ?? 1), 0);
  if (problems.length === 0 && total > MOST_PARTS)
    say('parts', 'cutting.too-many', 'More parts than one plan takes.', String(total), `up to ${MOST_PARTS}`);
  return problems;
}
