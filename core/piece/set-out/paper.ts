/** Sheets a shop's printer takes, in m. */

import type { System } from '#core/quantity/units.ts';

export type Paper = 'A4' | 'Letter';
/** As an address or a form says it. */
export type PaperWord = Lowercase<Paper>;
export type Orientation = 'portrait' | 'landscape';

export interface PageSize {
  readonly width_m: number;
  readonly height_m: number;
}

/** A4 by ISO 216 (210 mm x 297 mm), Letter by ANSI/ASME Y14.1 size A (8 1/2 in x 11 in). */
export function pageSize(paper: Paper, orientation: Orientation): PageSize {
  const [short, long] = paper === 'A4' ? [0.21, 0.297] : [8.5 * 0.0254, 11 * 0.0254];
  return orientation === 'portrait' ? { width_m: short, height_m: long } : { width_m: long, height_m: short };
}

/** Letter where sizes are in inches, A4 elsewhere. */
export function usualPaper(system: System): PaperWord {
  return system === 'us' ? 'letter' : 'a4';
}
