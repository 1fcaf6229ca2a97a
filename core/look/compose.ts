/**
 * A first look from a short brief. Puddles are laid out by seed, stirred, and their volumes then corrected until the colours
 * as painted over tops, faces and splashes have the shares asked for. The same brief, seed and work give the same look.
 */
import { type RandomStream, randomStream } from '#core/numeric/random.ts';
import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import { trimmed } from '#core/quantity/rounding.ts';
import { type LookBrief, readBrief } from './brief.ts';
import { anyPlace, edgePlace, type Ground, inCorners, spaced, topsOf } from './compose-places.ts';
import { HEADINGS, stirring } from './compose-stirring.ts';
import { fitShares } from './fit-shares.ts';
import type { LookDocument, LookMoveDocument, PuddleMove } from './look-document.ts';
import type { Place } from './move.ts';
import { boxOf, type LookSetting, planeArea_m2 } from './read-look.ts';
import { otherSide, twinPlace } from './twin.ts';

export interface Composed {
  readonly look: LookDocument;
  /** Shares as painted, by the key of the colour. */
  readonly shares: ReadonlyMap<string, number>;
  /** Largest miss of a share, of the whole. */
  readonly off: number;
}

/** The most puddles a composed look has: more is a texture, and no maker pours it. */
const MOST_PUDDLES = 60;

/**
 * A look for the work of `setting` with these shares by colour key (each 0 or more, together above 0; taken as parts of their
 * sum). Brief, seed, undercoat, symmetry, faces, further pieces and locked areas are those of `document`; moves in
 * locked areas stay as they are, all others are made anew. The ground is the document's, or the colour with the largest share.
 * Problems: no colours, a share below 0, a brief that cannot be read, locked moves that hold more of a colour than its share.
 * Within 0.5 % of the area of what is asked, told by `off`; where a look cannot get there a warning says so.
 */
export function composeLook(
  document: LookDocument,
  wanted: ReadonlyMap<string, number>,
  setting: LookSetting,
): Result<Composed> {
  const keys = setting.colours.map((colour) => colour.key);
  const wrong = checkWanted(wanted, keys);
  if (wrong !== null) return bad(wrong);
  const total = [...wanted.values()].reduce((sum, share) => sum + share, 0);
  const shares = new Map([...wanted].map(([key, share]) => [key, share / total]));
  const { half_m, middle } = boxOf(setting.panels);
  const brief = readBrief(document.brief, 2 * Math.min(...half_m), keys, setting.system);
  if (!brief.ok) return brief;
  const ground = document.ground !== '' && shares.has(document.ground) ? document.ground : largest(shares);
  const lockedAreas = document.locked.map((area) => area.corners);
  const isLocked = (p: Place) => lockedAreas.some((corners) => inCorners(p, corners));
  const locked = document.moves.filter((move) => lockedAreas.length > 0 && placesOf(move).some(isLocked));
  const whole_m3 = planeArea_m2(setting.panels) * setting.film_m;
  const base: LookDocument = { ...document, ground, approved: null };
  const made = layOut(brief.value, shares, {
    ground,
    whole_m3,
    film_m: setting.film_m,
    seed: document.seed,
    twins: document.symmetry === 'none' ? 1 : 2,
    on: {
      tops: topsOf(setting.panels),
      taken: (p) => isLocked(p) || isLocked(twinPlace(p, document.symmetry, middle) ?? p),
      fold: (p) =>
        (otherSide(p, document.symmetry, middle) ? twinPlace(p, document.symmetry, middle) : null) ?? p,
    },
    twin: (p) => twinPlace(p, document.symmetry, middle),
    locked,
  });
  if (!made.ok) return made;
  return fitShares(
    { ...base, moves: named([...locked, ...made.value], locked) },
    shares,
    setting,
    new Set(locked.map((m) => m.id)),
  );
}

/** Looks of the same brief by the seeds that follow: alternatives to choose from. Count 1 to 24, else RangeError. */
export function composeAlternatives(
  document: LookDocument,
  wanted: ReadonlyMap<string, number>,
  setting: LookSetting,
  count: number,
): readonly Result<Composed>[] {
  if (!(Number.isInteger(count) && count >= 1 && count <= 24))
    throw new RangeError(`count = ${count}: allowed 1 to 24`);
  return Array.from({ length: count }, (_, at) =>
    composeLook({ ...document, seed: (document.seed + at) % 4_294_967_296 }, wanted, setting),
  );
}

function checkWanted(wanted: ReadonlyMap<string, number>, keys: readonly string[]): Problem | null {
  const told = keys.join(', ') || 'no colour: the coat has none yet';
  for (const [key, share] of wanted) {
    if (!keys.includes(key))
      return {
        path: 'ground',
        code: 'look.colour',
        message: 'The coat has no such colour.',
        read: key,
        allowed: told,
      };
    if (!(share >= 0 && share < Number.POSITIVE_INFINITY))
      return {
        path: '',
        code: 'look.share',
        message: `The share of ${key} is below nothing.`,
        read: `${trimmed(share * 100, 2)} %`,
        allowed: '0 % or more',
      };
  }
  if (![...wanted.values()].some((share) => share > 0))
    return {
      path: '',
      code: 'look.no-colours',
      message: 'A look needs a colour with a share.',
      read: 'none',
      allowed: 'one colour or more above 0 %',
    };
  return null;
}

const largest = (shares: ReadonlyMap<string, number>): string =>
  [...shares].reduce((best, one) => (one[1] > best[1] ? one : best))[0];

function placesOf(move: LookMoveDocument): readonly Place[] {
  switch (move.kind) {
    case 'puddle':
    case 'stroke':
      return move.path;
    case 'comb':
      return [move.through];
    case 'swirl':
    case 'tilt':
      return [move.centre];
    case 'waver':
    case 'fogged edge':
    case 'clear buffer':
      return [];
  }
}

/** Ids of their own beside those of the locked moves. */
function named(moves: readonly LookMoveDocument[], locked: readonly LookMoveDocument[]): LookMoveDocument[] {
  const taken = new Set(locked.map((move) => move.id));
  return moves.map((move, at) => {
    if (at < locked.length) return move;
    let id = `${move.kind.replace(' ', '-')}-${at + 1}`;
    while (taken.has(id)) id = `${id}+`;
    taken.add(id);
    return { ...move, id };
  });
}

interface Layout {
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

function layOut(
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
