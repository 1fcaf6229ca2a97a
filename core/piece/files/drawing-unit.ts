/** The units a drawing file may be in. */

import { toSI } from '#core/quantity/units.ts';

/** px: a CSS pixel, 96 to the inch (W3C, CSS Values and Units Level 3, section 5.2). */
export type DrawingUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft' | 'px' | 'pt' | 'pc';

const LENGTH_M: Readonly<Record<DrawingUnit, number>> = {
  mm: 0.001,
  cm: 0.01,
  m: 1,
  in: toSI(1, 'in'),
  ft: toSI(1, 'ft'),
  px: toSI(1, 'in') / 96,
  pt: toSI(1, 'in') / 72,
  pc: toSI(1, 'in') / 6,
};

/** Length of one unit, m. */
export function unitLength_m(unit: DrawingUnit): number {
  return LENGTH_M[unit];
}

/** $INSUNITS of a DXF header (Autodesk, DXF Reference for AutoCAD 2000, HEADER section); undefined: none said, or unknown. */
export function unitOfInsunits(code: number): DrawingUnit | undefined {
  return ({ 1: 'in', 2: 'ft', 4: 'mm', 5: 'cm', 6: 'm' } as Record<number, DrawingUnit>)[code];
}

/** A unit by the word a file uses for it. */
export function unitOfWord(word: string): DrawingUnit | undefined {
  return Object.hasOwn(LENGTH_M, word) ? (word as DrawingUnit) : undefined;
}
