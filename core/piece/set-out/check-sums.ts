/** Sums a maker can work out beside the sheet: if one does not come out, a figure was misread or the sheet is wrong. */

import type { Datums } from './datum.ts';
import type { SetOutCorner } from './marked-corners.ts';
import type { SetOutCutOut } from './placed-cut-outs.ts';

export interface CheckSum {
  readonly kind: 'round the outline' | 'across a cut-out' | 'up a cut-out' | 'inside angles';
  /** The cut-out it runs through. */
  readonly of?: string;
  /** In m, or in rad for the inside angles. */
  readonly parts: readonly { readonly name: string; readonly value: number }[];
  /** What the parts must add up to. */
  readonly total: number;
}

interface Figures {
  readonly overall: { readonly length_m: number; readonly width_m: number };
  readonly perimeter_m: number;
  readonly edges: readonly { readonly name: string; readonly length_m: number }[];
  readonly cutOuts: readonly SetOutCutOut[];
  readonly corners: readonly SetOutCorner[];
  readonly datums: Datums;
  /** No side is curved (roundings of corners do not count). */
  readonly straight: boolean;
}

const OPPOSITE = { left: 'right', right: 'left', front: 'back', back: 'front' } as const;

/** Every sum that applies; the inside angles only where all sides are straight. */
export function checkSums(figures: Figures): CheckSum[] {
  const { overall, perimeter_m, edges, cutOuts, corners, datums, straight } = figures;
  const sums: CheckSum[] = [
    {
      kind: 'round the outline',
      parts: edges.map(({ name, length_m }) => ({ name, value: length_m })),
      total: perimeter_m,
    },
  ];
  for (const c of cutOuts) {
    sums.push({
      kind: 'across a cut-out',
      of: c.name,
      parts: [
        { name: datums.across.side, value: c.near.across_m },
        { name: c.name, value: c.far.across_m - c.near.across_m },
        { name: OPPOSITE[datums.across.side], value: c.beyond.across_m },
      ],
      total: overall.length_m,
    });
    sums.push({
      kind: 'up a cut-out',
      of: c.name,
      parts: [
        { name: datums.up.side, value: c.near.up_m },
        { name: c.name, value: c.far.up_m - c.near.up_m },
        { name: OPPOSITE[datums.up.side], value: c.beyond.up_m },
      ],
      total: overall.width_m,
    });
  }
  // Curved sides turn too: there the angles add up to something else.
  if (straight && corners.length >= 3)
    sums.push({
      kind: 'inside angles',
      parts: corners.map((c) => ({ name: `corner ${c.number}`, value: c.insideAngle_rad })),
      total: (corners.length - 2) * Math.PI,
    });
  return sums;
}
