/** Which reader a drawing file needs, by its name or its first letters. */
import { type ImportedDrawing, type ReadOptions, sizeProblem } from '#core/piece/files/imported-drawing.ts';
import { readDxf } from '#core/piece/files/read-dxf.ts';
import { readSvg } from '#core/piece/files/read-svg.ts';
import { bad, type Result } from '#core/quantity/problem.ts';

export function readDrawing(name: string, text: string, options: ReadOptions): Result<ImportedDrawing> {
  const svg = /\.svg$/i.test(name) || (!/\.dxf$/i.test(name) && /^\uFEFF?\s*</.test(text));
  return svg ? readSvg(text, options) : readDxf(text, options);
}

/** Asked before the file is read into memory. */
export function tooLarge(size_bytes: number): Result<ImportedDrawing> | null {
  const problem = sizeProblem(size_bytes);
  return problem === null ? null : bad(problem);
}
