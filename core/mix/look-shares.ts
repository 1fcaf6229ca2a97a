/**
 * A look and the cups of its coat kept in step. What is poured of a colour, in the film that stays on the work, over that film is its
 * share; a cup holds its colour's share of the whole coat (film, run-off, what stays in the cup, spare). Shares to
 * puddles and puddles to shares are exact, both ways.
 */
import type { LookDocument } from '#core/look/look-document.ts';
import { groundOf } from '#core/look/read-look.ts';
import { positive, within } from '#core/quantity/domain.ts';
import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import { trimmed } from '#core/quantity/rounding.ts';

/** Less of a colour than this is none: no scale weighs its cup. */
export const LEAST_SHARE = 0.001;

const percent = (share: number) => `${trimmed(share * 100, 2)} %`;

/**
 * Share of every colour by key as poured: kept puddles over the whole film on the work, the ground all that is left (0 where the puddles
 * hold more). Whole above 0 m3, at least one key, else RangeError.
 */
export function pouredShares(
  look: Pick<LookDocument, 'moves' | 'ground'>,
  keys: readonly string[],
  whole_m3: number,
): ReadonlyMap<string, number> {
  positive('whole_m3', whole_m3, 'm3');
  const ground = groundKey(look, keys);
  const shares = new Map(keys.map((key) => [key, 0]));
  for (const move of look.moves)
    if (move.kind === 'puddle' && move.kept && shares.has(move.colour))
      shares.set(move.colour, shares.get(move.colour)! + move.volume_m3 / whole_m3);
  const poured = [...shares.values()].reduce((sum, share) => sum + share, 0);
  shares.set(ground, shares.get(ground)! + Math.max(0, 1 - poured));
  return shares;
}

function groundKey(look: Pick<LookDocument, 'ground'>, keys: readonly string[]): string {
  const ground =
    keys[
      groundOf(
        look,
        keys.map((key) => ({ key })),
      )
    ];
  if (ground === undefined)
    throw new RangeError(`the ground "${look.ground}" is none of: ${keys.join(', ')}`);
  return ground;
}

/**
 * The look with these shares: puddles of each colour grow or shrink alike, the ground takes what is left. Done twice it is the same; done with the old
 * shares it is the old look, to rounding. Problems (paths of the coat's colours, `colours.1.share`): a share below
 * 0.1 % or above the whole, shares that do not add up, a colour without a puddle, a ground whose own puddles hold more than its share.
 * @param shares of every key. @throws RangeError as `pouredShares`.
 */
export function withShares(
  look: LookDocument,
  keys: readonly string[],
  shares: ReadonlyMap<string, number>,
  whole_m3: number,
): Result<LookDocument> {
  const was = pouredShares(look, keys, whole_m3);
  const ground = groundKey(look, keys);
  const problems: Problem[] = [];
  const sum = keys.reduce((total, key) => total + (shares.get(key) ?? 0), 0);
  if (!(Math.abs(sum - 1) < 1e-6))
    problems.push({
      path: 'colours',
      code: 'colours.shares',
      message: 'The shares of the colours do not add up to the whole coat.',
      read: percent(sum),
      allowed: '100 %',
    });
  const factors = new Map<string, number>();
  keys.forEach((key, at) => {
    const path = `colours.${at}.share`;
    const share = shares.get(key) ?? 0;
    if (!(share >= LEAST_SHARE && share <= 1))
      problems.push({
        path,
        code: 'look.share',
        message: `The share of ${key} is out of range.`,
        read: percent(share),
        allowed: `${percent(LEAST_SHARE)} to 100 %; take the colour out of the list to pour none of it`,
      });
    else if (key === ground) {
      const own = puddled(look, key) / whole_m3;
      if (own > share + 1e-9)
        problems.push({
          path,
          code: 'look.ground-share',
          message: `The puddles of ${key} alone hold more than this share.`,
          read: percent(share),
          allowed: `${percent(own)} or more`,
        });
    } else if (was.get(key) === 0)
      problems.push({
        path,
        code: 'look.no-puddle',
        message: `There is no puddle of ${key} in the look that could hold its share.`,
        read: percent(share),
        allowed: 'pour a puddle of it first',
      });
    else factors.set(key, share / was.get(key)!);
  });
  if (problems.length > 0) return bad(...problems);
  return good({
    ...look,
    moves: look.moves.map((move) =>
      move.kind === 'puddle' && move.kept
        ? { ...move, volume_m3: move.volume_m3 * (factors.get(move.colour) ?? 1) }
        : move,
    ),
  });
}

function puddled(look: Pick<LookDocument, 'moves'>, key: string): number {
  return look.moves.reduce(
    (sum, move) => sum + (move.kind === 'puddle' && move.kept && move.colour === key ? move.volume_m3 : 0),
    0,
  );
}

/**
 * The shares with one of them changed, the others keeping their proportions (equal ones where they were all 0).
 * @param share 0 to 1 @throws RangeError outside it, or for a key that is not there.
 */
export function sharesWithOne(
  shares: ReadonlyMap<string, number>,
  key: string,
  share: number,
): ReadonlyMap<string, number> {
  within('share', share, 0, 1);
  const was = shares.get(key);
  if (was === undefined) throw new RangeError(`no colour ${key}; allowed: ${[...shares.keys()].join(', ')}`);
  const others = [...shares.values()].reduce((sum, value) => sum + value, 0) - was;
  return new Map(
    [...shares].map(([other, value]) => {
      if (other === key) return [other, shares.size === 1 ? 1 : share];
      return [other, others > 1e-12 ? (value / others) * (1 - share) : (1 - share) / (shares.size - 1)];
    }),
  );
}

/** A cup changed by hand: the share its colour then has of a coat whose whole mass stays. Both above 0 kg; at most the whole. */
export function shareOfCups(colourMass_kg: number, coatMass_kg: number): number {
  positive('coatMass_kg', coatMass_kg, 'kg');
  return within('colourMass_kg', colourMass_kg, 0, coatMass_kg, 'kg') / coatMass_kg;
}

/**
 * Shares as texts to the tenth of a percent that add up to 100 % (largest remainders). Shares sum to 1 within 1e-6, else RangeError.
 */
export function sharesAsTyped(shares: ReadonlyMap<string, number>): ReadonlyMap<string, string> {
  within(
    'sum of the shares',
    [...shares.values()].reduce((sum, share) => sum + share, 0),
    1 - 1e-6,
    1 + 1e-6,
  );
  const tenths = [...shares].map(([key, share]) => ({
    key,
    whole: Math.floor(share * 1000),
    rest: (share * 1000) % 1,
  }));
  let left = 1000 - tenths.reduce((sum, { whole }) => sum + whole, 0);
  for (const part of [...tenths].sort((a, b) => b.rest - a.rest)) {
    if (left <= 0) break;
    part.whole++;
    left--;
  }
  return new Map(tenths.map(({ key, whole }) => [key, `${whole / 10} %`]));
}
