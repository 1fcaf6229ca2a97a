import type { EdgeProfile, EdgeSpec } from '#core/piece/piece.ts';
import { readFactor, readLength_m } from '#core/quantity/read.ts';
import type { EdgeDocument } from './document.ts';
import type { Notes } from './notes.ts';

/** An eighth and a quarter of an inch: what an arris gets when nobody says otherwise (common practice, no source). */
const EASED_M = 0.003175;
const ROUNDED_M = 0.00635;
/** In the middle of what a chiselled face measures, 1.3 to 1.6 times a plain one (common practice, no source). */
const USUAL_FACTOR = 1.4;

/** The usual size, or half the face where that is lower. */
function usualSize_m(usual_m: number, faceHeight_m: number | null): number {
  return faceHeight_m === null ? usual_m : Math.min(usual_m, faceHeight_m / 2);
}

/** An edge nobody has described: finished, as high as the body, eased, no return. What most tops are. */
export function usualEdge(bodyThickness_m: number): EdgeSpec {
  return {
    kind: 'finished',
    faceHeight_m: bodyThickness_m,
    profile: { kind: 'square eased', radius_m: usualSize_m(EASED_M, bodyThickness_m) },
    undersideReturn_m: 0,
  };
}

/**
 * How an edge is made; null where a text is not readable. Nothing typed: as high as the body, no return, the usual arris.
 */
export function readEdge(
  document: EdgeDocument,
  path: string,
  bodyThickness_m: number | null,
  notes: Notes,
): EdgeSpec | null {
  const faceHeight_m = notes.or(`${path}.faceHeight`, document.faceHeight, bodyThickness_m, (text, ask) =>
    readLength_m(text, { ...ask, what: 'face height', min: 0.001, max: 1.5 }),
  );
  const undersideReturn_m = notes.or(`${path}.undersideReturn`, document.undersideReturn, 0, (text, ask) =>
    readLength_m(text, { ...ask, what: 'underside return', min: 0, max: 0.3 }),
  );
  const profile = readProfile(document, path, faceHeight_m, notes);
  return faceHeight_m === null || undersideReturn_m === null || profile === null
    ? null
    : {
        ...{ kind: document.kind, faceHeight_m, profile, undersideReturn_m },
        ...(document.countsAs ? { countsAs: document.countsAs } : {}),
      };
}

function readProfile(
  document: EdgeDocument,
  path: string,
  faceHeight_m: number | null,
  notes: Notes,
): EdgeProfile | null {
  const at = `${path}.profileSize`;
  const size = (what: string, usual_m: number) =>
    notes.or(at, document.profileSize, usualSize_m(usual_m, faceHeight_m), (text, ask) =>
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
      const factor = notes.or(at, document.profileSize, USUAL_FACTOR, (text, ask) =>
        readFactor(text, { path: ask.path, what: 'development factor', min: 1, max: 2 }),
      );
      return factor === null ? null : { kind: 'chiselled', factor };
    }
  }
}
