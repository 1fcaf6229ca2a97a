/** Corners of the outline as they are marked on the board: the square corner, and where its rounding begins and ends. */

import { circleOf, segmentLength_m } from '../arc.ts';
import { outlineCorners } from '../corners.ts';
import { trims } from '../fillet.ts';
import { cornerTurn_rad } from '../path.ts';
import type { Outline, Path, Point } from '../piece.ts';
import { type Coordinates, type Datums, fromDatums } from './datum.ts';

export interface SetOutCorner {
  /** From 1, in the order the outline runs. */
  readonly number: number;
  /** In the piece's own axes. */
  readonly point: Point;
  readonly at: Coordinates;
  /** Edge that ends here and edge that begins here. */
  readonly edges: readonly [string, string];
  /** Inside the piece, 0 to 2 pi; more than pi at an inside corner. */
  readonly insideAngle_rad: number;
  /** 0: sharp. */
  readonly radius_m: number;
  /** Begin, end and centre of the rounding; null at a sharp corner. */
  readonly rounding: {
    readonly begin: Coordinates;
    readonly end: Coordinates;
    readonly centre: Coordinates;
  } | null;
}

/** A curved edge of the outline that is no rounding of a corner: its ends, centre and radius. */
export interface SetOutArc {
  readonly edge: string;
  readonly radius_m: number;
  readonly centre: Coordinates;
  readonly begin: Coordinates;
  readonly end: Coordinates;
  /** Along the arc. */
  readonly length_m: number;
  /** Curves into the piece. */
  readonly hollow: boolean;
}

/** Corners of a shape that has any; none for a round or an ellipse. `path` is the outline's own. */
export function markedCorners(outline: Outline, path: Path, datums: Datums): SetOutCorner[] {
  if (outline.shape === 'round' || outline.shape === 'ellipse') return [];
  if (outline.shape === 'path')
    return path.map((s, i): SetOutCorner => {
      const before = path[(i + path.length - 1) % path.length]!;
      return {
        number: i + 1,
        point: s.from,
        at: fromDatums(s.from, datums),
        edges: [before.edge, s.edge],
        insideAngle_rad: Math.PI - cornerTurn_rad(before, s),
        radius_m: 0,
        rounding: null,
      };
    });
  const corners = outlineCorners(outline);
  const cut = trims(corners);
  const round = Math.sign(cut.reduce((sum, t) => sum + t.turn_rad, 0));
  return corners.map((corner, i): SetOutCorner => {
    const before = corners[(i + corners.length - 1) % corners.length]!;
    const after = corners[(i + 1) % corners.length]!;
    const { turn_rad, trim_m } = cut[i]!;
    const point = { x_m: corner.x_m, y_m: corner.y_m };
    const begin = towards(point, before, trim_m);
    const end = towards(point, after, trim_m);
    const middle = { x_m: (begin.x_m + end.x_m) / 2, y_m: (begin.y_m + end.y_m) / 2 };
    // The centre lies on the bisector, R / cos(turn / 2) from the corner.
    const centre = towards(point, middle, corner.radius_m / Math.cos(turn_rad / 2));
    return {
      number: i + 1,
      point,
      at: fromDatums(point, datums),
      edges: [before.edge, corner.edge],
      insideAngle_rad: Math.PI - turn_rad * round,
      radius_m: trim_m > 0 ? corner.radius_m : 0,
      rounding:
        trim_m > 0
          ? {
              begin: fromDatums(begin, datums),
              end: fromDatums(end, datums),
              centre: fromDatums(centre, datums),
            }
          : null,
    };
  });
}

/** Arcs of a free path; the roundings of named shapes stand with their corners. */
export function markedArcs(outline: Outline, path: Path, datums: Datums): SetOutArc[] {
  if (outline.shape !== 'path') return [];
  return path.flatMap((s): SetOutArc[] => {
    const circle = circleOf(s);
    if (circle === undefined) return [];
    return [
      {
        edge: s.edge,
        radius_m: circle.radius_m,
        centre: fromDatums(circle.centre, datums),
        begin: fromDatums(s.from, datums),
        end: fromDatums(s.to, datums),
        length_m: segmentLength_m(s),
        hollow: s.bulge < 0,
      },
    ];
  });
}

function towards(from: Point, to: Point, distance_m: number): Point {
  const size = Math.hypot(to.x_m - from.x_m, to.y_m - from.y_m);
  if (size === 0) return from;
  return {
    x_m: from.x_m + ((to.x_m - from.x_m) / size) * distance_m,
    y_m: from.y_m + ((to.y_m - from.y_m) / size) * distance_m,
  };
}
