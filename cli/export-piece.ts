/** The piece of a job as a drawing file on standard output. */
import { writeDxf } from '#core/piece/files/write-dxf.ts';
import { writeSvg } from '#core/piece/files/write-svg.ts';
import type { Piece } from '#core/piece/piece.ts';
import type { System } from '#core/quantity/units.ts';

export const DRAWINGS = ['dxf', 'dxf-r12', 'svg'] as const;
export type DrawingKind = (typeof DRAWINGS)[number];

export function isDrawingKind(word: string): word is DrawingKind {
  return (DRAWINGS as readonly string[]).includes(word);
}

/** DXF in inches or millimetres as the units are, SVG in millimetres. */
export function exportPiece(piece: Piece, kind: DrawingKind, units: System): string {
  if (kind === 'svg') return writeSvg(piece);
  return writeDxf(piece, {
    version: kind === 'dxf' ? 'R2000' : 'R12',
    unit: units === 'us' ? 'in' : 'mm',
  });
}
