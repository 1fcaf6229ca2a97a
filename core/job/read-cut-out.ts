import { checkOutline } from '#core/piece/check-outline.ts';
import { outlinePath } from '#core/piece/outline.ts';
import { bounds } from '#core/piece/path.ts';
import type { CutOut, CutOutShape, Point } from '#core/piece/piece.ts';
import { readAngle_rad, readLength_m } from '#core/quantity/read.ts';
import type { CutOutDocument } from './document.ts';
import type { Notes } from './notes.ts';
import { LARGEST_SIDE_M, readOutline } from './read-outline.ts';

/** Sizes and place of a cut-out; null where one is missing or not readable. */
export function readCutOut(document: CutOutDocument, path: string, notes: Notes): CutOut | null {
  const place = (key: 'fromLeft' | 'fromFront', what: string) =>
    notes.need(`${path}.${key}`, document[key], `the ${what}`, (text, ask) =>
      readLength_m(text, { ...ask, what, min: -LARGEST_SIDE_M, max: LARGEST_SIDE_M }),
    );
  const x_m = place('fromLeft', 'distance of its centre from the left');
  const y_m = place('fromFront', 'distance of its centre from the front');
  const shape =
    document.shape === 'template' ? readTemplate(document, path, notes) : readShape(document, path, notes);
  // A round hole is the same whichever way it is turned.
  const turned = document.shape === 'round' ? '' : (document.turned ?? '');
  const rotation_rad = notes.or(`${path}.turned`, turned, 0, (text, ask) =>
    readAngle_rad(text, { ...ask, what: 'turn of the cut-out' }),
  );
  if (x_m === null || y_m === null || shape === null || rotation_rad === null) return null;
  const turn = rotation_rad === 0 ? {} : { rotation_rad };
  return { ...shape, ...turn, name: document.name || `cut-out`, centre: { x_m, y_m }, rim: document.rim };
}

function readShape(document: CutOutDocument, path: string, notes: Notes): CutOutShape | null {
  const need = (key: 'length' | 'width', what: string) =>
    notes.need(`${path}.${key}`, document[key], `the ${what}`, (text, ask) =>
      readLength_m(text, { ...ask, what, min: 0.005, max: LARGEST_SIDE_M }),
    );
  const length_m = need('length', document.shape === 'round' ? 'diameter' : 'length');
  const width_m = document.shape === 'round' ? length_m : need('width', 'width');
  const cornerRadius_m =
    document.shape !== 'rectangle' || document.cornerRadius.trim() === ''
      ? 0
      : notes.take(`${path}.cornerRadius`, document.cornerRadius, (text, ask) =>
          readLength_m(text, { ...ask, what: 'corner radius', min: 0, max: 2 }),
        );
  if (length_m === null || width_m === null || cornerRadius_m === null) return null;
  return document.shape === 'round'
    ? { shape: 'round', diameter_m: length_m }
    : document.shape === 'oval'
      ? { shape: 'oval', length_m, width_m }
      : { shape: 'rectangle', length_m, width_m, cornerRadius_m };
}

/** The corners of a template, brought to stand about the middle of their box, which is its centre. */
function readTemplate(document: CutOutDocument, path: string, notes: Notes): CutOutShape | null {
  const outline = readOutline({ shape: 'polygon', corners: document.corners ?? [] }, notes, path);
  if (outline === null || (outline.shape !== 'polygon' && outline.shape !== 'path')) return null;
  // Corners that make no outline stay as they are, for core/piece to say why.
  if (checkOutline(outline).length > 0) return { shape: 'template', outline };
  const { minX_m, minY_m, maxX_m, maxY_m } = bounds(outlinePath(outline));
  const moved = <P extends Point>(p: P): P => ({
    ...p,
    x_m: p.x_m - (minX_m + maxX_m) / 2,
    y_m: p.y_m - (minY_m + maxY_m) / 2,
  });
  return {
    shape: 'template',
    outline:
      outline.shape === 'polygon'
        ? { shape: 'polygon', corners: outline.corners.map(moved) }
        : {
            shape: 'path',
            start: moved(outline.start),
            segments: outline.segments.map((step) => ({ ...step, to: moved(step.to) })),
          },
  };
}
