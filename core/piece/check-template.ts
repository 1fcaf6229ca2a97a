/** Whether the outline of a full-size template is one hole that can be cut. */
import type { Problem } from '#core/quantity/problem.ts';
import { circleOf } from './arc.ts';
import { FLAT_RAD, insideCornerWarning } from './check-corners.ts';
import { checkOutline, sizeProblems } from './check-outline.ts';
import { selfMeeting } from './crossing.ts';
import { cutOutSize } from './cut-out-size.ts';
import { pointText } from './length-text.ts';
import { outlinePath } from './outline.ts';
import { cornerTurn_rad, pathArea_m2 } from './path.ts';
import type { CutOut, Path } from './piece.ts';
import { PIECE_RULES, type PieceRules } from './piece-rules.ts';

const LEAST_M = 0.003;
/** Least area of a hole, m2: half the square of its smallest size. */
const LEAST_AREA_M2 = LEAST_M ** 2 / 2;

/** What keeps it from being cut, and corners tighter than a shop would cut them. `path`: the cut-out's own. */
export function checkTemplate(
  cutOut: Extract<CutOut, { readonly shape: 'template' }>,
  path: string,
  rules: PieceRules = PIECE_RULES,
): { problems: Problem[]; warnings: Problem[] } {
  const shape = checkOutline(cutOut.outline);
  if (shape.length > 0)
    return {
      problems: shape.map((problem) => ({
        ...problem,
        path: `${path}.${problem.path}`,
        message: `Template "${cutOut.name}": ${problem.message.charAt(0).toLowerCase()}${problem.message.slice(1)}`,
      })),
      warnings: [],
    };
  const rim = outlinePath(cutOut.outline);
  const met = selfMeeting(rim);
  if (met !== undefined)
    return {
      problems: [
        {
          path: `${path}.outline`,
          code: 'cut-out.crosses',
          message: `The template "${cutOut.name}" touches or crosses itself.`,
          read: pointText(met.at.x_m, met.at.y_m),
          allowed: 'an outline that goes round once without touching itself',
        },
      ],
      warnings: [],
    };
  const { length_m, width_m } = cutOutSize(cutOut);
  const problems = [
    ...sizeProblems(`${path}.outline`, `length of the template "${cutOut.name}"`, length_m, LEAST_M),
    ...sizeProblems(`${path}.outline`, `width of the template "${cutOut.name}"`, width_m, LEAST_M),
  ];
  if (problems.length === 0 && pathArea_m2(rim) < LEAST_AREA_M2)
    problems.push({
      path: `${path}.outline`,
      code: 'cut-out.no-area',
      message: `The template "${cutOut.name}" encloses no area.`,
      read: `${(pathArea_m2(rim) * 1e6).toFixed(2)} mm2`,
      allowed: `${(LEAST_AREA_M2 * 1e6).toFixed(1)} mm2 or more`,
    });
  const tightest_m = tightestCorner_m(rim);
  return {
    problems,
    warnings:
      problems.length === 0 && tightest_m < rules.insideRadius_m
        ? [insideCornerWarning(`${path}.outline`, tightest_m, ` ("${cutOut.name}")`, rules)]
        : [],
  };
}

/** A corner pointing out of the hole is an inside corner of the top: 0 where one is sharp, else its least radius. */
function tightestCorner_m(rim: Path): number {
  let least = Number.POSITIVE_INFINITY;
  rim.forEach((s, i) => {
    const circle = circleOf(s);
    if (circle !== undefined && s.bulge > 0) least = Math.min(least, circle.radius_m);
    if (cornerTurn_rad(s, rim[(i + 1) % rim.length]!) > FLAT_RAD) least = 0;
  });
  return least;
}
