/** The moves of a composed look: each colour in parts of the size of the brief, laid out by seed, then stirred. */

import { type RandomStream, randomStream } from '#core/numeric/random.ts';
import { bad, good, type Result } from '#core/quantity/problem.ts';
import { trimmed } from '#core/quantity/rounding.ts';
import type { LookBrief } from './brief.ts';
import { anyPlace, edgePlace, type Ground, spaced } from './compose-places.ts';
import { HEADINGS, stirring } from './compose-stirring.ts';
import type { LookMoveDocument, PuddleMove } from './look-document.ts';
import type { Place } from './move.ts';

/** The most puddles a composed look has: more is a texture, and no maker pours it. */
const MOST_PUDDLES = 60;

export interface Layout {
  readonly ground: string;
  readonly whole_m3: number;
  readonly film_m: number;
  readonly seed: number;
  /** 2 where every move is done again on the other side. */
  readonly twins: number;
  readonly on: Ground;
  /** Where a place is found again on the other side. */
  readonly twin: (p: Place) => Place | null;
  readonly locked: readonly LookMoveDocument[];
}

interface Blob {
  readonly colour: string;
  readonly volume_m3: number;
  readonly atEdge: boolean;
}

/** Puddles and what is done to them, ids not yet their own. Problems: locked areas that hold too much of a colour, or leave no room. */
export function layOut(
  brief: LookBrief,
  shares: ReadonlyMap<string, number>,
  layout: Layout,
): Result<LookMoveDocument[]> {
  const stream = randomStream(layout.seed);
  const blobs: Blob[] = [];
  const blockArea_m2 = (Math.PI / 4) * brief.blockSize_m ** 2;
  const coloured = 1 - (shares.get(layout.ground) ?? 0);
  const all = (coloured * layout.whole_m3) / layout.film_m / (blockArea_m2 * layout.twins);
  const fewer = Math.max(1, all / MOST_PUDDLES);
  for (const [colour, share] of shares) {
    if (colour === layout.ground || share === 0) continue;
    const held_m3 = layout.locked.reduce(
      (sum, move) =>
        sum + (move.kind === 'puddle' && move.kept && move.colour === colour ? move.volume_m3 : 0),
      0,
    );
    const left_m3 = share * layout.whole_m3 - held_m3;
    if (left_m3 < -0.003 * layout.whole_m3)
      return bad({
        path: 'locked',
        code: 'look.locked-too-much',
        message: `The locked areas hold more of ${colour} than its share.`,
        read: `${trimmed((held_m3 / layout.whole_m3) * 100, 1)} %`,
        allowed: `up to ${trimmed(share * 100, 1)} %`,
      });
    if (left_m3 > 1e-4 * layout.whole_m3)
      blobs.push(...divided(colour, left_m3, layout, blockArea_m2 * fewer, brief, stream));
  }
  shuffle(blobs, stream);
  const there: { at: Place; radius_m: number }[] = [];
  const moves: LookMoveDocument[] = [];
  const candidates = Math.round(16 - 13 * brief.restless);
  for (const blob of blobs) {
    const radius_m = Math.sqrt(blob.volume_m3 / layout.twins / (Math.PI * layout.film_m));
    const next = () =>
      blob.atEdge && brief.edge !== 'none'
        ? edgePlace(layout.on, brief.edge, 0.6 * radius_m, stream)
        : anyPlace(layout.on, stream, 0.9 * radius_m);
    const at = spaced(there, radius_m, candidates, next);
    if (at === undefined)
      return bad({
        path: 'locked',
        code: 'look.no-room',
        message: 'There is no room left for a puddle outside the locked areas.',
        read: 'all of the work is locked',
        allowed: 'part of the top left free',
      });
    there.push({ at, radius_m });
    const other = layout.twin(at);
    if (other !== null) there.push({ at: other, radius_m });
    moves.push({
      kind: 'puddle',
      id: 'x',
      kept: true,
      name: '',
      colour: blob.colour,
      volume_m3: blob.volume_m3,
      path: drawn(at, radius_m, blob, brief, stream, layout.on),
    });
  }
  return good([...moves, ...stirring(brief, moves.length, layout.on, stream)]);
}

/** Parts of a colour, unlike in size the more restless the look. */
function divided(
  colour: string,
  volume_m3: number,
  { film_m, twins }: Layout,
  blockArea_m2: number,
  brief: LookBrief,
  stream: RandomStream,
): Blob[] {
  const count = Math.max(1, Math.round(volume_m3 / film_m / (blockArea_m2 * twins)));
  const spread = 0.15 + 0.55 * brief.restless;
  const parts = Array.from({ length: count }, () => Math.exp(spread * stream.normal()));
  const sum = parts.reduce((a, b) => a + b, 0);
  // Seven parts in ten of the edge colour lie at the edge, the rest ties it to the field (shop default, no source).
  const atEdge = brief.edge !== 'none' && brief.edgeColour === colour ? Math.ceil(0.7 * count) : 0;
  return parts.map((part, at) => ({ colour, volume_m3: (volume_m3 * part) / sum, atEdge: at < atEdge }));
}

/** Round, or a ribbon along the direction of the brief. At an edge it lies along the edge. */
function drawn(
  at: Place,
  radius_m: number,
  blob: Blob,
  brief: LookBrief,
  stream: RandomStream,
  on: Ground,
): PuddleMove['path'] {
  const alongEdge = blob.atEdge && brief.edge !== 'none' && brief.edge !== 'all round';
  if (brief.direction === 'none' && !alongEdge) return [[at[0], at[1]]];
  const straight = alongEdge
    ? brief.edge === 'left' || brief.edge === 'right'
      ? Math.PI / 2
      : 0
    : HEADINGS[brief.direction === 'none' ? 'along' : brief.direction];
  const heading = straight + (alongEdge ? 0 : 0.35 * brief.restless * stream.normal());
  const half = radius_m * (1.1 + 0.8 * stream.uniform());
  const sway = 0.3 * radius_m * stream.normal();
  const [c, s] = [Math.cos(heading), Math.sin(heading)];
  const path: PuddleMove['path'] = [
    [at[0] - half * c, at[1] - half * s],
    [at[0] - sway * s, at[1] + sway * c],
    [at[0] + half * c, at[1] + half * s],
  ];
  return path.some(on.taken) ? [[at[0], at[1]]] : path;
}

function shuffle<T>(list: T[], stream: RandomStream): void {
  for (let i = list.length - 1; i > 0; i--) {
    const j = stream.below(i + 1);
    [list[i], list[j]] = [list[j]!, list[i]!];
  }
}
