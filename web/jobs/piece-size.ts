import type { JobDocument } from '#core/job/document.ts';
import { readLength_m } from '#core/quantity/read.ts';
import type { Speak } from '#web/units/speak.ts';

/** "48 in x 22 in" or "42 in round", in the system on screen; null while the sizes are not readable. Of several: "48 in x 22 in and 2 more". */
export function sayPieceSize(document: JobDocument, speak: Speak): string | null {
  const first = sayOutline(document.piece.outline, speak);
  const more = document.otherPieces?.length ?? 0;
  return more === 0 ? first : `${first ?? 'no sizes'} and ${more} more`;
}

function sayOutline(outline: JobDocument['piece']['outline'], speak: Speak): string | null {
  const say = (text: string): string | null => {
    const read = readLength_m(text);
    return read.ok ? speak.length(read.value) : null;
  };
  if (outline === null) return null;
  if (outline.shape === 'polygon') return `${outline.corners.length} corners`;
  if (outline.shape === 'round') {
    const diameter = say(outline.diameter);
    return diameter === null ? null : `${diameter} round`;
  }
  const length = say(outline.length);
  if (outline.shape === 'ell') {
    const other = say(outline.returnLength);
    return length === null || other === null ? null : `${length} by ${other} L`;
  }
  const width = say(outline.width);
  if (length === null || width === null) return null;
  return `${length} x ${width}${outline.shape === 'ellipse' ? ' ellipse' : ''}`;
}
