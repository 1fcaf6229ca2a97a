/**
 * How this shop builds and cuts bodies, unless a job says otherwise: figures in SI, sheets as typed. Every default is common
 * practice, no source, and the shop's to change.
 */
import { z } from 'zod';
import { BOARD_NAMES } from '#core/piece/body/board-names.ts';
import { BOARD_THICKNESS_M, LONGEST_PART_M, OVERSIZE_M, STRIP_WIDTH_M } from '#core/piece/body/body.ts';
import { SheetDocument } from './body-document.ts';
import { Notes } from './notes.ts';
import { readSheet } from './read-sheet.ts';

export interface BodyFigures {
  readonly boardThickness_m: number;
  readonly stripWidth_m: number;
  readonly oversize_m: number;
  readonly longest_m: number;
  readonly screwLength_m: number;
  readonly kerf_m: number;
  readonly trim_m: number;
  readonly keepLength_m: number;
  readonly keepWidth_m: number;
}
export type BodyFigure = keyof BodyFigures;

/** Least and most of each figure, m. */
export const BODY_LIMITS: Readonly<Record<BodyFigure, readonly [least: number, most: number]>> = {
  boardThickness_m: [0.003, 0.1],
  stripWidth_m: [0.01, 0.5],
  oversize_m: [0, 0.05],
  longest_m: [0.3, 20],
  screwLength_m: [0.005, 0.3],
  kerf_m: [0, 0.02],
  trim_m: [0, 0.1],
  keepLength_m: [0, 20],
  keepWidth_m: [0, 20],
};

export const BODY_DEFAULTS: BodyFigures = {
  boardThickness_m: BOARD_THICKNESS_M,
  stripWidth_m: STRIP_WIDTH_M,
  oversize_m: OVERSIZE_M,
  longest_m: LONGEST_PART_M,
  screwLength_m: 0.03175,
  kerf_m: 0.003175,
  trim_m: 0.006,
  keepLength_m: 0.6,
  keepWidth_m: 0.1,
};

export const ShopSheet = z.strictObject({
  ...SheetDocument.shape,
  board: z.enum(BOARD_NAMES).default('MDF'),
});
export type ShopSheet = z.infer<typeof ShopSheet>;

/** Sizes sheets are sold in (from memory). */
const USUAL_SHEETS: readonly z.input<typeof ShopSheet>[] = [
  { name: 'MDF 49 x 97', board: 'MDF', length: '97 in', width: '49 in', thickness: '3/4 in' },
  {
    name: 'moisture-resistant MDF 49 x 97',
    board: 'moisture-resistant MDF',
    ...{ length: '97 in', width: '49 in', thickness: '3/4 in' },
  },
  { name: 'plywood 48 x 96', board: 'plywood', length: '96 in', width: '48 in', thickness: '3/4 in' },
];

const figure = (key: BodyFigure) => {
  const [least, most] = BODY_LIMITS[key];
  return z
    .number()
    .min(least)
    .max(most)
    .default(BODY_DEFAULTS[key])
    .describe(`m, ${least} to ${most}; a shop default`);
};

export const ShopBody = z
  .strictObject({
    boardThickness_m: figure('boardThickness_m'),
    stripWidth_m: figure('stripWidth_m'),
    oversize_m: figure('oversize_m'),
    longest_m: figure('longest_m'),
    screwLength_m: figure('screwLength_m'),
    kerf_m: figure('kerf_m'),
    trim_m: figure('trim_m'),
    keepLength_m: figure('keepLength_m'),
    keepWidth_m: figure('keepWidth_m'),
    sheets: z
      .array(ShopSheet)
      .max(40)
      .default(() => USUAL_SHEETS.map((sheet) => ShopSheet.parse(sheet)))
      .describe('Sheets the shop buys; sizes are texts with their unit'),
  })
  .superRefine(({ sheets }, context) => {
    const notes = new Notes();
    for (const [index, sheet] of sheets.entries()) readSheet(sheet, `sheets.${index}`, notes);
    for (const problem of notes.problems)
      context.addIssue({
        code: 'custom',
        path: problem.path.split('.').map((key) => (/^\d+$/.test(key) ? Number(key) : key)),
        message: `${problem.message} Allowed: ${problem.allowed}.`,
      });
  })
  .describe('How the shop builds and cuts bodies');

export type ShopBody = z.infer<typeof ShopBody>;

export function newShopBody(): ShopBody {
  return ShopBody.parse({});
}
