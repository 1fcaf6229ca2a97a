/** Inside corners of an outline that are tighter than a shop would cut them. */

import type { Problem } from '#core/quantity/problem.ts';
import { circleOf } from './arc.ts';
import { outlineCorners } from './corners.ts';
import { trims } from './fillet.ts';
import { lengthText, pointText } from './length-text.ts';
import { cornerTurn_rad } from './path.ts';
import type { Outline, Path, Point } from './piece.ts';

/** Half an inch: a tighter inside corner starts cracks (common practice, no source). */
export const INSIDE_RADIUS_M = 0.0125;
/** Turns flatter than this (5 degrees) start no crack. */
const FLAT_RAD = (5 * Math.PI) / 180;

export function insideCornerWarning(path: string, radius_m: number, where: string): Problem {
  return {
    path,
    code: 'corner.inside-tight',
    message: `An inside corner this tight is where a crack starts${where}.`,
    read: lengthText(radius_m),
    allowed: '13 mm (1/2 in) or more (shop default, common practice, no source)',
  };
}

/** More findings than this say no more than the first. */
const MOST_FINDINGS = 20;

/** Warnings, the first twenty of them; path must be the outline's own. */
export function checkCorners(outline: Outline, path: Path): Problem[] {
  const all = tightCorners(outline, path);
  if (all.length <= MOST_FINDINGS) return all;
  const last = all[MOST_FINDINGS - 1]!;
  const more = `${last.message} ${all.length - MOST_FINDINGS} more corners are as tight.`;
  return [...all.slice(0, MOST_FINDINGS - 1), { ...last, message: more }];
}

function tightCorners(outline: Outline, path: Path): Problem[] {
  switch (outline.shape) {
    case 'rectangle':
    case 'round':
    case 'ellipse':
      return [];
    case 'ell': {
      const radius = outline.insideRadius_m ?? 0;
      return radius < INSIDE_RADIUS_M ? [insideCornerWarning('outline.insideRadius', radius, '')] : [];
    }
    case 'polygon': {
      const corners = outlineCorners(outline);
      const turns = trims(corners).map((t) => t.turn_rad);
      const round = Math.sign(turns.reduce((sum, t) => sum + t, 0));
      return corners.flatMap((corner, i) =>
        turns[i]! * round < -FLAT_RAD && corner.radius_m < INSIDE_RADIUS_M
          ? [insideCornerWarning(`outline.corners.${i}.radius`, corner.radius_m, '')]
          : [],
      );
    }
    case 'path':
      return path.flatMap((s, i) => {
        const found: Problem[] = [];
        const circle = circleOf(s);
        if (circle !== undefined && s.bulge < 0 && circle.radius_m < INSIDE_RADIUS_M)
          found.push(insideCornerWarning('outline.segments', circle.radius_m, at(s.from)));
        if (cornerTurn_rad(s, path[(i + 1) % path.length]!) < -FLAT_RAD)
          found.push(insideCornerWarning('outline.segments', 0, at(s.to)));
        return found;
      });
  }
}

function at(p: Point): string {
  return ` (${pointText(p.x_m, p.y_m)})`;
}
