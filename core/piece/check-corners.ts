/** Inside corners of an outline that are tighter than a shop would cut them. */

import type { Problem } from '#core/quantity/problem.ts';
import { circleOf } from './arc.ts';
import { outlineCorners } from './corners.ts';
import { trims } from './fillet.ts';
import { lengthText, pointText } from './length-text.ts';
import { cornerTurn_rad } from './path.ts';
import type { Outline, Path, Point } from './piece.ts';
import { PIECE_RULES, type PieceRules, ruleText } from './piece-rules.ts';

/** Half an inch, taken a little freely (common practice, no source). */
export const INSIDE_RADIUS_M = PIECE_RULES.insideRadius_m;
/** Turns flatter than this (5 degrees) start no crack. */
export const FLAT_RAD = (5 * Math.PI) / 180;

export function insideCornerWarning(
  path: string,
  radius_m: number,
  where: string,
  rules: PieceRules = PIECE_RULES,
): Problem {
  return {
    path,
    code: 'corner.inside-tight',
    message: `An inside corner this tight is where a crack starts${where}.`,
    read: lengthText(radius_m),
    allowed: ruleText(rules, 'insideRadius_m'),
  };
}

/** More findings than this say no more than the first. */
const MOST_FINDINGS = 20;

/** Warnings, the first twenty of them; path must be the outline's own. */
export function checkCorners(outline: Outline, path: Path, rules: PieceRules = PIECE_RULES): Problem[] {
  const all = tightCorners(outline, path, rules);
  if (all.length <= MOST_FINDINGS) return all;
  const last = all[MOST_FINDINGS - 1]!;
  const more = `${last.message} ${all.length - MOST_FINDINGS} more corners are as tight.`;
  return [...all.slice(0, MOST_FINDINGS - 1), { ...last, message: more }];
}

function tightCorners(outline: Outline, path: Path, rules: PieceRules): Problem[] {
  const least_m = rules.insideRadius_m;
  switch (outline.shape) {
    case 'rectangle':
    case 'round':
    case 'ellipse':
      return [];
    case 'ell': {
      const radius = outline.insideRadius_m ?? 0;
      return radius < least_m ? [insideCornerWarning('outline.insideRadius', radius, '', rules)] : [];
    }
    case 'polygon': {
      const corners = outlineCorners(outline);
      const turns = trims(corners).map((t) => t.turn_rad);
      const round = Math.sign(turns.reduce((sum, t) => sum + t, 0));
      return corners.flatMap((corner, i) =>
        turns[i]! * round < -FLAT_RAD && corner.radius_m < least_m
          ? [insideCornerWarning(`outline.corners.${i}.radius`, corner.radius_m, '', rules)]
          : [],
      );
    }
    case 'path':
      return path.flatMap((s, i) => {
        const found: Problem[] = [];
        const circle = circleOf(s);
        if (circle !== undefined && s.bulge < 0 && circle.radius_m < least_m)
          found.push(insideCornerWarning('outline.segments', circle.radius_m, at(s.from), rules));
        if (cornerTurn_rad(s, path[(i + 1) % path.length]!) < -FLAT_RAD)
          found.push(insideCornerWarning('outline.segments', 0, at(s.to), rules));
        return found;
      });
  }
}

function at(p: Point): string {
  return ` (${pointText(p.x_m, p.y_m)})`;
}
