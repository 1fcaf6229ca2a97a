import type { CutOut, CutOutShape } from '#core/piece/piece.ts';
import { readLength_m } from '#core/quantity/read.ts';
import type { CutOutDocument } from './document.ts';
import type { Notes } from './notes.ts';
import { LARGEST_SIDE_M } from './read-outline.ts';

/** Sizes and place of a cut-out; null where one is missing or not readable. */
export function readCutOut(document: CutOutDocument, path: string, notes: Notes): CutOut | null {
  const need = (key: 'length' | 'width' | 'fromLeft' | 'fromFront', what: string) =>
    notes.need(`${path}.${key}`, document[key], `the ${what}`, (text, ask) =>
      readLength_m(text, {
        ...ask,
        what,
        min: key === 'length' || key === 'width' ? 0.005 : -LARGEST_SIDE_M,
        max: LARGEST_SIDE_M,
      }),
    );
  const x_m = need('fromLeft', 'distance of its centre from the left');
  const y_m = need('fromFront', 'distance of its centre from the front');
  const length_m = need('length', document.shape === 'round' ? 'diameter' : 'length');
  const width_m = document.shape === 'round' ? length_m : need('width', 'width');
  const cornerRadius_m =
    document.shape !== 'rectangle' || document.cornerRadius.trim() === ''
      ? 0
      : notes.take(`${path}.cornerRadius`, document.cornerRadius, (text, ask) =>
          readLength_m(text, { ...ask, what: 'corner radius', min: 0, max: 2 }),
        );
  if (x_m === null || y_m === null || length_m === null || width_m === null || cornerRadius_m === null)
    return null;
  const shape: CutOutShape =
    document.shape === 'round'
      ? { shape: 'round', diameter_m: length_m }
      : document.shape === 'oval'
        ? { shape: 'oval', length_m, width_m }
        : { shape: 'rectangle', length_m, width_m, cornerRadius_m };
  return { ...shape, name: document.name || `cut-out`, centre: { x_m, y_m }, rim: document.rim };
}
