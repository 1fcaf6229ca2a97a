/** The question a file puts that does not say its unit. */

import { bad, type Result } from '#core/quantity/problem.ts';
import { type DrawingUnit, unitLength_m } from './drawing-unit.ts';
import type { ImportedDrawing } from './imported-drawing.ts';

/** `drawing` was read as if in `unit`: the answer names its size in units, so that a person can tell. */
export function unitQuestion(
  drawing: Result<ImportedDrawing>,
  unit: DrawingUnit,
  choices: readonly DrawingUnit[],
): Result<ImportedDrawing> {
  if (!drawing.ok) return drawing;
  const { minX_m, maxX_m, minY_m, maxY_m } = drawing.value.bounds;
  const long = (maxX_m - minX_m) / unitLength_m(unit);
  const wide = (maxY_m - minY_m) / unitLength_m(unit);
  return bad({
    path: 'unit',
    code: 'file.unit',
    message: 'The file does not say its unit. Which is it?',
    read: `${plain(long)} by ${plain(wide)} of its units over everything`,
    allowed: choices.join(', '),
  });
}

function plain(value: number): string {
  return value.toFixed(3).replace(/\.?0+$/, '');
}
