/** What an edge may be, in words. */
import type { EdgeDocument } from '#core/job/document.ts';
import { COUNTED_EDGES } from '#core/piece/piece.ts';

export const KINDS = [
  { value: 'finished', label: 'finished' },
  { value: 'wall', label: 'wall' },
  { value: 'seam', label: 'seam' },
] as const;

export const PROFILES: readonly { readonly value: EdgeDocument['profile']; readonly label: string }[] = (
  ['square eased', 'round-over', 'bullnose', 'bevel', 'chiselled'] as const
).map((value) => ({ value, label: value }));

/** Which edge of a counter one of a free shape is, for the wood left beside a cut-out. */
export const COUNTS_AS = [
  { value: '', label: 'the side it looks to' },
  ...COUNTED_EDGES.map((value) => ({ value, label: value })),
];

/** What the size of a profile means, for the label of its field; null where it has none. */
export const SIZE_WORD: Readonly<Record<EdgeDocument['profile'], string | null>> = {
  'square eased': 'radius',
  'round-over': 'radius',
  bullnose: null,
  bevel: 'leg',
  chiselled: 'factor 1.3 to 1.6',
};

export const CUT_OUT_SHAPES = ['round', 'oval', 'rectangle'].map((value) => ({ value, label: value }));
export const RIMS = ['dammed', 'wrapped'].map((value) => ({ value, label: value }));
