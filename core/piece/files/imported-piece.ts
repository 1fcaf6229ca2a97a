/** From an imported drawing to the outline of a piece, or to a cut-out. */

import { bad, good, type Result } from '#core/quantity/problem.ts';
import { circleOf, turning_rad } from '../arc.ts';
import { MOST_SEGMENTS } from '../check-outline.ts';
import { cutOutPath } from '../outline.ts';
import { bounds, centroid, distanceToPath_m, flattenPath, movePath, pathArea_m2 } from '../path.ts';
import type { CutOut, CutOutShape, Path, PathOutline, Point } from '../piece.ts';
import type { ImportedDrawing } from './imported-drawing.ts';

/** The outline with its lower left corner on the origin, as every other outline stands. Edges are named in order. */
export function importedOutline(drawing: ImportedDrawing): Result<PathOutline> {
  const { path } = drawing.outline;
  if (path.length > MOST_SEGMENTS)
    return bad({
      path: 'outline',
      code: 'file.too-many-parts',
      message: 'The outline has too many lines and arcs for a piece.',
      read: String(path.length),
      allowed: `up to ${MOST_SEGMENTS}; read it again with a wider tolerance`,
    });
  const { minX_m, minY_m } = drawing.bounds;
  return good(pathOutline(movePath(path, 0, { x_m: -minX_m, y_m: -minY_m })));
}

export interface ImportedCutOut {
  /** The template's outline, its middle at `at`. */
  readonly path: Path;
  /** The same as one of the shop's own shapes, or as it was drawn. */
  readonly cutOut: CutOut;
  /** Largest distance between the two, m. */
  readonly strays_m: number;
}

/** A template is one of the shop's shapes when it strays no further than this, m: what a steel tape shows. */
export const SAME_SHAPE_M = 0.0003;

/**
 * A full-size template as a cut-out with the middle of its box at `at`: a round, an oval or a rectangle with rounded
 * corners, turned as drawn; any other shape line by line and arc by arc.
 */
export function importedCutOut(
  drawing: ImportedDrawing,
  at: Point,
  name = 'template',
): Result<ImportedCutOut> {
  const middle = middleOf(drawing.outline.path);
  const path = movePath(drawing.outline.path, 0, { x_m: at.x_m - middle.x_m, y_m: at.y_m - middle.y_m });
  const points = flattenPath(path, 1e-4);
  let best: { cutOut: CutOut; strays_m: number } | undefined;
  for (const rotation_rad of directions(path)) {
    for (const shape of candidates(path, rotation_rad)) {
      const cutOut: CutOut = { ...shape, name, centre: at, rotation_rad, rim: 'dammed' };
      const rim = cutOutPath(cutOut);
      const strays_m = Math.max(
        ...points.map((p) => distanceToPath_m(rim, p)),
        ...flattenPath(rim, 1e-4).map((p) => distanceToPath_m(path, p)),
      );
      if (best === undefined || strays_m < best.strays_m - 1e-9) best = { cutOut, strays_m };
    }
  }
  if (best !== undefined && best.strays_m <= SAME_SHAPE_M) return good({ path, ...best });
  if (path.length > MOST_SEGMENTS)
    return bad({
      path: 'cutOuts',
      code: 'file.too-many-parts',
      message: 'The template has too many lines and arcs for a cut-out.',
      read: String(path.length),
      allowed: `up to ${MOST_SEGMENTS}; read it again with a wider tolerance`,
    });
  const outline = pathOutline(movePath(path, 0, { x_m: -at.x_m, y_m: -at.y_m }));
  return good({
    path,
    cutOut: { shape: 'template', outline, name, centre: at, rim: 'dammed' },
    strays_m: 0,
  });
}

function middleOf(path: Path): Point {
  const box = bounds(path);
  return { x_m: (box.minX_m + box.maxX_m) / 2, y_m: (box.minY_m + box.maxY_m) / 2 };
}

function pathOutline(path: Path): PathOutline {
  return {
    shape: 'path',
    start: path[0]!.from,
    segments: path.map((s) =>
      s.bulge === 0 ? { kind: 'line', to: s.to } : { kind: 'arc', to: s.to, bulge: s.bulge },
    ),
  };
}

/** Ways the shape may be turned: as drawn first, along its long sides, along its longest axis. */
function directions(path: Path): number[] {
  const sides = [...path]
    .filter((s) => s.bulge === 0)
    .map((s) => ({
      angle: Math.atan2(s.to.y_m - s.from.y_m, s.to.x_m - s.from.x_m),
      long: Math.hypot(s.to.x_m - s.from.x_m, s.to.y_m - s.from.y_m),
    }))
    .sort((a, b) => b.long - a.long)
    .slice(0, 4)
    .map((s) => s.angle);
  const quarter = (angle: number): number => angle - Math.PI * Math.round(angle / Math.PI);
  const found = [0, ...sides.map(quarter), longestAxis(path)];
  return found.filter((a, i) => found.findIndex((b) => Math.abs(quarter(a - b)) < 1e-7) === i);
}

/** Axis of the largest second moment, from the corners of a fine polygon. */
function longestAxis(path: Path): number {
  const points = flattenPath(path, 1e-5);
  const o = centroid(path);
  let xx = 0;
  let yy = 0;
  let xy = 0;
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length]!;
    const ax = p.x_m - o.x_m;
    const ay = p.y_m - o.y_m;
    const bx = q.x_m - o.x_m;
    const by = q.y_m - o.y_m;
    const cross = ax * by - bx * ay;
    xx += cross * (ax * ax + ax * bx + bx * bx);
    yy += cross * (ay * ay + ay * by + by * by);
    xy += (cross * (ax * by + 2 * ax * ay + 2 * bx * by + bx * ay)) / 2;
  });
  return 0.5 * Math.atan2(2 * xy, xx - yy);
}

function candidates(path: Path, rotation_rad: number): CutOutShape[] {
  const box = bounds(movePath(path, -rotation_rad, { x_m: 0, y_m: 0 }));
  const length_m = box.maxX_m - box.minX_m;
  const width_m = box.maxY_m - box.minY_m;
  const short = Math.min(length_m, width_m);
  // What the corners take from the box says their radius: four squares less a circle.
  const missing = Math.max(0, length_m * width_m - pathArea_m2(path));
  const radius = Math.min(short / 2, Math.sqrt(missing / (4 - Math.PI)));
  const round = path.every((s) => Math.abs(turning_rad(s)) > 0 && circleOf(s) !== undefined);
  return [
    ...(round && Math.abs(length_m - width_m) < 2 * SAME_SHAPE_M
      ? [{ shape: 'round' as const, diameter_m: (length_m + width_m) / 2 }]
      : []),
    { shape: 'rectangle', length_m, width_m, cornerRadius_m: radius < 1e-5 ? 0 : radius },
    ...(Math.max(length_m, width_m) <= 100 * short ? [{ shape: 'oval' as const, length_m, width_m }] : []),
  ];
}
