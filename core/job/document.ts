/**
 * The job document: what a job file holds, what the store keeps, what the forms edit. Quantities are the text a person
 * typed, with its unit ("25 1/2 in", "648 mm", "75 F"); an empty text means "not given yet". This file says the shape only;
 * `readJob` (read-job.ts) turns the texts into SI and answers with the field, what was read and what is allowed.
 */
import { z } from 'zod';
import { AppearanceDocument } from '#core/look/appearance-document.ts';
import { LookDocument } from '#core/look/look-document.ts';
import { BOARD_NAMES } from '#core/piece/body/board-names.ts';
import { COUNTED_EDGES } from '#core/piece/piece.ts';
import { SurveyDocument } from '#core/piece/survey/document.ts';
import { BodyDocument } from './body-document.ts';
import { FitDocument } from './fit-document.ts';

export const JOB_FORMAT = 'pourwright job 1';

const text = (what: string, example: string, max = 200) =>
  z.string().max(max).default('').describe(`${what}, for example "${example}". Empty: not given yet.`);
const length = (what: string, example = '25 1/2 in') => text(what, example, 40);
const prose = (what: string) => z.string().max(4000).default('').describe(what);

/** The words that tell outlines apart. */
export const OUTLINE_SHAPES = ['rectangle', 'ell', 'round', 'ellipse', 'polygon'] as const;

const CornerDocument = z.strictObject({
  x: length('From the left', '0 in'),
  y: length('From the front', '0 in'),
  radius: length('Radius of this corner', '1/2 in'),
  bow: length(
    'Rise of the side to the next corner over the straight line between them, outwards; negative for inwards; empty for a straight side',
    '1 1/2 in',
  ),
});

const OutlineDocument = z
  .discriminatedUnion('shape', [
    z.strictObject({
      shape: z.literal('rectangle'),
      length: length('Length along the front', '48 in'),
      width: length('Depth, front to back', '22 in'),
      cornerRadius: length('Radius of the corners', '1/2 in'),
    }),
    z.strictObject({
      shape: z.literal('ell'),
      side: z
        .enum(['left', 'right'])
        .default('right')
        .describe('The side the return stands on, seen from the front'),
      length: length('Length along the back of the main leg', '96 in'),
      width: length('Depth of the main leg', '25 1/2 in'),
      returnLength: length('How far the return reaches out, measured from the back', '72 in'),
      returnWidth: length('Depth of the return', '25 1/2 in'),
      cornerRadius: length('Radius of the outer corners', '1/2 in'),
      insideRadius: length('Radius of the inner corner', '1 in'),
    }),
    z.strictObject({ shape: z.literal('round'), diameter: length('Diameter', '42 in') }),
    z.strictObject({
      shape: z.literal('ellipse'),
      length: length('Long axis', '60 in'),
      width: length('Short axis', '36 in'),
    }),
    z.strictObject({
      shape: z.literal('polygon'),
      corners: z.array(CornerDocument).max(200),
    }),
  ])
  .describe('Seen from above, the front edge toward the maker');

const EdgeDocument = z.strictObject({
  edge: z
    .string()
    .min(1)
    .max(40)
    .describe('Name of the edge: front, right, back, left, rim, return front ...'),
  kind: z.enum(['finished', 'wall', 'seam']).default('finished'),
  faceHeight: length('Height of the face (the reveal)', '1 1/2 in'),
  profile: z
    .enum(['square eased', 'round-over', 'bullnose', 'bevel', 'chiselled'])
    .default('square eased')
    .describe('Shape of the arris and face'),
  profileSize: text(
    'Radius, leg of the bevel, or for chiselled the development factor 1.3 to 1.6',
    '1/8 in',
    40,
  ),
  undersideReturn: length('How far the film is carried round underneath', '3/4 in'),
  countsAs: z
    .enum(['', ...COUNTED_EDGES])
    .optional()
    .describe(
      'Which edge of a counter it is when the wood beside a cut-out is judged; left out: the side it looks to, or its name',
    ),
});

const CutOutDocument = z.strictObject({
  name: z.string().max(80).default(''),
  shape: z
    .enum(['rectangle', 'oval', 'round', 'template'])
    .default('round')
    .describe('template: the corners of a full-size template; its length, width and cornerRadius stay empty'),
  length: length('Length, or diameter of a round one', '1 3/4 in'),
  width: length('Width (rectangle and oval)', '14 in'),
  cornerRadius: length('Radius in the corners of a rectangle', '1 in'),
  fromLeft: length('Centre from the left', '24 in'),
  fromFront: length('Centre from the front', '10 in'),
  turned: z
    .string()
    .max(40)
    .optional()
    .describe(
      'How far it is turned about its centre, counter-clockwise, for example "30 degrees"; left out: not turned',
    ),
  rim: z.enum(['wrapped', 'dammed']).default('dammed').describe('Is the film carried down into the hole?'),
  corners: z
    .array(CornerDocument)
    .max(200)
    .optional()
    .describe('Of a template only: x and y from its centre, the middle of the box round it'),
});

const SplashDocument = z.strictObject({
  side: z.enum(['back', 'left', 'right']).default('back').describe('The side of the top it stands on'),
  height: length('Height above the top', '4 in'),
  thickness: length('Thickness', '3/4 in'),
});

const PieceDocument = z.strictObject({
  name: z.string().max(80).default('').describe('What the shop calls it; empty: told by its shape'),
  outline: OutlineDocument.nullable().default(null),
  bodyThickness: length('Thickness of the body at the edge', '1 1/2 in'),
  board: z.enum(BOARD_NAMES).default('MDF'),
  boardThickness: length('Thickness of the board under the film', '3/4 in'),
  edges: z.array(EdgeDocument).max(200).default([]),
  cutOuts: z.array(CutOutDocument).max(50).default([]),
  splashes: z
    .array(SplashDocument)
    .max(3)
    .default([])
    .describe('Backsplash and side splashes: boards of their own, poured flat beside the top'),
  survey: SurveyDocument.nullable()
    .default(null)
    .describe('What was measured at the wall; null: nothing yet'),
  body: BodyDocument.prefault({}),
  fit: FitDocument.nullable()
    .default(null)
    .describe('What was measured at the walls and on the way in; null: nothing yet'),
});

/** What `piece` answers to where pieces are told by their id; a further piece has an id of its own. */
export const FIRST_PIECE_ID = 'piece';

const OtherPieceDocument = PieceDocument.extend({
  id: z.string().min(1).max(60).describe(`Of its own within the job, and not "${FIRST_PIECE_ID}"`),
});

const ReadingDocument = z.strictObject({
  at: text('Hours from the first pour', '6 h', 40),
  air: text('Air temperature', '66 F', 40),
});

const RoomDocument = z.strictObject({
  air: text('Air temperature in the shop', '75 F', 40),
  humidity: text('Relative humidity', '50 %', 40),
  board: text('Temperature of the board', '74 F', 40),
  readings: z
    .array(ReadingDocument)
    .max(500)
    .default([])
    .describe(
      'Readings or a forecast of the air temperature from the first pour on; none: it stays as it is',
    ),
});

const ColourDocument = z.strictObject({
  name: z.string().max(80).default(''),
  swatch: z
    .string()
    .regex(/^#[0-9a-fA-F]{6}$/, 'a colour as #8a8a86')
    .default('#8a8a86')
    .describe('For drawings and cup labels, picked by eye'),
  share: text('Share of the coat', '55 %', 40),
  colourant: z
    .enum(['none', 'pigment paste', 'mica powder', 'dry pigment', 'liquid dye', 'alcohol ink'])
    .default('none'),
  load: text('Colourant by weight of mixed resin', '3 %', 40),
  key: z
    .string()
    .max(60)
    .default('')
    .describe('What the look calls this colour by. Empty: its place in the list, from 1'),
  appearance: AppearanceDocument.nullable().default(null).describe('null: the picked colour is all there is'),
});

const CoatDocument = z.strictObject({
  id: z.string().min(1).max(60),
  name: z.string().max(80).default(''),
  kind: z.enum(['seal coat', 'colour coat', 'clear buffer', 'flood coat']).default('colour coat'),
  resin: z
    .string()
    .max(80)
    .default('')
    .describe('Id of a resin card: quick-20 or regular-50, or one of the shop'),
  film: text('Film on the top', '4 fl oz/sq ft', 40),
  faceFilm: text('Film put on the faces', '0.5 mm', 40),
  edges: z.enum(['wrapped', 'dammed']).default('wrapped'),
  colours: z.array(ColourDocument).max(40).default([]),
  look: LookDocument.nullable().default(null).describe('What is poured where; null: not designed yet'),
  allowance: text('Spare', '10 %', 40),
  resinTemperature: text('Temperature of parts A and B when they meet', '75 F', 40),
  startsAt: z
    .string()
    .regex(/^(\d{4}-\d{2}-\d{2}T\d{2}:\d{2})?$/, 'a day and time as 2026-05-14T09:00, or nothing')
    .default('')
    .describe('Local date and time the first cup is mixed, as 2026-05-14T09:00'),
  crew: z.number().int().min(1).max(3).default(1),
  largestCup: text('Largest cup the maker wants to handle (mass)', '900 g', 40),
  pieces: z
    .array(z.string().min(1).max(60))
    .max(13)
    .default([])
    .describe(`Ids of the pieces it is poured on, "${FIRST_PIECE_ID}" for the first; none: all of them`),
});

export const STAGES = ['enquiry', 'agreed', 'building', 'pouring', 'curing', 'ready', 'handed over'] as const;

export const JobDocument = z
  .strictObject({
    format: z.literal(JOB_FORMAT),
    title: z.string().max(200).default(''),
    customer: z
      .strictObject({
        name: z.string().max(200).default(''),
        email: z.string().max(200).default(''),
        phone: z.string().max(60).default(''),
        address: prose('Where the piece goes'),
      })
      .prefault({}),
    agreed: z
      .strictObject({
        stage: z.enum(STAGES).default('enquiry'),
        look: prose('The look in words'),
        handOver: z
          .string()
          .regex(/^(\d{4}-\d{2}-\d{2})?$/, 'a day as 2026-05-30, or nothing')
          .default('')
          .describe('Promised day, as 2026-05-30'),
        price: text('Agreed price with its currency', '1,850.00 USD', 40),
        notes: prose('Anything else agreed'),
      })
      .prefault({}),
    piece: PieceDocument.prefault({}),
    otherPieces: z
      .array(OtherPieceDocument)
      .max(12)
      .default([])
      .describe('Further pieces of the same job: a shelf, a side table, the other half of a counter'),
    room: RoomDocument.prefault({}),
    coats: z.array(CoatDocument).max(12).default([]),
    record: prose('What happened, in your own words'),
  })
  .describe('A Pourwright job. Quantities are texts with their unit.');

export type JobDocument = z.infer<typeof JobDocument>;
export type JobDocumentInput = z.input<typeof JobDocument>;
export type PieceDocument = z.infer<typeof PieceDocument>;
export type OtherPieceDocument = z.infer<typeof OtherPieceDocument>;
export type OutlineDocument = z.infer<typeof OutlineDocument>;
export type CornerDocument = z.infer<typeof CornerDocument>;
export type EdgeDocument = z.infer<typeof EdgeDocument>;
export type SplashDocument = z.infer<typeof SplashDocument>;
export type CutOutDocument = z.infer<typeof CutOutDocument>;
export type RoomDocument = z.infer<typeof RoomDocument>;
export type ColourDocument = z.infer<typeof ColourDocument>;
export type CoatDocument = z.infer<typeof CoatDocument>;

/** A piece of which nothing is typed yet. */
export function emptyPiece(): PieceDocument {
  return PieceDocument.parse({});
}

/** An empty job: what a new one starts from. */
export function emptyJob(title = ''): JobDocument {
  return JobDocument.parse({ format: JOB_FORMAT, title });
}
