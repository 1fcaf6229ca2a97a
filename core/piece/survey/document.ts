/**
 * What was measured at the customer's wall, as typed: quantities are texts with their unit, an empty text means "not measured
 * yet". Corners are A, B, C ... in order round the piece. `readSurvey` turns it into metres.
 */
import { z } from 'zod';
import { MOST_CORNERS } from './survey.ts';
import { TAPE_CLASSES } from './tape.ts';

const length = (what: string, example: string) =>
  z.string().max(40).default('').describe(`${what}, for example "${example}". Empty: not measured yet.`);
const corner = z
  .string()
  .regex(/^[A-Z]$/, 'a corner as A')
  .describe('Letter of a corner');

const DistanceDocument = z.strictObject({
  kind: z.literal('distance'),
  from: corner,
  to: corner,
  length: length('Straight from corner to corner: a side or a diagonal', '48 1/4 in'),
});

const OffsetDocument = z.strictObject({
  kind: z.literal('offset'),
  from: corner,
  to: corner,
  corner: corner.describe('The corner that was measured from the straightedge'),
  along: length('From the first corner along the straightedge', '20 in'),
  offset: length('From the straightedge to the corner, square to it', '3/8 in'),
  side: z.enum(['left', 'right']).default('left').describe('Seen going from the first corner to the second'),
});

const BowDocument = z.strictObject({
  kind: z.literal('bow'),
  from: corner,
  to: corner,
  along: length('From the first corner along the wall', '24 in'),
  gap: length('Between the straightedge and the wall', '3/16 in'),
  wall: z.enum(['hollow', 'bulging']).default('hollow'),
});

export const SurveyReadingDocument = z.discriminatedUnion('kind', [
  DistanceDocument,
  OffsetDocument,
  BowDocument,
]);

export const SurveyDocument = z
  .strictObject({
    order: z
      .enum(['counter-clockwise', 'clockwise'])
      .default('counter-clockwise')
      .describe('The way round the corners are named, seen from above'),
    corners: z
      .array(z.strictObject({ turn: z.enum(['out', 'in']).default('out') }))
      .max(MOST_CORNERS)
      .default(() => Array.from({ length: 4 }, () => ({ turn: 'out' as const })))
      .describe('A, B, C ... in order; "in" where the piece wraps round a wall corner'),
    tape: z
      .strictObject({
        tapeClass: z.enum(TAPE_CLASSES).default('II').describe('Printed on the tape in Roman numerals'),
        fromHook: z.boolean().default(true),
        readTo: z.string().max(40).default('1/16 in').describe('Smallest step read on the tape'),
      })
      .prefault({}),
    readings: z.array(SurveyReadingDocument).max(300).default([]),
  })
  .describe('Tape readings of an outline. Quantities are texts with their unit.');

export type SurveyDocument = z.infer<typeof SurveyDocument>;
export type SurveyDocumentInput = z.input<typeof SurveyDocument>;
export type SurveyReadingDocument = z.infer<typeof SurveyReadingDocument>;

/** Four corners with empty rows for the four sides and both diagonals: what a new survey starts from. */
export function emptySurvey(): SurveyDocument {
  const pairs = ['AB', 'BC', 'CD', 'DA', 'AC', 'BD'];
  return SurveyDocument.parse({
    readings: pairs.map((pair) => ({ kind: 'distance', from: pair[0], to: pair[1] })),
  });
}
