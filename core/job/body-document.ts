/**
 * How the body of a piece is built and cut, as typed: quantities are texts with their unit, an empty text means "as the shop
 * does it". `readBody` (read-body.ts) turns it into SI.
 */
import { z } from 'zod';

const length = (what: string, example: string) =>
  z.string().max(40).default('').describe(`${what}, for example "${example}". Empty: as the shop does it.`);

export const GRAINS = ['as the board', 'along the length', 'none'] as const;
const grain = (what: string) =>
  z
    .enum(GRAINS)
    .default('as the board')
    .describe(`Must the grain of ${what} run along their length? "none": they may be turned on the sheet`);

export const SheetDocument = z.strictObject({
  name: z.string().max(80).default(''),
  length: length('Length, along the grain', '96 in'),
  width: length('Width', '48 in'),
  thickness: length('Thickness; empty: that of the board', '3/4 in'),
  price: z
    .string()
    .max(40)
    .default('')
    .describe('Price of one in the currency of the shop, for example "62.50". Empty: not given.'),
  count: z
    .string()
    .max(10)
    .default('')
    .describe('How many there are, for example "2". Empty: as many as are needed.'),
});

export const BodyDocument = z
  .strictObject({
    stripWidth: length('Width of the build-up strips', '3 in'),
    oversize: length('Added to each side of the field, trimmed flush after gluing', '3/16 in'),
    longest: length('Longest part made in one length', '94 in'),
    density: z
      .string()
      .max(40)
      .default('')
      .describe('Density of the board, for example "740 kg/m3". Empty: the usual one of the board.'),
    screw: length('Screws driven into the body from below', '1 1/4 in'),
    grain: z
      .strictObject({
        field: grain('the field'),
        strips: grain('the strips'),
        rims: grain('the rims of cut-outs'),
        splashes: grain('the splashes'),
      })
      .prefault({}),
    overhangs: z
      .array(
        z.strictObject({
          edge: z.string().min(1).max(40).describe('Name of the edge'),
          overhang: length('How far it reaches beyond what carries it', '10 in'),
        }),
      )
      .max(200)
      .default([]),
    accessible: z
      .strictObject({
        topHeight: length('Floor to the higher of rim and top', '34 in'),
        kneeWidth: length('Free width under it', '30 in'),
      })
      .nullable()
      .default(null)
      .describe('Only where knee clearance and height are to be checked'),
    sheets: z
      .array(SheetDocument)
      .max(20)
      .nullable()
      .default(null)
      .describe('Sheets to cut from, of this job alone; null: those of the shop'),
    useOffcuts: z.boolean().default(true).describe('Cut from the offcuts on the shelf first'),
    kerf: length('Width of the saw cut', '1/8 in'),
    trim: length('Taken off each side of a bought sheet', '1/4 in'),
    keepLength: length('Shortest offcut that is kept', '24 in'),
    keepWidth: length('Narrowest offcut that is kept', '4 in'),
  })
  .describe('Body of the piece: how it is built up and what it is cut from');

export type BodyDocument = z.infer<typeof BodyDocument>;
export type SheetDocument = z.infer<typeof SheetDocument>;
