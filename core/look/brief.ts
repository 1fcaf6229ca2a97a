/** The brief of a look in SI. */
import { bad, good, type Result } from '#core/quantity/problem.ts';
import { readLength_m } from '#core/quantity/read.ts';
import type { System } from '#core/quantity/units.ts';
import type { DIRECTIONS, EDGE_PLACES, LookBriefDocument, MELDS } from './look-document.ts';

export interface LookBrief {
  /** Usual size across of a patch of one colour. */
  readonly blockSize_m: number;
  readonly meld: (typeof MELDS)[number];
  readonly direction: (typeof DIRECTIONS)[number];
  readonly edge: (typeof EDGE_PLACES)[number];
  /** Key of a colour, '' for none. */
  readonly edgeColour: string;
  /** 0 calm to 1 restless. */
  readonly restless: number;
}

/** Smallest patch a cup can pour, and the largest any counter has room for. */
const BLOCK = { least_m: 0.02, most_m: 1 } as const;

/** Block size when nothing is typed: a fifth of the depth of the piece (shop default, no source), within what is allowed. */
export function usualBlock_m(depth_m: number): number {
  return Math.min(BLOCK.most_m, Math.max(BLOCK.least_m, depth_m / 5));
}

/** Reads a brief for work of this depth (m); paths relative to the look (`brief.blockSize`). Never throws on a depth above 0. */
export function readBrief(
  document: LookBriefDocument,
  depth_m: number,
  keys: readonly string[],
  system?: System,
): Result<LookBrief> {
  const { blockSize, meld, direction, edge, edgeColour, restless } = document;
  const size: Result<number> =
    blockSize.trim() === ''
      ? good(usualBlock_m(depth_m))
      : readLength_m(blockSize, {
          path: 'brief.blockSize',
          what: 'size of a patch',
          min: BLOCK.least_m,
          max: BLOCK.most_m,
          system,
        });
  if (!size.ok) return size;
  if (edge !== 'none' && !keys.includes(edgeColour))
    return bad({
      path: 'brief.edgeColour',
      code: 'look.colour',
      message: 'Say which colour of the coat gathers at the edge.',
      read: edgeColour === '' ? 'nothing' : edgeColour,
      allowed: keys.join(', ') || 'no colour: the coat has none yet',
    });
  return good({ blockSize_m: size.value, meld, direction, edge, edgeColour, restless }, size.warnings);
}
