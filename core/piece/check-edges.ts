/** Edge specs: one for each edge, faces and profiles that can be cut. */

import type { Problem } from '#core/quantity/problem.ts';
import { sizeProblems } from './check-outline.ts';
import { lengthText, rangeText } from './length-text.ts';
import { edgeNames } from './outline.ts';
import type { EdgeProfile, Piece } from './piece.ts';
import { arrisRadius_m, planOverlap_m } from './profile.ts';

export const LARGEST_FACE_M = 1.5;
const SMALLEST_FACE_M = 0.001;
const LARGEST_RETURN_M = 0.3;
/** Chiselled edge, surface over plain height: common practice, no source. */
const CHISELLED = [1.3, 1.6] as const;
/** Edges are rounded to 2 mm or more before coating (ISO 8501-3 grade P3, called for by ISO 12944-3). */
const SHARP_ARRIS_M = 0.002;

/** shortSide_m: of the box round the outline. */
export function checkEdges(piece: Piece, shortSide_m: number): { problems: Problem[]; warnings: Problem[] } {
  const names = edgeNames(piece.outline);
  const known = new Set(names);
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  for (const name of Object.keys(piece.edges))
    if (!known.has(name))
      problems.push({
        path: `edges.${name}`,
        code: 'edge.unknown',
        message: 'This outline has no edge of that name.',
        read: name,
        allowed: listed(names),
      });
  for (const name of names) {
    const spec = Object.hasOwn(piece.edges, name) ? piece.edges[name] : undefined;
    const path = `edges.${name}`;
    if (spec === undefined) {
      problems.push({
        path,
        code: 'edge.missing',
        message: `Nothing says how the edge "${name}" is made.`,
        allowed: 'finished, wall or seam, with its face height and profile',
      });
      continue;
    }
    const face = checkFace(path, spec.faceHeight_m, spec.profile);
    problems.push(
      ...face,
      ...sizeProblems(
        `${path}.undersideReturn`,
        'return under the piece',
        spec.undersideReturn_m,
        0,
        LARGEST_RETURN_M,
      ),
    );
    if (face.length > 0) continue;
    const wide = planOverlap_m(spec);
    if (wide > shortSide_m / 2 + 1e-9)
      problems.push({
        path: `${path}.profile`,
        code: 'profile.wide',
        message: `The ${spec.profile.kind} takes more of the top than half its short side.`,
        read: `${lengthText(wide)} seen from above`,
        allowed: rangeText(0, shortSide_m / 2),
      });
    if (spec.kind !== 'finished') continue;
    warnings.push(...sharpArris(path, spec.faceHeight_m, spec.profile));
  }
  return { problems, warnings };
}

/** Face height and profile of an outline edge or a rim. */
export function checkFace(path: string, faceHeight_m: number, profile: EdgeProfile): Problem[] {
  const face = sizeProblems(
    `${path}.faceHeight`,
    'face height',
    faceHeight_m,
    SMALLEST_FACE_M,
    LARGEST_FACE_M,
  );
  if (face.length > 0) return face;
  switch (profile.kind) {
    case 'square eased':
    case 'round-over':
      return fits(`${path}.profile.radius`, `${profile.kind} radius`, profile.radius_m, faceHeight_m);
    case 'bevel':
      return fits(`${path}.profile.leg`, 'bevel leg', profile.leg_m, faceHeight_m);
    case 'bullnose':
      return [];
    case 'chiselled':
      if (profile.factor >= CHISELLED[0] && profile.factor <= CHISELLED[1]) return [];
      return [
        {
          path: `${path}.profile.factor`,
          code: 'profile.factor',
          message: 'A chiselled face has this many times the surface of a plain one.',
          read: String(profile.factor),
          allowed: `${CHISELLED[0]} to ${CHISELLED[1]} (shop default, common practice, no source)`,
        },
      ];
  }
}

function fits(path: string, word: string, value_m: number, faceHeight_m: number): Problem[] {
  if (value_m >= 0 && value_m <= faceHeight_m) return [];
  return [
    {
      path,
      code: 'profile.too-big',
      message: `The ${word} does not fit on a face ${lengthText(faceHeight_m)} high.`,
      read: lengthText(value_m),
      allowed: rangeText(0, faceHeight_m),
    },
  ];
}

export function sharpArris(path: string, faceHeight_m: number, profile: EdgeProfile): Problem[] {
  const radius = arrisRadius_m({ faceHeight_m, profile });
  if (radius >= SHARP_ARRIS_M - 1e-9) return [];
  return [
    {
      path: `${path}.profile`,
      code: 'profile.sharp',
      message: 'Resin draws back from an arris this sharp and leaves it thin or bare.',
      read: lengthText(radius),
      allowed: `${lengthText(SHARP_ARRIS_M)} or more (ISO 8501-3 grade P3)`,
    },
  ];
}

/** The first dozen names. */
function listed(names: readonly string[]): string {
  return names.length <= 12
    ? names.join(', ')
    : `${names.slice(0, 12).join(', ')} and ${names.length - 12} more`;
}
