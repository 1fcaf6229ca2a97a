/**
 * The look of a colour coat as a job file holds it: an ordered list of what the maker does, and how it lies on the pieces.
 * Places, volumes and sizes of moves are drawn with a finger or made by the composer, not typed, so they are numbers in SI
 * with the unit in their name; what a maker types (block size, sizes of further pieces) is text with its unit, as all over the
 * job. x runs to the right along the front edge, y to the back, as in the drawing of the piece; headings counter-clockwise
 * from x. Colours are named by their key (`colourKey` of colour-key.ts). `readLook` (read-look.ts) makes it ready to paint.
 */
import { z } from 'zod';

/** The version this program writes. A file with another is refused with what is allowed. */
export const LOOK_VERSION = 1;

/** Figures a look may hold, SI. Wider than any counter, so that a slip of the hand is refused and no more. */
export const LOOK_LIMITS = {
  place_m: 20,
  volume_m3: 0.05,
  size_m: 2,
  turn_rad: 60,
  moves: 400,
  places: 60,
} as const;

const size = (what: string, least: number, most: number) => z.number().min(least).max(most).describe(what);
const coordinate = z.number().min(-LOOK_LIMITS.place_m).max(LOOK_LIMITS.place_m);
const place = z.tuple([coordinate, coordinate]).describe('x and y in metres');
const heading = size(
  'Heading, radians counter-clockwise from x',
  -LOOK_LIMITS.turn_rad,
  LOOK_LIMITS.turn_rad,
);
const id = z.string().min(1).max(60);
const colour = z.string().min(1).max(60).describe('Key of a colour of the coat');
const hex = z.string().regex(/^#[0-9a-fA-F]{6}$/, 'a colour as #8a8a86');

const step = {
  id,
  kept: z.boolean().default(true).describe('false: it stays in the list and is not done'),
  name: z.string().max(80).default(''),
};

export const PuddleMove = z.strictObject({
  kind: z.literal('puddle'),
  ...step,
  colour,
  volume_m3: size('What of the colour is poured here and stays in the film, m3', 1e-9, LOOK_LIMITS.volume_m3),
  path: z
    .array(place)
    .min(1)
    .max(LOOK_LIMITS.places)
    .describe('One place: a round puddle. More: a ribbon poured along them'),
});

const StrokeMove = z.strictObject({
  kind: z.literal('stroke'),
  ...step,
  path: z
    .array(place)
    .min(2)
    .max(LOOK_LIMITS.places)
    .describe('Where the tool is set down, pulled and lifted'),
  width_m: size('Width of the tool, m', 0.001, 0.5),
  depth: size('Share of the way of the tool that the film under it goes along', 0, 1),
});

const CombMove = z.strictObject({
  kind: z.literal('comb'),
  ...step,
  through: place,
  heading_rad: heading,
  pull_m: size('How far the film at a tooth goes along, m; negative: the other way', -2, 2),
  width_m: size('Width of a tooth, m', 0, 0.1),
  teeth: z.number().int().min(1).max(100).describe('1: a stick'),
  pitch_m: size('From tooth to tooth, m', 0.002, 1),
});

const SwirlMove = z.strictObject({
  kind: z.literal('swirl'),
  ...step,
  centre: place,
  turn_rad: heading.describe('Turn of the middle, radians'),
  reach_m: size('The turn falls to 37 % here, m', 0.001, LOOK_LIMITS.size_m),
});

const WaverMove = z.strictObject({
  kind: z.literal('waver'),
  ...step,
  amplitude_m: size('How far the film wanders, m', 0, 0.5),
  wavelength_m: size('From wave to wave, m', 0.005, 5),
  seed: z.number().int().min(0).max(4_294_967_295),
});

const TiltMove = z.strictObject({
  kind: z.literal('tilt'),
  ...step,
  centre: place,
  heading_rad: heading,
  draw: size('Lengths along the heading grow by this factor, lengths across shrink by it', 0.2, 5),
});

const FoggedEdgeMove = z.strictObject({
  kind: z.literal('fogged edge'),
  ...step,
  colour: hex.describe('Sprayed colour, picked by eye'),
  edges: z
    .array(z.string().min(1).max(40))
    .max(200)
    .default([])
    .describe('Names of edges; none: every finished edge'),
  reach_m: size('From the edge inwards until nothing is left of it, m', 0.001, 1),
  strength: size('Share of the surface covered right at the edge', 0, 1),
});

const ClearBufferMove = z.strictObject({
  kind: z.literal('clear buffer'),
  ...step,
  film_m: size('Clear resin spread over everything, m', 0.00005, 0.003),
});

export const LookMoveDocument = z.discriminatedUnion('kind', [
  PuddleMove,
  StrokeMove,
  CombMove,
  SwirlMove,
  WaverMove,
  TiltMove,
  FoggedEdgeMove,
  ClearBufferMove,
]);

export const SYMMETRIES = ['none', 'left and right', 'front and back', 'half turn'] as const;
export const FACES = ['continued', 'one colour'] as const;
export const MELDS = ['crisp', 'soft', 'melded'] as const;
export const DIRECTIONS = ['none', 'along', 'across', 'rising', 'falling'] as const;
export const EDGE_PLACES = ['none', 'front', 'back', 'left', 'right', 'all round'] as const;

export const LookBriefDocument = z
  .strictObject({
    blockSize: z
      .string()
      .max(40)
      .default('')
      .describe(
        'Usual size of a patch of one colour, for example "5 in". Empty: a fifth of the depth of the piece',
      ),
    meld: z.enum(MELDS).default('soft').describe('How sharp the colours part'),
    direction: z.enum(DIRECTIONS).default('none').describe('Which way the pattern runs, seen from the front'),
    edge: z.enum(EDGE_PLACES).default('none').describe('Where the edge colour gathers'),
    edgeColour: z.string().max(60).default('').describe('Key of the colour that gathers at the edge'),
    restless: z.number().min(0).max(1).default(0.3).describe('0: calm, 1: restless'),
    shares: z
      .array(
        z.strictObject({
          colour,
          share: z.string().max(40).default('').describe('Part of what is seen, for example "25 %"'),
        }),
      )
      .max(40)
      .default([])
      .describe('What should be seen of each colour; none: the shares of the coat'),
  })
  .describe('In a few words what the look should be; the composer makes a look from it');

export const LookDocument = z
  .strictObject({
    version: z.literal(LOOK_VERSION),
    seed: z.number().int().min(0).max(4_294_967_295).default(1).describe('Same brief and seed: same look'),
    brief: LookBriefDocument.prefault({}),
    undercoat: hex.default('#d8d4cc').describe('Colour under the film, picked by eye'),
    ground: z
      .string()
      .max(60)
      .default('')
      .describe('Key of the colour poured all over first. Empty: the first colour of the coat'),
    moves: z.array(LookMoveDocument).max(LOOK_LIMITS.moves).default([]),
    locked: z
      .array(
        z.strictObject({
          id,
          name: z.string().max(80).default(''),
          corners: z.array(place).min(3).max(LOOK_LIMITS.places),
        }),
      )
      .max(50)
      .default([])
      .describe('Areas whose moves stay as they are when the look is composed anew'),
    symmetry: z.enum(SYMMETRIES).default('none').describe('Each move is done again on the other side'),
    faces: z.enum(FACES).default('continued').describe('What the faces of the edges show'),
    beside: z
      .array(
        z.strictObject({
          id,
          name: z.string().max(80).default(''),
          length: z.string().max(40).default('').describe('Along its own front, for example "48 in"'),
          width: z.string().max(40).default('').describe('Front to back, for example "22 in"'),
          at: place.describe('Where its front left corner lies in the look, m'),
          turn_rad: heading.default(0),
        }),
      )
      .max(20)
      .default([])
      .describe('Further pieces the look goes on over'),
    approved: z
      .strictObject({
        hash: z.string().max(40),
        sample: z.string().max(200).default('').describe('Which sample panel it was agreed by'),
      })
      .nullable()
      .default(null)
      .describe('What was signed: the hash of the look as it was then'),
  })
  .describe('The look of a coat: what is poured where and what is done to it');

export type LookDocument = z.infer<typeof LookDocument>;
export type LookDocumentInput = z.input<typeof LookDocument>;
export type LookMoveDocument = z.infer<typeof LookMoveDocument>;
export type PuddleMove = z.infer<typeof PuddleMove>;
export type LookBriefDocument = z.infer<typeof LookBriefDocument>;

/** A look with nothing poured but the ground. */
export function emptyLook(seed = 1): LookDocument {
  return LookDocument.parse({ version: LOOK_VERSION, seed });
}
