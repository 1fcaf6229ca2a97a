/** What may be asked of the two PDF routes. */
import { z } from 'zod';

const Papers = z
  .enum(['a4', 'letter'], { error: 'the paper is a4 or letter' })
  .optional()
  .describe('Left out: letter for a shop in US units, else a4');

export const SheetQuery = z.strictObject({
  paper: Papers,
  units: z
    .enum(['us', 'metric'], { error: 'the units are us or metric' })
    .optional()
    .describe("Left out: the shop's"),
});

export const TemplateQuery = z.strictObject({ paper: Papers });

/** The bytes of a file, whose own grammar is not repeated here. */
export const PdfFile = z.string().meta({ contentMediaType: 'application/pdf' });
