/**
 * How much colourant a mix takes before it cures soft, by mass of A + B. Common practice, no source: shop defaults, and the
 * figure on the product's own label stands above them.
 */
import type { Problem } from '#core/quantity/problem.ts';
import { trimmed } from '#core/quantity/rounding.ts';
import type { Coat, Colour, ColourantKind } from './coat.ts';

/** Most of each kind, as mass of colourant per mass of mixed resin. */
export const COLOURANT_LIMITS: Readonly<Record<ColourantKind, number>> = {
  none: 0,
  'pigment paste': 0.06,
  'mica powder': 0.05,
  'dry pigment': 0.03,
  'liquid dye': 0.02,
  'alcohol ink': 0.01,
};

/** Most of everything added to one mix: beyond it the ratio of the parts and the final hardness shift. */
export const TOTAL_COLOURANT_LIMIT = 0.06;

/** The shares of a coat may miss 100 % by this much. */
export const SHARE_TOLERANCE = 0.005;

const percent = (share: number) => (Number.isFinite(share) ? `${trimmed(share * 100, 2)}%` : String(share));

/** What this colour may hold in this resin: the least of the kind's limit, the total and the resin card's own limit. */
export function colourantLimit(colour: Pick<Colour, 'colourant'>, cardLimit: number): number {
  return Math.min(COLOURANT_LIMITS[colour.colourant], TOTAL_COLOURANT_LIMIT, cardLimit);
}

/**
 * The colours of a coat against the limits. Paths are relative to the coat (`colours.0.load`). Codes that begin with
 * `warning` are doubts; the others say that the coat cannot be planned as it is. A coat without colours is clear.
 */
export function checkColours(coat: Pick<Coat, 'colours' | 'card'>): readonly Problem[] {
  const problems: Problem[] = [];
  const total = coat.colours.reduce((sum, colour) => sum + colour.share, 0);
  if (coat.colours.length > 0 && !(Math.abs(total - 1) <= SHARE_TOLERANCE + 1e-12))
    problems.push({
      path: 'colours',
      code: 'colours.shares',
      message: 'The shares of the colours do not add up to the whole coat.',
      read: percent(total),
      allowed: `100% within ${percent(SHARE_TOLERANCE)}`,
    });
  coat.colours.forEach((colour, index) => {
    const problem = checkLoad(colour, coat.card.colourantLimit, `colours.${index}.load`);
    if (problem !== null) problems.push(problem);
  });
  return problems;
}

function checkLoad(colour: Colour, cardLimit: number, path: string): Problem | null {
  const read = percent(colour.load);
  if (!(colour.load >= 0))
    return { path, code: 'colour.load', message: `${colour.name}: the load is below nothing.`, read };
  if (colour.colourant === 'none')
    return colour.load === 0
      ? null
      : {
          path,
          code: 'colour.load-without-colourant',
          message: `${colour.name} is clear, but a load of colourant is given.`,
          read,
          allowed: '0%, or say which colourant it is',
        };
  if (colour.load === 0)
    return {
      path,
      code: 'warning.colour-without-load',
      message: `${colour.name} has ${colour.colourant} but no load, so it is poured clear.`,
      read,
      allowed: `more than 0%, up to ${percent(colourantLimit(colour, cardLimit))}`,
    };
  const limit = colourantLimit(colour, cardLimit);
  if (colour.load <= limit + 1e-12) return null;
  const kind = COLOURANT_LIMITS[colour.colourant];
  const why =
    limit < kind && limit === cardLimit
      ? 'this resin allows'
      : limit < kind
        ? 'a mix takes in all'
        : `a mix takes of ${colour.colourant}`;
  return {
    path,
    code: 'colour.load',
    message: `${colour.name} has more colourant than ${why}: it may stay soft. (Common practice, no source.)`,
    read,
    allowed: `up to ${percent(limit)} of the mixed resin by weight`,
  };
}
