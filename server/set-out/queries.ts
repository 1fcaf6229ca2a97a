/** What may be asked of the two PDF routes. */
import { z } from 'zod';

const Papers = z
  .enum(['a4', 'letter'], { error: 'the paper is a4 or letter' })
  .optional()
  .describe('Left out: letter for a shop in US units, else a4');

const Piece = (otherwise: string) =>
  z
    .string()
    .min(1)
    .max(60)
    .optional()
    .describe(`Id of a piece of the job, "piece" for the first. Left out: ${otherwise}`);

export const SheetQuery = z.strictObject({
  piece: Piece('all of them, each on pages of its own'),
  paper: Papers,
  units: z
    .enum(['us', 'metric'], { error: 'the units are us or metric' })
    .optional()
    .describe("Left out: the shop's"),
});

export const TemplateQuery = z.strictObject({ paper: Papers, piece: Piece('the first') });

/** The bytes of a file, whose own grammar is not repeated here. */
export const PdfFile = z.string().meta({ contentMediaType: 'application/pdf' });
