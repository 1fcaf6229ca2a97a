import type { EdgeProfile, EdgeSpec } from '#core/piece/piece.ts';
import { readFactor, readLength_m } from '#core/quantity/read.ts';
import type { EdgeDocument } from './document.ts';
import type { Notes } from './notes.ts';

/** An eighth and a quarter of an inch: what an arris gets when nobody says otherwise (common practice, no source). */
export const EASED_M = 0.003175;
const ROUNDED_M = 0.00635;

/**
 * How an edge is made; null where a text is not readable. Nothing typed: as high as the body, no return, the usual arris.
 */
export function readEdge(
  document: EdgeDocument,
  path: string,
  bodyThickness_m: number | null,
  notes: Notes,
): EdgeSpec | null {
  const faceHeight_m =
    document.faceHeight.trim() === ''
      ? bodyThickness_m
      : notes.take(`${path}.faceHeight`, document.faceHeight, (text, ask) =>
          readLength_m(text, { ...ask, what: 'face height', min: 0.001, max: 1.5 }),
        );
  const undersideReturn_m =
    document.undersideReturn.trim() === ''
      ? 0
      : notes.take(`${path}.undersideReturn`, document.undersideReturn, (text, ask) =>
          readLength_m(text, { ...ask, what: 'underside return', min: 0, max: 0.3 }),
        );
  const profile = readProfile(document, path, notes);
  return faceHeight_m === null || undersideReturn_m === null || profile === null
    ? null
    : { kind: document.kind, faceHeight_m, profile, undersideReturn_m };
}

function readProfile(document: EdgeDocument, path: string, notes: Notes): EdgeProfile | null {
  const at = `${path}.profileSize`;
  const size = (what: string, otherwise_m: number) =>
    document.profileSize.trim() === ''
      ? otherwise_m
      : notes.take(at, document.profileSize, (text, ask) =>
          readLength_m(text, { ...ask, what, min: 0.0002, max: 0.2 }),
        );
  switch (document.profile) {
    case 'square eased':
    case 'round-over': {
      const radius_m = size('radius of the arris', document.profile === 'round-over' ? ROUNDED_M : EASED_M);
      return radius_m === null ? null : { kind: document.profile, radius_m };
    }
    case 'bevel': {
      const leg_m = size('leg of the bevel', ROUNDED_M);
      return leg_m === null ? null : { kind: 'bevel', leg_m };
    }
    case 'bullnose':
      return { kind: 'bullnose' };
    case 'chiselled': {
      const factor =
        document.profileSize.trim() === ''
          ? 1.4
          : notes.take(at, document.profileSize, (text, ask) =>
              readFactor(text, { ...ask, what: 'development factor', min: 1, max: 2 }),
            );
      return factor === null ? null : { kind: 'chiselled', factor };
    }
  }
}
