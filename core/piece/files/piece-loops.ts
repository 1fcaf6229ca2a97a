/** What a piece is drawn with in a file: its outline and holes as true circles, ellipses or paths, centre lines, edge notes. */

import { chord_m, pointAlong } from '../arc.ts';
import { cutOutSize } from '../cut-out-size.ts';
import { cutOutPath, edgeNames, outlinePath } from '../outline.ts';
import { bounds } from '../path.ts';
import type { CutOut, Path, Piece, Point } from '../piece.ts';
import { UNMOVED } from './affine.ts';
import { shapeSegments } from './shape.ts';

export type FileLoop =
  | { readonly kind: 'circle'; readonly centre: Point; readonly radius_m: number }
  | {
      readonly kind: 'ellipse';
      readonly centre: Point;
      readonly length_m: number;
      readonly width_m: number;
      readonly rotation_rad: number;
    }
  | { readonly kind: 'path'; readonly path: Path };

export interface FileNote {
  readonly at: Point;
  readonly text: string;
}

export interface FileLine {
  readonly from: Point;
  readonly to: Point;
}

export interface FileDrawing {
  readonly outline: FileLoop;
  readonly cutOuts: readonly FileLoop[];
  readonly centreLines: readonly FileLine[];
  readonly notes: readonly FileNote[];
  /** Of everything drawn, from and to. */
  readonly from: Point;
  readonly to: Point;
}

/** How far arcs stray from an ellipse in a format that has none, m. */
const ELLIPSE_M = 2e-6;
/** Centre lines stand this far out of their cut-out, m. */
const OVERRUN_M = 0.01;

/** An arc that rises less than this over its chord is written as a line, m: its centre would stand far outside any drawing. */
const FLAT_RISE_M = 1e-6;

function withoutFlatArcs(path: Path): Path {
  return path.map((s) =>
    s.bulge !== 0 && (Math.abs(s.bulge) * chord_m(s)) / 2 < FLAT_RISE_M
      ? { ...s, kind: 'line', bulge: 0 }
      : s,
  );
}

/** Throws RangeError when the piece's sizes cannot be built: ask `reviewPiece` first. */
export function pieceLoops(piece: Piece): FileDrawing {
  const outline = outlineLoop(piece);
  const cutOuts = piece.cutOuts.map(cutOutLoop);
  const centreLines = piece.cutOuts.flatMap(centreCross);
  const box = bounds(outlinePath(piece.outline));
  const points = centreLines.flatMap((l) => [l.from, l.to]);
  return {
    outline,
    cutOuts,
    centreLines,
    notes: edgeNotes(piece),
    from: {
      x_m: Math.min(box.minX_m, ...points.map((p) => p.x_m)),
      y_m: Math.min(box.minY_m, ...points.map((p) => p.y_m)),
    },
    to: {
      x_m: Math.max(box.maxX_m, ...points.map((p) => p.x_m)),
      y_m: Math.max(box.maxY_m, ...points.map((p) => p.y_m)),
    },
  };
}

/** The loop as lines and arcs; a true ellipse within 0.002 mm. */
export function loopPath(loop: FileLoop): Path {
  if (loop.kind === 'path') return loop.path;
  const centre = { x: loop.centre.x_m, y: loop.centre.y_m };
  const turn = loop.kind === 'ellipse' ? loop.rotation_rad : 0;
  const a = loop.kind === 'circle' ? loop.radius_m : loop.length_m / 2;
  const b = loop.kind === 'circle' ? loop.radius_m : loop.width_m / 2;
  const made = shapeSegments(
    {
      kind: 'conic',
      centre,
      u: { x: a * Math.cos(turn), y: a * Math.sin(turn) },
      v: { x: -b * Math.sin(turn), y: b * Math.cos(turn) },
      start: 0,
      end: 2 * Math.PI,
    },
    UNMOVED,
    ELLIPSE_M,
  );
  return made.map((s, i) => (i === made.length - 1 ? { ...s, to: made[0]!.from } : s));
}

function outlineLoop({ outline }: Piece): FileLoop {
  // Asked of every shape: it throws on sizes that cannot be built.
  const path = outlinePath(outline);
  if (outline.shape === 'round') {
    const radius_m = outline.diameter_m / 2;
    return { kind: 'circle', centre: { x_m: radius_m, y_m: radius_m }, radius_m };
  }
  if (outline.shape === 'ellipse') {
    const { length_m, width_m } = outline;
    return {
      kind: 'ellipse',
      centre: { x_m: length_m / 2, y_m: width_m / 2 },
      length_m,
      width_m,
      rotation_rad: 0,
    };
  }
  return { kind: 'path', path: withoutFlatArcs(path) };
}

function cutOutLoop(cutOut: CutOut): FileLoop {
  const path = cutOutPath(cutOut);
  if (cutOut.shape === 'round')
    return { kind: 'circle', centre: cutOut.centre, radius_m: cutOut.diameter_m / 2 };
  if (cutOut.shape === 'oval')
    return {
      kind: 'ellipse',
      centre: cutOut.centre,
      length_m: cutOut.length_m,
      width_m: cutOut.width_m,
      rotation_rad: cutOut.rotation_rad ?? 0,
    };
  return { kind: 'path', path: withoutFlatArcs(path) };
}

function centreCross(cutOut: CutOut): FileLine[] {
  const turn = cutOut.rotation_rad ?? 0;
  const { length_m: length, width_m: width } = cutOutSize(cutOut);
  const line = (half: number, angle: number): FileLine => {
    const dx = half * Math.cos(angle);
    const dy = half * Math.sin(angle);
    const { x_m, y_m } = cutOut.centre;
    return { from: { x_m: x_m - dx, y_m: y_m - dy }, to: { x_m: x_m + dx, y_m: y_m + dy } };
  };
  return [line(length / 2 + OVERRUN_M, turn), line(width / 2 + OVERRUN_M, turn + Math.PI / 2)];
}

/** The name and kind of every edge, at the middle of its longest part; the name of every cut-out at its centre. */
function edgeNotes(piece: Piece): FileNote[] {
  const path = outlinePath(piece.outline);
  const notes = edgeNames(piece.outline).map((name) => {
    const longest = path.filter((s) => s.edge === name).reduce((a, b) => (chord_m(b) > chord_m(a) ? b : a));
    const kind = piece.edges[name]?.kind;
    return { at: pointAlong(longest, 0.5), text: kind === undefined ? name : `${name}: ${kind}` };
  });
  return [
    ...notes,
    ...piece.cutOuts.map((c) => ({ at: c.centre, text: c.rim === 'dammed' ? `${c.name}: dammed` : c.name })),
  ];
}
