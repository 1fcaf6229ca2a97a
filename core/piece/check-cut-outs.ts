/** Cut-outs: sizes, place inside the outline, distance to its edges and to each other. */

import type { Problem } from '#core/quantity/problem.ts';
import { distanceToSegment_m, segmentBounds } from './arc.ts';
import { INSIDE_RADIUS_M, insideCornerWarning } from './check-corners.ts';
import { checkFace, sharpArris } from './check-edges.ts';
import { placeProblems, radiusProblems, sizeProblems, slenderProblems } from './check-outline.ts';
import { leastAlong, pathsMeet } from './crossing.ts';
import { lengthText } from './length-text.ts';
import { cutOutPath } from './outline.ts';
import { bounds, distanceToPath_m, pointInside } from './path.ts';
import type { Bounds, CutOut, EdgeSpec, Path, Piece, Point, Segment } from './piece.ts';

const MOST_CUT_OUTS = 50;
/** A cut-out no larger than this is a tap or soap hole. */
const SMALL_HOLE_M = 0.06;
/** Wood left between a bowl's cut-out and an edge; all: common practice, no source. */
const FRONT_RAIL_M = 0.065;
const SIDE_RAIL_M = 0.1;
const BACK_RAIL_M = 0.05;
const SEAM_RAIL_M = 0.075;
/** Centre of a tap hole to an edge or to the bowl's rim: common practice, no source. */
const TAP_CENTRE_M = 0.06;
/** Points on a rim stand no further apart than this when the nearest one is looked for. */
const STEP_M = 0.02;

export function checkCutOuts(piece: Piece, outline: Path): { problems: Problem[]; warnings: Problem[] } {
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
    const own = checkCutOut(cutOut, index, piece.bodyThickness_m);
    problems.push(...own.problems);
    warnings.push(...own.warnings);
    if (own.problems.length > 0) return;
    const rim = cutOutPath(cutOut);
    const outside = checkInside(cutOut, index, rim, outline);
    if (outside.length === 0) {
      placed.push({ cutOut, rim, index });
      warnings.push(...checkRails(cutOut, index, rim, outline, piece));
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
      else warnings.push(...checkTapGap(a, b), ...checkTapGap(b, a));
    }
  });
  return { problems, warnings };
}

function checkCutOut(
  cutOut: CutOut,
  index: number,
  bodyThickness_m: number,
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
  if (cutOut.shape === 'round')
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
    if (cutOut.shape === 'rectangle' && cutOut.cornerRadius_m < INSIDE_RADIUS_M)
      warnings.push(
        insideCornerWarning(`${path}.cornerRadius`, cutOut.cornerRadius_m, ` ("${cutOut.name}")`),
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

function checkRails(cutOut: CutOut, index: number, rim: Path, outline: Path, piece: Piece): Problem[] {
  const small = isSmall(cutOut);
  const box = bounds(rim);
  const edges = new Map<string, Segment[]>();
  for (const s of outline) {
    if (boxGap_m(box, segmentBounds(s)) > SIDE_RAIL_M) continue;
    const edge = edges.get(s.edge);
    if (edge === undefined) edges.set(s.edge, [s]);
    else edge.push(s);
  }
  // One finding a rail: the nearest edge of each kind of rail.
  const found = new Map<string, { left: number; name: string; need: number }>();
  for (const [name, edge] of edges) {
    const rail = small ? { word: 'tap', need: TAP_CENTRE_M } : railOf(name, piece.edges[name]);
    const left = small ? distanceToPath_m(edge, cutOut.centre) : gap_m(rim, edge);
    const known = found.get(rail.word);
    if (left < rail.need - 1e-6 && (known === undefined || left < known.left))
      found.set(rail.word, { left, name, need: rail.need });
  }
  return [...found].map(([word, { left, name, need }]) => ({
    path: `cutOuts.${index}.centre`,
    code: small ? 'cut-out.tap-edge' : `cut-out.rail-${word}`,
    message: small
      ? `The centre of "${cutOut.name}" is close to the edge "${name}".`
      : `Little is left between "${cutOut.name}" and the edge "${name}".`,
    read: lengthText(left),
    allowed: `${lengthText(need)} or more (shop default, common practice, no source)`,
  }));
}

function boxGap_m(a: Bounds, b: Bounds): number {
  return Math.hypot(
    Math.max(0, a.minX_m - b.maxX_m, b.minX_m - a.maxX_m),
    Math.max(0, a.minY_m - b.maxY_m, b.minY_m - a.maxY_m),
  );
}

function railOf(name: string, spec: EdgeSpec | undefined): { word: string; need: number } {
  if (spec?.kind === 'seam') return { word: 'seam', need: SEAM_RAIL_M };
  if (name === 'front' || name === 'return front') return { word: 'front', need: FRONT_RAIL_M };
  if (name === 'left' || name === 'right' || name === 'return end')
    return { word: 'side', need: SIDE_RAIL_M };
  if (name === 'back') return { word: 'back', need: BACK_RAIL_M };
  // Rims and edges with a name of their own: seen edges as a front, walls as a back.
  return spec?.kind === 'wall' ? { word: 'back', need: BACK_RAIL_M } : { word: 'front', need: FRONT_RAIL_M };
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

function checkTapGap(tap: Placed, bowl: Placed): Problem[] {
  if (!isSmall(tap.cutOut) || isSmall(bowl.cutOut)) return [];
  const left = distanceToPath_m(bowl.rim, tap.cutOut.centre);
  if (left >= TAP_CENTRE_M - 1e-6) return [];
  return [
    {
      path: `cutOuts.${tap.index}.centre`,
      code: 'cut-out.tap-bowl',
      message: `The centre of "${tap.cutOut.name}" is close to the rim of "${bowl.cutOut.name}".`,
      read: lengthText(left),
      allowed: `${lengthText(TAP_CENTRE_M)} or more (shop default, common practice, no source)`,
    },
  ];
}

function isSmall(cutOut: CutOut): boolean {
  const size = cutOut.shape === 'round' ? cutOut.diameter_m : Math.max(cutOut.length_m, cutOut.width_m);
  return size <= SMALL_HOLE_M;
}

function between(a: Point, b: Point): number {
  return Math.hypot(a.x_m - b.x_m, a.y_m - b.y_m);
}
