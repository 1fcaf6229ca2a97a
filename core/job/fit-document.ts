/**
 * What was measured at the customer's walls and on the way in, as typed: quantities are texts with their unit, an empty text means
 * "not measured", or for what the shop decides "as the shop does it". `readFit` (read-fit.ts) turns it into SI.
 */
import { z } from 'zod';

const length = (what: string, example: string) =>
  z.string().max(40).default('').describe(`${what}, for example "${example}". Empty: not measured.`);
const usual = (what: string, example: string) =>
  z.string().max(40).default('').describe(`${what}, for example "${example}". Empty: as the shop does it.`);

export const WALL_ENDS = ['both', 'left', 'right', 'neither'] as const;
export const WALL_JOINTS = ['as the wall asks', 'caulk', 'scribe'] as const;

const AlcoveWidth = z
  .strictObject({
    width: length('Between the side walls', '48 1/8 in'),
    at: length('Measured this far from the back wall', '12 in'),
  })
  .prefault({});

export const FitDocument = z
  .strictObject({
    ends: z
      .enum(WALL_ENDS)
      .default('both')
      .describe('The ends that stand at a wall, seen from the front; both: an alcove'),
    joint: z.enum(WALL_JOINTS).default('as the wall asks').describe('How the joint at a wall is closed'),
    clearance: usual('Joint left at a wall', '1/8 in'),
    widestCaulk: usual('Widest joint that is caulked', '1/4 in'),
    scribeSpare: usual('Left beyond the deepest gap where the piece is scribed', '1/4 in'),
    backGap: length('Largest gap under a straightedge along the back wall', '3/16 in'),
    depth: length('Back wall to the front of the cabinet', '21 in'),
    length: length('Length of the cabinet, where an end is open', '60 in'),
    overhang: usual('Past the front of the cabinet', '1 in'),
    endOverhang: usual('Past the cabinet at an open end', '1 in'),
    alcove: z
      .strictObject({
        back: AlcoveWidth,
        middle: AlcoveWidth,
        front: AlcoveWidth,
        reach: length('How far the side walls come out from the back wall', '30 in'),
      })
      .prefault({}),
    door: z
      .strictObject({ width: length('Clear width', '29 1/2 in'), height: length('Clear height', '79 in') })
      .prefault({}),
    passage: z
      .strictObject({
        before: length('Width before the corner', '36 in'),
        after: length('Width after the corner', '36 in'),
        height: length('Ceiling', '96 in'),
      })
      .prefault({}),
    stair: z
      .strictObject({
        flight: length('Width of the flight', '36 in'),
        landing: length('Depth of the landing', '36 in'),
        height: length('Least headroom', '80 in'),
      })
      .prefault({}),
    lift: z
      .strictObject({
        width: length('Width inside', '43 in'),
        depth: length('Depth inside', '55 in'),
        height: length('Height inside', '86 in'),
      })
      .prefault({}),
    liftEach: usual('What one person is asked to carry', '55 lb'),
  })
  .describe('From the walls to the piece, and the way in');

export type FitDocument = z.infer<typeof FitDocument>;

/** Nothing measured at the walls yet. */
export function emptyFit(): FitDocument {
  return FitDocument.parse({});
}
