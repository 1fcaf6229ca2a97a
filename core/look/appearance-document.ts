/**
 * What is known of how a colourant looks, as typed and picked from a photograph. Quantities are texts with their unit; light
 * is a colour as a screen shows it (#rrggbb), read from the photograph. `readColourant` (colourant.ts) turns it into SI.
 */
import { z } from 'zod';

const text = (what: string, example: string) =>
  z.string().max(40).default('').describe(`${what}, for example "${example}". Empty: not given.`);
const hex = (what: string, usual: string) =>
  z
    .string()
    .regex(/^#[0-9a-fA-F]{6}$/, 'a colour as #8a8a86')
    .default(usual)
    .describe(what);

/** How well a millimetre of the mix hides what is under it, in words a maker can answer. */
export const HIDINGS = ['fully', 'well', 'half', 'hardly'] as const;

export const DrawdownDocument = z
  .strictObject({
    film: text('Film on the card', '0.2 mm'),
    load: text('Colourant by weight of mixed resin in that film', '3 %'),
    black: hex('Bare black of the card in the photograph', '#101010'),
    white: hex('Bare white of the card in the photograph', '#eaeaea'),
    overBlack: hex('Film over black', '#000000'),
    overWhite: hex('Film over white', '#808080'),
    whiteReflectance: text('What the white of the card is known to give back', '82 %'),
  })
  .describe('One film over the black and the white of a card, in one photograph without a reflection in it');

export const FlakeDocument = z
  .strictObject({
    gleam: hex('Colour at the gleam, picked where the sample shines', '#e8d9a8'),
    size: text('Size of a flake', '40 um'),
    lie: z
      .enum(['flat', 'usual', 'tumbled'])
      .default('usual')
      .describe('How the flakes lie in the cured film: flat shows a narrow gleam'),
  })
  .describe('Only of mica and metallic powders');

export const AppearanceDocument = z
  .strictObject({
    body: z
      .enum(['as the colourant', 'clear dye', 'paste', 'flake'])
      .default('as the colourant')
      .describe('Does it only absorb (dye), also scatter (paste), or also gleam (mica, metallic)?'),
    hides: z
      .enum(HIDINGS)
      .default('well')
      .describe('How well 1 mm of this mix hides; not used where a drawdown is given'),
    drawdown: DrawdownDocument.nullable().default(null),
    flake: FlakeDocument.nullable().default(null),
  })
  .describe('How the colour looks, measured or judged by eye');

export type AppearanceDocument = z.infer<typeof AppearanceDocument>;
export type DrawdownDocument = z.infer<typeof DrawdownDocument>;
export type FlakeDocument = z.infer<typeof FlakeDocument>;
