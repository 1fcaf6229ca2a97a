/**
 * Where the parts of the work lie in the plane of a look: tops where they stand, faces unfolded outwards from their edge,
 * splashes laid back beside the side they stand on. A face carries a thinner film: what covers a height t of it lay on a strip
 * t times face film over film in the plane, so volumes stay areas there too. At a corner two faces leave a gap in the plane.
 */
import { heading_rad, pointAlong, segmentLength_m } from '#core/piece/arc.ts';
import { cutOutPath, outlinePath } from '#core/piece/outline.ts';
import { bounds, pathArea_m2, pointInside } from '#core/piece/path.ts';
import type { Path, Piece, Segment } from '#core/piece/piece.ts';
import { developedHeight_m, planOverlap_m } from '#core/piece/profile.ts';
import { notNegative, positive } from '#core/quantity/domain.ts';
import type { Panel } from './look.ts';
import type { Place } from './move.ts';

export interface Splash {
  readonly side: 'back' | 'left' | 'right';
  readonly length_m: number;
  readonly height_m: number;
}

/** A piece and where it lies in the plane: its own origin at `at`, turned counter-clockwise. */
export interface LaidPiece {
  readonly name: string;
  readonly piece: Piece;
  readonly at: Place;
  readonly turn_rad: number;
  readonly splashes: readonly Splash[];
}

/** Films of the coat, m: on tops and on faces; no faces when the face film is 0. */
export interface PanelFilms {
  readonly film_m: number;
  readonly faceFilm_m: number;
}

/** A laid out path as places of the plane, finely enough to measure a fog from: for every finished or named edge. */
export interface LaidEdge {
  readonly name: string;
  readonly finished: boolean;
  readonly line: readonly Place[];
}

/**
 * All panels of the pieces, tops first.
 * @throws RangeError unless the film is above 0 and the face film 0 or more; and where `outlinePath` does.
 */
export function panelsOf(pieces: readonly LaidPiece[], films: PanelFilms): readonly Panel[] {
  const film_m = positive('film_m', films.film_m, 'm');
  const thin = notNegative('faceFilm_m', films.faceFilm_m, 'm') / film_m;
  const laid = pieces.map((laidPiece) => ({ laidPiece, path: outlinePath(laidPiece.piece.outline) }));
  return [
    ...laid.map(({ laidPiece, path }, at) => topPanel(laidPiece, path, at === 0)),
    ...laid.flatMap(({ laidPiece, path }) => (thin > 0 ? facePanels(laidPiece, path, thin) : [])),
    ...laid.flatMap(({ laidPiece, path }) => laidPiece.splashes.map((s) => splashPanel(laidPiece, path, s))),
  ];
}

/** The outer edges of the pieces in the plane, each once by name. */
export function laidEdges(pieces: readonly LaidPiece[]): readonly LaidEdge[] {
  return pieces.flatMap((laid) => {
    const move = mover(laid);
    return runsOf(outlinePath(laid.piece.outline)).map(({ edge, segments }) => ({
      name: edge,
      finished: laid.piece.edges[edge]?.kind === 'finished',
      line: segments.flatMap((segment, at) => {
        const steps = segment.bulge === 0 ? 1 : 16;
        const from = at === 0 ? 0 : 1;
        return Array.from({ length: steps + 1 - from }, (_, i) => {
          const p = pointAlong(segment, (i + from) / steps);
          return move(p.x_m, p.y_m);
        });
      }),
    }));
  });
}

function mover({ at, turn_rad }: Pick<LaidPiece, 'at' | 'turn_rad'>): (x: number, y: number) => Place {
  const [c, s] = [Math.cos(turn_rad), Math.sin(turn_rad)];
  return (x, y) => [at[0] + c * x - s * y, at[1] + s * x + c * y];
}

function topPanel(laid: LaidPiece, path: Path, first: boolean): Panel {
  const holes = laid.piece.cutOuts.map(cutOutPath);
  const box = bounds(path);
  return {
    name: laid.name,
    kind: first ? 'top' : 'piece',
    left_m: box.minX_m,
    front_m: box.minY_m,
    width_m: box.maxX_m - box.minX_m,
    depth_m: box.maxY_m - box.minY_m,
    area_m2: pathArea_m2(path) - holes.reduce((sum, hole) => sum + pathArea_m2(hole), 0),
    film: 1,
    inside: (x_m, y_m) =>
      pointInside(path, { x_m, y_m }) && !holes.some((hole) => pointInside(hole, { x_m, y_m })),
    toPlane: mover(laid),
  };
}

/** Stretches of the path that belong to one edge, in order; one that goes over the start of the path is put together. */
function runsOf(path: Path): { readonly edge: string; readonly segments: Segment[] }[] {
  const runs: { readonly edge: string; readonly segments: Segment[] }[] = [];
  for (const segment of path) {
    const last = runs.at(-1);
    if (last?.edge === segment.edge) last.segments.push(segment);
    else runs.push({ edge: segment.edge, segments: [segment] });
  }
  if (runs.length > 1 && runs[0]!.edge === runs.at(-1)!.edge) {
    const tail = runs.pop()!;
    runs[0]!.segments.unshift(...tail.segments);
  }
  return runs;
}

/** Seen by who stands before the face: u runs along the edge, v = 0 at the top and down to minus its height. */
function facePanels(laid: LaidPiece, path: Path, thin: number): Panel[] {
  const move = mover(laid);
  return runsOf(path).flatMap(({ edge, segments }) => {
    const spec = laid.piece.edges[edge];
    if (spec?.kind !== 'finished') return [];
    const height_m = developedHeight_m(spec) - planOverlap_m(spec);
    const lengths = segments.map(segmentLength_m);
    const length_m = lengths.reduce((sum, part) => sum + part, 0);
    if (!(height_m > 0 && length_m > 0)) return [];
    return [
      {
        name: `${laid.name}, ${edge} face`,
        kind: 'face',
        left_m: 0,
        front_m: -height_m,
        width_m: length_m,
        depth_m: height_m,
        area_m2: length_m * height_m,
        film: thin,
        inside: (u, v) => u >= 0 && u <= length_m && v <= 0 && v >= -height_m,
        toPlane(u, v) {
          let left = Math.min(Math.max(u, 0), length_m);
          let at = 0;
          while (at < segments.length - 1 && left > lengths[at]!) left -= lengths[at++]!;
          const segment = segments[at]!;
          const share = lengths[at]! > 0 ? left / lengths[at]! : 0;
          const p = pointAlong(segment, share);
          const [start, end] = [heading_rad(segment, 'start'), heading_rad(segment, 'end')];
          // From start to end by the bulge, never the long way round.
          const heading = start + share * Math.atan2(Math.sin(end - start), Math.cos(end - start));
          const out = -v * thin;
          return move(p.x_m + out * Math.sin(heading), p.y_m - out * Math.cos(heading));
        },
      } satisfies Panel,
    ];
  });
}

/** A splash laid back into the plane of the top: its foot along the side it stands on. u to the right of who looks at it. */
function splashPanel(laid: LaidPiece, path: Path, { side, length_m, height_m }: Splash): Panel {
  const box = bounds(path);
  const move = mover(laid);
  const plane = {
    back: (u: number, v: number) => move(box.minX_m + u, box.maxY_m + v),
    left: (u: number, v: number) => move(box.minX_m - v, box.minY_m + u),
    right: (u: number, v: number) => move(box.maxX_m + v, box.maxY_m - u),
  }[side];
  return {
    name: side === 'back' ? `${laid.name}, backsplash` : `${laid.name}, ${side} splash`,
    kind: 'splash',
    left_m: 0,
    front_m: 0,
    width_m: length_m,
    depth_m: height_m,
    area_m2: length_m * height_m,
    film: 1,
    inside: (u, v) => u >= 0 && u <= length_m && v >= 0 && v <= height_m,
    toPlane: plane,
  };
}
