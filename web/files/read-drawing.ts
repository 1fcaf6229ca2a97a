/** Which reader a drawing file needs, by its name or its first letters. */
import {
  type ImportedDrawing,
  LARGEST_FILE_CHARACTERS,
  type ReadOptions,
} from '#core/piece/files/imported-drawing.ts';
import { readDxf } from '#core/piece/files/read-dxf.ts';
import { readSvg } from '#core/piece/files/read-svg.ts';
import { bad, type Result } from '#core/quantity/problem.ts';

export function readDrawing(name: string, text: string, options: ReadOptions): Result<ImportedDrawing> {
  const svg = /\.svg$/i.test(name) || (!/\.dxf$/i.test(name) && /^\uFEFF?\s*</.test(text));
  return svg ? readSvg(text, options) : readDxf(text, options);
}

/** Asked before the file is read into memory. */
export function tooLarge(size_bytes: number): Result<ImportedDrawing> | null {
  if (size_bytes <= LARGEST_FILE_CHARACTERS) return null;
  return bad({
    path: '',
    code: 'file.too-large',
    message: 'The file is too large for a drawing of a top.',
    read: `${(size_bytes / 1e6).toFixed(1)} MB`,
    allowed: 'up to 10 MB',
  });
}
