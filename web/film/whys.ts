/** Which reasons stand behind each band of the forecast chart. */
import type { Reason } from '#core/film/reason.ts';
import type { FilmOutlook } from '#core/pour/film-outlook.ts';
import type { RangeOf } from './reason-words.ts';

export interface BandWhy {
  readonly band: string;
  readonly groups: readonly { readonly range: RangeOf; readonly reasons: readonly Reason[] }[];
}

/** Bands that this coat has none of (meld of one colour, edges of a dammed piece) are left out. */
export function bandWhys(outlook: FilmOutlook): readonly BandWhy[] {
  const { edges, levelling, puddles, colours, bubbles, gel } = outlook;
  const level = { range: 'length', reasons: levelling.reasons } as const;
  const all: readonly BandWhy[] = [
    { band: 'spread', groups: [{ range: 'length', reasons: puddles.reasons }] },
    {
      band: 'meld',
      groups:
        colours.pairs.length === 0
          ? []
          : [{ range: 'e-folds', reasons: colours.pairs[0]!.answer.reasons }, level],
    },
    {
      band: 'edges',
      groups: edges.slice(0, 1).map((edge) => ({ range: 'film', reasons: edge.answers.reasons })),
    },
    { band: 'torch', groups: [{ range: 'film', reasons: [bubbles.torch] }, level] },
    { band: 'hands off', groups: [level] },
    {
      band: 'scrape',
      groups: edges.slice(0, 1).map((edge) => ({ range: 'e-folds', reasons: edge.drips.reasons })),
    },
    { band: 'gel', groups: [{ range: 'time', reasons: [gel] }] },
  ];
  return all.filter(({ groups }) => groups.length > 0);
}
