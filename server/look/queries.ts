/** What may be asked of the routes of a look. */
import { z } from 'zod';
import { SheetQuery } from '../set-out/queries.ts';

const Coat = z
  .string()
  .min(1)
  .max(60)
  .optional()
  .describe('Id of the coat. Left out: the first coat that has a look, else the first colour coat');

export const LookSheetQuery = SheetQuery.extend({ coat: Coat });

export const PICTURE_SIZE = { least: 64, most: 4000, usual: 1600 } as const;

export const PictureQuery = z.strictObject({
  coat: Coat,
  width: z.coerce
    .number({ error: 'the width is a whole number of pixels' })
    .int('the width is a whole number of pixels')
    .min(PICTURE_SIZE.least, `the width is ${PICTURE_SIZE.least} to ${PICTURE_SIZE.most} pixels`)
    .max(PICTURE_SIZE.most, `the width is ${PICTURE_SIZE.least} to ${PICTURE_SIZE.most} pixels`)
    .optional()
    .describe(`Pixels from left to right; left out ${PICTURE_SIZE.usual}`),
  show: z
    .enum(['top', 'unfolded'], { error: 'the picture shows top or unfolded' })
    .optional()
    .describe('The top alone, or with its faces folded out (left out: unfolded)'),
});

export const PngFile = z.string().meta({ contentMediaType: 'image/png' });
