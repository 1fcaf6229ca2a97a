/** Whether an outline's sizes can be built at all, said in the words of the form it was typed in. */

import type { Problem } from '#core/quantity/problem.ts';
import { outlineCorners } from './corners.ts';
import { type Corner, type Misfit, misfits, trims } from './fillet.ts';
import { lengthText, pointText, rangeText } from './length-text.ts';
import type { EllOutline, Outline, PathOutline, PolygonOutline } from './piece.ts';

export const SMALLEST_M = 0.01;
export const LARGEST_M = 10;
/** More corners or steps than this are a drawing, not a top. */
export const MOST_SEGMENTS = 2000;
/** A path whose end misses its start by no more than this is closed for the person who typed it. */
export const CLOSING_M = 0.0001;
/** Largest bulge: an arc of 337 degrees. */
const MOST_BULGE = 10;
/** Typed coordinates stay within this of the origin. */
const FAR_M = 100;

/** A size between 10 mm and 10 m, or the problem with it. */
export function sizeProblems(
  path: string,
  word: string,
  value_m: number,
  min_m = SMALLEST_M,
  max_m = LARGEST_M,
): Problem[] {
  if (value_m >= min_m && value_m <= max_m) return [];
  return [
    {
      path,
      code: 'length.range',
      message: `The ${word} is out of range.`,
      read: lengthText(value_m),
      allowed: rangeText(min_m, max_m),
    },
  ];
}

/** Everything that keeps this outline from being built; empty when outlinePath will accept it. */
export function checkOutline(outline: Outline): Problem[] {
  switch (outline.shape) {
    case 'rectangle': {
      const { length_m, width_m, cornerRadius_m: radius = 0 } = outline;
      const sizes = [
        ...sizeProblems('outline.length', 'length', length_m),
        ...sizeProblems('outline.width', 'width', width_m),
      ];
      return sizes.length > 0 ? sizes : radiusProblems('outline.cornerRadius', radius, length_m, width_m);
    }
    case 'round':
      return sizeProblems('outline.diameter', 'diameter', outline.diameter_m);
    case 'ellipse': {
      const sizes = [
        ...sizeProblems('outline.length', 'length', outline.length_m),
        ...sizeProblems('outline.width', 'width', outline.width_m),
      ];
      return sizes.length > 0 ? sizes : slenderProblems('outline', outline.length_m, outline.width_m);
    }
    case 'ell':
      return checkEll(outline);
    case 'polygon':
      return checkPolygon(outline);
    case 'path':
      return checkPath(outline);
  }
}

/** Corner radius of a rectangle: up to half its short side. */
export function radiusProblems(path: string, radius_m: number, length_m: number, width_m: number): Problem[] {
  const most = Math.min(length_m, width_m) / 2;
  if (radius_m >= 0 && radius_m <= most + 1e-9) return [];
  return [
    {
      path,
      code: 'corner.too-big',
      message: 'The corner radius does not fit the sides.',
      read: lengthText(radius_m),
      allowed: rangeText(0, most),
    },
  ];
}

/** An oval flatter than this cannot be cut with arcs to the stated tolerance. */
export function slenderProblems(path: string, length_m: number, width_m: number): Problem[] {
  const ratio = Math.max(length_m, width_m) / Math.min(length_m, width_m);
  if (ratio <= 50) return [];
  return [
    {
      path: `${path}.${width_m < length_m ? 'width' : 'length'}`,
      code: 'oval.slender',
      message: 'The oval is too slender.',
      read: `${ratio.toFixed(0)} : 1`,
      allowed: 'up to 50 : 1',
    },
  ];
}

function checkEll(outline: EllOutline): Problem[] {
  const { length_m, width_m, returnLength_m, returnWidth_m } = outline;
  const problems = [
    ...sizeProblems('outline.length', 'length', length_m),
    ...sizeProblems('outline.width', 'width of the main leg', width_m),
    ...sizeProblems('outline.returnLength', 'return length', returnLength_m),
    ...sizeProblems('outline.returnWidth', 'return width', returnWidth_m),
    ...radiusSign('outline.cornerRadius', outline.cornerRadius_m ?? 0),
    ...radiusSign('outline.insideRadius', outline.insideRadius_m ?? 0),
  ];
  if (problems.length > 0) return problems;
  if (returnLength_m < width_m + SMALLEST_M)
    problems.push({
      path: 'outline.returnLength',
      code: 'ell.return-short',
      message: 'The return, measured over everything, must reach past the main leg.',
      read: lengthText(returnLength_m),
      allowed: rangeText(width_m + SMALLEST_M, LARGEST_M),
    });
  if (returnWidth_m > length_m - SMALLEST_M)
    problems.push({
      path: 'outline.returnWidth',
      code: 'ell.return-wide',
      message: 'The return must be narrower than the whole length.',
      read: lengthText(returnWidth_m),
      allowed: rangeText(SMALLEST_M, length_m - SMALLEST_M),
    });
  if (problems.length > 0) return problems;
  const corners = outlineCorners(outline);
  const inside = outline.side === 'left' ? 0 : 1;
  return worstFirst(misfits(corners), corners, (corner) =>
    corner === inside ? 'outline.insideRadius' : 'outline.cornerRadius',
  ).map((found) => misfitProblem(found.path, found, corners[found.side]!.edge));
}

function checkPolygon(outline: PolygonOutline): Problem[] {
  const count = outline.corners.length;
  const tooMany = countProblems('outline.corners', 'corners', count, 3);
  if (tooMany.length > 0) return tooMany;
  const problems = outline.corners.flatMap((c, i) => [
    ...placeProblems(`outline.corners.${i}`, c.x_m, c.y_m),
    ...radiusSign(`outline.corners.${i}.radius`, c.radius_m ?? 0),
  ]);
  if (problems.length > 0) return problems;
  const corners = outlineCorners(outline);
  for (let i = 0; i < count; i += 1) {
    const a = corners[i]!;
    const b = corners[(i + 1) % count]!;
    const side = Math.hypot(b.x_m - a.x_m, b.y_m - a.y_m);
    if (side < CLOSING_M) problems.push(shortProblem(`outline.corners.${(i + 1) % count}`, side));
  }
  if (problems.length > 0) return problems;
  trims(corners).forEach(({ turn_rad }, i) => {
    if (Math.PI - Math.abs(turn_rad) < 1e-6)
      problems.push({
        path: `outline.corners.${i}`,
        code: 'outline.doubles-back',
        message: 'The outline runs back on itself at this corner.',
        read: pointText(corners[i]!.x_m, corners[i]!.y_m),
        allowed: 'a corner with some width',
      });
  });
  if (problems.length > 0) return problems;
  return worstFirst(misfits(corners), corners, (corner) => `outline.corners.${corner}.radius`).map((found) =>
    misfitProblem(found.path, found, corners[found.side]!.edge),
  );
}

function checkPath(outline: PathOutline): Problem[] {
  const count = outline.segments.length;
  const tooMany = countProblems('outline.segments', 'lines and arcs', count, 2);
  if (tooMany.length > 0) return tooMany;
  const problems = placeProblems('outline.start', outline.start.x_m, outline.start.y_m);
  let from = outline.start;
  outline.segments.forEach((step, i) => {
    const at = `outline.segments.${i}`;
    problems.push(...placeProblems(`${at}.to`, step.to.x_m, step.to.y_m));
    const run = Math.hypot(step.to.x_m - from.x_m, step.to.y_m - from.y_m);
    if (run < CLOSING_M) problems.push(shortProblem(`${at}.to`, run));
    if (step.kind === 'arc' && !(Math.abs(step.bulge) <= MOST_BULGE))
      problems.push({
        path: `${at}.bulge`,
        code: 'arc.bulge',
        message: 'The arc bulges too far.',
        read: String(step.bulge),
        allowed: `-${MOST_BULGE} to ${MOST_BULGE} (tangent of a quarter of its angle)`,
      });
    if (step.edge?.trim() === '')
      problems.push({
        path: `${at}.edge`,
        code: 'edge.nameless',
        message: 'The edge has an empty name.',
        read: step.edge,
        allowed: 'a name, or none for "edge n"',
      });
    from = step.to;
  });
  const gap = Math.hypot(from.x_m - outline.start.x_m, from.y_m - outline.start.y_m);
  if (problems.length === 0 && !(gap <= CLOSING_M))
    problems.push({
      path: `outline.segments.${count - 1}.to`,
      code: 'outline.open',
      message: `The outline does not close: its end misses its start by ${lengthText(gap)}.`,
      read: pointText(from.x_m, from.y_m),
      allowed: pointText(outline.start.x_m, outline.start.y_m),
    });
  return problems;
}

function countProblems(path: string, word: string, count: number, least: number): Problem[] {
  if (count >= least && count <= MOST_SEGMENTS) return [];
  return [
    {
      path,
      code: 'outline.count',
      message: count < least ? `The outline has too few ${word}.` : `The outline has too many ${word}.`,
      read: String(count),
      allowed: `${least} to ${MOST_SEGMENTS}`,
    },
  ];
}

export function placeProblems(path: string, x_m: number, y_m: number): Problem[] {
  if (Math.abs(x_m) <= FAR_M && Math.abs(y_m) <= FAR_M) return [];
  return [
    {
      path,
      code: 'point.range',
      message: 'The point is out of range.',
      read: pointText(x_m, y_m),
      allowed: `within ${lengthText(FAR_M)} of the origin`,
    },
  ];
}

function radiusSign(path: string, radius_m: number): Problem[] {
  return sizeProblems(path, 'corner radius', radius_m, 0, LARGEST_M);
}

function shortProblem(path: string, run_m: number): Problem {
  return {
    path,
    code: 'outline.repeat',
    message: 'Two neighbouring points are the same.',
    read: `${lengthText(run_m)} apart`,
    allowed: `${lengthText(CLOSING_M)} apart or more`,
  };
}

/** The worst side for each field it is blamed on: the end whose rounding takes more. */
function worstFirst(
  found: readonly Misfit[],
  corners: readonly Corner[],
  pathOf: (corner: number) => string,
): (Misfit & { readonly path: string })[] {
  const cut = trims(corners);
  const worst = new Map<string, Misfit & { readonly path: string }>();
  for (const misfit of found) {
    const next = (misfit.side + 1) % corners.length;
    const path = pathOf(cut[next]!.trim_m > cut[misfit.side]!.trim_m ? next : misfit.side);
    const known = worst.get(path);
    if (known === undefined || misfit.need_m - misfit.have_m > known.need_m - known.have_m)
      worst.set(path, { ...misfit, path });
  }
  return [...worst.values()];
}

function misfitProblem(path: string, { need_m, have_m }: Misfit, side: string): Problem {
  return {
    path,
    code: 'corner.too-big',
    message: `The roundings at the two ends of "${side}" need more than its length.`,
    read: `${lengthText(need_m)} needed`,
    allowed: `up to ${lengthText(have_m)}`,
  };
}
