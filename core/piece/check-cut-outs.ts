/** Cut-outs: sizes, place inside the outline, distance to its edges and to each other. */

import type { Problem } from '#core/quantity/problem.ts';
import { distanceToSegment_m, segmentBounds } from './arc.ts';
import { insideCornerWarning } from './check-corners.ts';
import { checkFace, sharpArris } from './check-edges.ts';
import { placeProblems, radiusProblems, sizeProblems, slenderProblems } from './check-outline.ts';
import { checkTemplate } from './check-template.ts';
import { leastAlong, pathsMeet } from './crossing.ts';
import { cutOutSize } from './cut-out-size.ts';
import { type Facing, facings } from './facing.ts';
import { lengthText } from './length-text.ts';
import { cutOutPath } from './outline.ts';
import { bounds, distanceToPath_m, pointInside } from './path.ts';
import type { Bounds, CutOut, EdgeSpec, Path, Piece, Point, Segment } from './piece.ts';
import { PIECE_RULES, type PieceRules, ruleText } from './piece-rules.ts';

const MOST_CUT_OUTS = 50;
/** A cut-out no larger than this is a tap or soap hole. */
const SMALL_HOLE_M = 0.06;
/** Points on a rim stand no further apart than this when the nearest one is looked for. */
const STEP_M = 0.02;

export function checkCutOuts(
  piece: Piece,
  outline: Path,
  rules: PieceRules = PIECE_RULES,
): { problems: Problem[]; warnings: Problem[] } {
  const looks = facings(piece.outline);
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  if (piece.cutOuts.length > MOST_CUT_OUTS)
    return {
      problems: [
        {
          path: 'cutOuts',
          code: 'cut-out.count',
          message: 'There are too many cut-outs.',
          read: String(piece.cutOuts.length),
          allowed: `0 to ${MOST_CUT_OUTS}`,
        },
      ],
      warnings,
    };
  const placed: Placed[] = [];
  piece.cutOuts.forEach((cutOut, index) => {
    const own = checkCutOut(cutOut, index, piece.bodyThickness_m, rules);
    problems.push(...own.problems);
    warnings.push(...own.warnings);
    if (own.problems.length > 0) return;
    const rim = cutOutPath(cutOut);
    const outside = checkInside(cutOut, index, rim, outline);
    if (outside.length === 0) {
      placed.push({ cutOut, rim, index });
      warnings.push(...checkRails(cutOut, index, rim, outline, piece, rules, looks));
    }
    problems.push(...outside);
  });
  placed.forEach((a, i) => {
    for (const b of placed.slice(0, i)) {
      if (overlap(a.rim, b.rim))
        problems.push({
          path: `cutOuts.${a.index}.centre`,
          code: 'cut-out.overlap',
          message: `"${a.cutOut.name}" and "${b.cutOut.name}" touch or overlap.`,
          read: `centres ${lengthText(between(a.cutOut.centre, b.cutOut.centre))} apart`,
          allowed: 'wood between them',
        });
      else
        warnings.push(...checkTapGap(a, b, rules), ...checkTapGap(b, a, rules), ...checkBetween(a, b, rules));
    }
  });
  return { problems, warnings };
}

function checkCutOut(
  cutOut: CutOut,
  index: number,
  bodyThickness_m: number,
  rules: PieceRules,
): { problems: Problem[]; warnings: Problem[] } {
  const path = `cutOuts.${index}`;
  const problems = placeProblems(`${path}.centre`, cutOut.centre.x_m, cutOut.centre.y_m);
  const warnings: Problem[] = [];
  if (!Number.isFinite(cutOut.rotation_rad ?? 0))
    problems.push({
      path: `${path}.rotation`,
      code: 'angle.range',
      message: 'The rotation is no angle.',
      read: String(cutOut.rotation_rad),
      allowed: 'any finite angle',
    });
  if (cutOut.shape === 'template') {
    const own = checkTemplate(cutOut, path, rules);
    problems.push(...own.problems);
    warnings.push(...own.warnings);
  } else if (cutOut.shape === 'round')
    problems.push(...sizeProblems(`${path}.diameter`, 'diameter', cutOut.diameter_m, 0.003));
  else {
    const { length_m, width_m } = cutOut;
    const sizes = [
      ...sizeProblems(`${path}.length`, 'length', length_m, 0.003),
      ...sizeProblems(`${path}.width`, 'width', width_m, 0.003),
    ];
    problems.push(...sizes);
    if (sizes.length === 0)
      problems.push(
        ...(cutOut.shape === 'oval'
          ? slenderProblems(path, length_m, width_m)
          : radiusProblems(`${path}.cornerRadius`, cutOut.cornerRadius_m, length_m, width_m)),
      );
    if (cutOut.shape === 'rectangle' && cutOut.cornerRadius_m < rules.insideRadius_m)
      warnings.push(
        insideCornerWarning(`${path}.cornerRadius`, cutOut.cornerRadius_m, ` ("${cutOut.name}")`, rules),
      );
  }
  const faceHeight_m = cutOut.faceHeight_m ?? bodyThickness_m;
  // A body thickness out of range is told once, at the body.
  if (cutOut.faceHeight_m !== undefined || cutOut.profile !== undefined) {
    const face = checkFace(path, faceHeight_m, cutOut.profile ?? { kind: 'bullnose' });
    problems.push(...face);
    if (face.length === 0 && cutOut.profile !== undefined && cutOut.rim === 'wrapped')
      warnings.push(...sharpArris(path, faceHeight_m, cutOut.profile));
  }
  return { problems, warnings };
}

/** Says by how much the cut-out reaches over the edge it leaves furthest. */
function checkInside(cutOut: CutOut, index: number, rim: Path, outline: Path): Problem[] {
  const met = pathsMeet(rim, outline);
  const inside = pointInside(outline, rim[0]!.from);
  if (met === undefined && inside && !pointInside(rim, outline[0]!.from)) return [];
  const beyond = leastAlong(rim, STEP_M, (p) =>
    pointInside(outline, p) ? distanceToPath_m(outline, p) : -distanceToPath_m(outline, p),
  );
  const over = Math.max(0, -beyond.value);
  const edge = nearestEdge(outline, beyond.at);
  const box = bounds(outline);
  const problem = {
    path: `cutOuts.${index}.centre`,
    allowed: `wholly inside the outline (${lengthText(box.maxX_m - box.minX_m)} by ${lengthText(box.maxY_m - box.minY_m)})`,
  };
  if (met === undefined)
    return [
      {
        ...problem,
        code: 'cut-out.outside',
        message: pointInside(rim, outline[0]!.from)
          ? `"${cutOut.name}" is larger than the piece.`
          : `"${cutOut.name}" lies outside the piece.`,
        read: `up to ${lengthText(over)} beyond the edge "${edge}"`,
      },
    ];
  const touches = over < 1e-5;
  return [
    {
      ...problem,
      code: 'cut-out.over-edge',
      message: touches
        ? `"${cutOut.name}" touches the edge "${nearestEdge(outline, met)}".`
        : `"${cutOut.name}" reaches over the edge "${edge}" by ${lengthText(over)}.`,
      read: touches ? 'nothing left' : `${lengthText(over)} over`,
    },
  ];
}

function nearestEdge(outline: Path, p: Point): string {
  let nearest = outline[0]!;
  for (const s of outline) if (distanceToSegment_m(s, p) < distanceToSegment_m(nearest, p)) nearest = s;
  return nearest.edge;
}

function checkRails(
  cutOut: CutOut,
  index: number,
  rim: Path,
  outline: Path,
  piece: Piece,
  rules: PieceRules,
  looks: ReadonlyMap<string, Facing>,
): Problem[] {
  const furthest_m = Math.max(
    rules.frontRail_m,
    rules.sideRail_m,
    rules.backRail_m,
    rules.seamRail_m,
    rules.tapCentre_m,
  );
  const small = isSmall(cutOut);
  const box = bounds(rim);
  const edges = new Map<string, Segment[]>();
  for (const s of outline) {
    if (boxGap_m(box, segmentBounds(s)) > furthest_m) continue;
    const edge = edges.get(s.edge);
    if (edge === undefined) edges.set(s.edge, [s]);
    else edge.push(s);
  }
  // One finding a rail: the nearest edge of each kind of rail.
  const found = new Map<string, { left: number; name: string; rule: Rail }>();
  for (const [name, edge] of edges) {
    const rule = small
      ? 'tapCentre_m'
      : railOf(piece.edges[name]?.countsAs ?? looks.get(name) ?? name, piece.edges[name]);
    const word = RAIL_WORDS[rule];
    const left = small ? distanceToPath_m(edge, cutOut.centre) : gap_m(rim, edge);
    const known = found.get(word);
    if (left < rules[rule] - 1e-6 && (known === undefined || left < known.left))
      found.set(word, { left, name, rule });
  }
  return [...found].map(([word, { left, name, rule }]) => ({
    path: `cutOuts.${index}.centre`,
    code: small ? 'cut-out.tap-edge' : `cut-out.rail-${word}`,
    message: small
      ? `The centre of "${cutOut.name}" is close to the edge "${name}".`
      : `Little is left between "${cutOut.name}" and the edge "${name}".`,
    read: lengthText(left),
    allowed: ruleText(rules, rule),
  }));
}

function boxGap_m(a: Bounds, b: Bounds): number {
  return Math.hypot(
    Math.max(0, a.minX_m - b.maxX_m, b.minX_m - a.maxX_m),
    Math.max(0, a.minY_m - b.maxY_m, b.minY_m - a.maxY_m),
  );
}

type Rail = 'frontRail_m' | 'sideRail_m' | 'backRail_m' | 'seamRail_m' | 'tapCentre_m';
const RAIL_WORDS: Readonly<Record<Rail, string>> = {
  frontRail_m: 'front',
  sideRail_m: 'side',
  backRail_m: 'back',
  seamRail_m: 'seam',
  tapCentre_m: 'tap',
};

/** `name`: of the edge, or the side it looks to where its name does not say it. */
function railOf(name: string, spec: EdgeSpec | undefined): Rail {
  if (spec?.kind === 'seam') return 'seamRail_m';
  if (name === 'front' || name === 'return front') return 'frontRail_m';
  if (name === 'left' || name === 'right' || name === 'return end') return 'sideRail_m';
  if (name === 'back') return 'backRail_m';
  // Rims and edges aslant: seen edges as a front, walls as a back.
  return spec?.kind === 'wall' ? 'backRail_m' : 'frontRail_m';
}

/** Least distance between a rim and an edge that do not meet, m. */
function gap_m(rim: Path, edge: Path): number {
  let least = leastAlong(rim, STEP_M, (p) => distanceToPath_m(edge, p)).value;
  for (const s of edge) least = Math.min(least, distanceToPath_m(rim, s.from), distanceToPath_m(rim, s.to));
  return least;
}

function overlap(a: Path, b: Path): boolean {
  return pathsMeet(a, b) !== undefined || pointInside(a, b[0]!.from) || pointInside(b, a[0]!.from);
}

interface Placed {
  readonly cutOut: CutOut;
  readonly rim: Path;
  readonly index: number;
}

function checkTapGap(tap: Placed, bowl: Placed, rules: PieceRules): Problem[] {
  if (!isSmall(tap.cutOut) || isSmall(bowl.cutOut)) return [];
  const left = distanceToPath_m(bowl.rim, tap.cutOut.centre);
  if (left >= rules.tapCentre_m - 1e-6) return [];
  return [
    {
      path: `cutOuts.${tap.index}.centre`,
      code: 'cut-out.tap-bowl',
      message: `The centre of "${tap.cutOut.name}" is close to the rim of "${bowl.cutOut.name}".`,
      read: lengthText(left),
      allowed: ruleText(rules, 'tapCentre_m'),
    },
  ];
}

/** Two bowls with little wood between them, two tap holes closer than their nuts and taps need. */
function checkBetween(a: Placed, b: Placed, rules: PieceRules): Problem[] {
  const small = isSmall(a.cutOut);
  if (small !== isSmall(b.cutOut)) return [];
  const rule = small ? 'tapCentre_m' : 'betweenBowls_m';
  const left = small ? between(a.cutOut.centre, b.cutOut.centre) : gap_m(a.rim, b.rim);
  if (left >= rules[rule] - 1e-6) return [];
  return [
    {
      path: `cutOuts.${a.index}.centre`,
      code: small ? 'cut-out.tap-tap' : 'cut-out.between',
      message: small
        ? `The centres of "${a.cutOut.name}" and "${b.cutOut.name}" are close together.`
        : `Little is left between "${a.cutOut.name}" and "${b.cutOut.name}".`,
      read: lengthText(left),
      allowed: ruleText(rules, rule),
    },
  ];
}

function isSmall(cutOut: CutOut): boolean {
  const { length_m, width_m } = cutOutSize(cutOut);
  return Math.max(length_m, width_m) <= SMALL_HOLE_M;
}

function between(a: Point, b: Point): number {
  return Math.hypot(a.x_m - b.x_m, a.y_m - b.y_m);
}
