/** The piece as a drawing file of the browser's own making: a Blob, which the content policy allows. */
import { writeDxf } from '#core/piece/files/write-dxf.ts';
import { writeSvg } from '#core/piece/files/write-svg.ts';
import type { Piece } from '#core/piece/piece.ts';
import type { System } from '#core/quantity/units.ts';

export interface Way {
  readonly label: string;
  readonly ending: 'dxf' | 'svg';
  readonly version: 'R12' | 'R2000' | 'SVG';
}

export const WAYS: readonly Way[] = [
  { label: 'DXF R12', ending: 'dxf', version: 'R12' },
  { label: 'DXF 2000', ending: 'dxf', version: 'R2000' },
  { label: 'SVG', ending: 'svg', version: 'SVG' },
];

/** The text of the file: DXF in the shop's unit, SVG in mm. Throws RangeError when the piece cannot be built. */
export function drawingText(piece: Piece, way: Way, system: System): string {
  if (way.version === 'SVG') return writeSvg(piece);
  return writeDxf(piece, { version: way.version, unit: system === 'us' ? 'in' : 'mm' });
}

export function saveDrawing(piece: Piece, name: string, way: Way, system: System): void {
  const type = way.ending === 'svg' ? 'image/svg+xml' : 'image/vnd.dxf';
  const url = URL.createObjectURL(new Blob([drawingText(piece, way, system)], { type }));
  const link = window.document.createElement('a');
  link.href = url;
  link.download = `${
    name
      .replace(/[^\w]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 60) || 'piece'
  }.${way.ending}`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
