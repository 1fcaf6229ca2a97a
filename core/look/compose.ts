/**
 * A first look from a short brief. Puddles are laid out by seed, stirred, and their volumes then corrected until the colours
 * as painted over tops, faces and splashes have the shares asked for. The same brief, seed and work give the same look.
 */
import { bad, type Problem, type Result } from '#core/quantity/problem.ts';
import { trimmed } from '#core/quantity/rounding.ts';
import { readBrief } from './brief.ts';
import { layOut } from './compose-layout.ts';
import { inCorners, topsOf } from './compose-places.ts';
import { fitShares } from './fit-shares.ts';
import type { LookDocument, LookMoveDocument } from './look-document.ts';
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
