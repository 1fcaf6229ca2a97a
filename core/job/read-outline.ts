import type { Outline } from '#core/piece/piece.ts';
import { readLength_m } from '#core/quantity/read.ts';
import type { OutlineDocument } from './document.ts';
import type { Notes } from './notes.ts';
import { bowedOutline } from './read-piece-bow.ts';

/** A top, a side of it or a place on it: a hand to ten metres. */
export const SMALLEST_SIDE_M = 0.01;
export const LARGEST_SIDE_M = 10;

/** The sizes of an outline; null where one is missing or not readable. Whether they fit together is for core/piece to say. */
export function readOutline(document: OutlineDocument, notes: Notes, path = 'piece.outline'): Outline | null {
  const need = (key: string, text: string, what: string) =>
    notes.need(`${path}.${key}`, text, `the ${what}`, (typed, ask) =>
      readLength_m(typed, { ...ask, what, min: SMALLEST_SIDE_M, max: LARGEST_SIDE_M }),
    );
  const radius = (key: string, text: string, what: string) =>
    notes.or(`${path}.${key}`, text, 0, (typed, ask) =>
      readLength_m(typed, { ...ask, what, min: 0, max: LARGEST_SIDE_M }),
    );
  switch (document.shape) {
    case 'rectangle': {
      const length_m = need('length', document.length, 'length');
      const width_m = need('width', document.width, 'depth');
      const cornerRadius_m = radius('cornerRadius', document.cornerRadius, 'corner radius');
      if (length_m === null || width_m === null || cornerRadius_m === null) return null;
      return { shape: 'rectangle', length_m, width_m, cornerRadius_m };
    }
    case 'ell': {
      const length_m = need('length', document.length, 'length of the main leg');
      const width_m = need('width', document.width, 'depth of the main leg');
      const returnLength_m = need('returnLength', document.returnLength, 'reach of the return');
      const returnWidth_m = need('returnWidth', document.returnWidth, 'depth of the return');
      const cornerRadius_m = radius('cornerRadius', document.cornerRadius, 'corner radius');
      const insideRadius_m = radius('insideRadius', document.insideRadius, 'inner corner radius');
      if (
        length_m === null ||
        width_m === null ||
        returnLength_m === null ||
        returnWidth_m === null ||
        cornerRadius_m === null ||
        insideRadius_m === null
      )
        return null;
      return {
        shape: 'ell',
        side: document.side,
        length_m,
        width_m,
        returnLength_m,
        returnWidth_m,
        cornerRadius_m,
        insideRadius_m,
      };
    }
    case 'round': {
      const diameter_m = need('diameter', document.diameter, 'diameter');
      return diameter_m === null ? null : { shape: 'round', diameter_m };
    }
    case 'ellipse': {
      const length_m = need('length', document.length, 'long axis');
      const width_m = need('width', document.width, 'short axis');
      return length_m === null || width_m === null ? null : { shape: 'ellipse', length_m, width_m };
    }
    case 'polygon': {
      if (document.corners.length < 3) {
        notes.miss(`${path}.corners`, 'at least three corners');
        return null;
      }
      const corners = document.corners.map((corner, index) => {
        const at = (key: 'x' | 'y', what: string) =>
          notes.need(`${path}.corners.${index}.${key}`, corner[key], what, (typed, ask) =>
            readLength_m(typed, { ...ask, what, min: -LARGEST_SIDE_M, max: LARGEST_SIDE_M }),
          );
        const x_m = at('x', 'distance from the left');
        const y_m = at('y', 'distance from the front');
        const radius_m = radius(`corners.${index}.radius`, corner.radius, 'radius of this corner');
        // Documents from before sides could bow hold none.
        const bow_m = notes.or(`${path}.corners.${index}.bow`, corner.bow ?? '', 0, (typed, ask) =>
          readLength_m(typed, {
            ...ask,
            what: 'bow of this side',
            min: -LARGEST_SIDE_M / 2,
            max: LARGEST_SIDE_M / 2,
          }),
        );
        if (x_m === null || y_m === null || radius_m === null || bow_m === null) return null;
        return { x_m, y_m, radius_m, bow_m };
      });
      const known = corners.filter((corner) => corner !== null);
      return known.length === corners.length ? bowedOutline(known, notes, path) : null;
    }
  }
}
