/** The brief of a look in SI. */
import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import { readLength_m, readPercent } from '#core/quantity/read.ts';
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

/**
 * What should be seen of each colour, by key: the brief's own shares, or where it has none those of the coat. Empty texts are 0; parts of any sum are
 * fine, `composeLook` takes them as parts of it. Paths relative to the look (`brief.shares.1.share`). Never throws.
 */
export function wantedShares(
  brief: Pick<LookBriefDocument, 'shares'>,
  coat: readonly { readonly key: string; readonly share: string }[],
): Result<ReadonlyMap<string, number>> {
  const own = brief.shares.length > 0;
  const asked = own ? brief.shares.map(({ colour, share }) => ({ key: colour, share })) : coat;
  const shares = new Map<string, number>();
  const problems: Problem[] = [];
  asked.forEach(({ key, share }, at) => {
    const path = own ? `brief.shares.${at}.share` : `colours.${at}.share`;
    const read: Result<number> =
      share.trim() === '' ? good(0) : readPercent(share, { path, what: 'share', min: 0, max: 1 });
    if (read.ok) shares.set(key, (shares.get(key) ?? 0) + read.value);
    else problems.push(...read.problems);
  });
  // A single colour needs no share: it is all there is.
  if (asked.length === 1 && problems.length === 0) shares.set(asked[0]!.key, 1);
  return problems.length > 0 ? bad(...problems) : good(shares);
}
