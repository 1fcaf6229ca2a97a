/** Strips under the edges of an outline, and rims round its holes: blanks to cut, as rectangles. */
import { circleOf, heading_rad, pointAlong, turning_rad as turningOf } from '../arc.ts';
import { cutOutSize } from '../cut-out-size.ts';
import { cutOutPath, outlinePath } from '../outline.ts';
import { pathArea_m2 } from '../path.ts';
import type { Piece, Point, Segment } from '../piece.ts';
import { TAP_HOLE_M } from './body.ts';

export interface Blank {
  readonly name: string;
  readonly length_m: number;
  readonly width_m: number;
  readonly faceHeight_m: number;
  /** Of the strip itself, for its weight: length along its middle by its width. */
  readonly area_m2: number;
  readonly note: string;
}

/** A curved strip is made of pieces that turn no further than this. */
const MOST_TURN_RAD = Math.PI / 3;
/** Even, so that the middle of an arc is among them. */
const SAMPLES = 16;
/** Less than this along an edge is a leftover of a rounded corner, not a strip. */
const SHORTEST_M = 0.001;

/** Only for an arc. */
function arcOf(segment: Segment): { radius_m: number; turning_rad: number } {
  return { radius_m: circleOf(segment)!.radius_m, turning_rad: turningOf(segment) };
}

/** One arc of an edge runs smoothly into the next of the same edge, turning the same way. */
function goesOn(before: Segment, after: Segment): boolean {
  if (before.kind !== 'arc' || after.kind !== 'arc' || before.edge !== after.edge) return false;
  if (before.bulge * after.bulge < 0) return false;
  return Math.abs(Math.sin(heading_rad(after, 'start') - heading_rad(before, 'end'))) < 0.01;
}

/** Rectangles that hold a smooth run of arcs with the strip on its left, each turning no further than MOST_TURN_RAD. */
function curvesOf(
  run: readonly Segment[],
  stripWidth_m: number,
): { length_m: number; width_m: number; area_m2: number }[] {
  const turn = run.reduce((sum, each) => sum + Math.abs(turningOf(each)), 0);
  const pieces = Math.ceil(turn / MOST_TURN_RAD - 1e-9);
  return Array.from({ length: pieces }, (_, k) => {
    const from = (k * turn) / pieces;
    const to = ((k + 1) * turn) / pieces;
    const outer: Point[] = [];
    const inner: Point[] = [];
    let area_m2 = 0;
    let past = 0;
    for (const arc of run) {
      const { radius_m, turning_rad } = arcOf(arc);
      const whole = Math.abs(turning_rad);
      const start = Math.max(0, from - past) / whole;
      const end = Math.min(whole, to - past) / whole;
      past += whole;
      if (!(end > start)) continue;
      // The body lies to the left: inside an arc that turns left, outside one that turns right.
      const depth = turning_rad > 0 ? Math.min(stripWidth_m, radius_m) : stripWidth_m;
      const middle = radius_m - (Math.sign(turning_rad) * depth) / 2;
      area_m2 += middle * whole * (end - start) * depth;
      for (let step = 0; step <= SAMPLES; step++) {
        const at = start + ((end - start) * step) / SAMPLES;
        const p = pointAlong(arc, at);
        const heading = heading_rad(arc, 'start') + turning_rad * at;
        outer.push(p);
        inner.push({ x_m: p.x_m - depth * Math.sin(heading), y_m: p.y_m + depth * Math.cos(heading) });
      }
    }
    const first = outer[0]!;
    const last = outer[outer.length - 1]!;
    const chord = Math.atan2(last.y_m - first.y_m, last.x_m - first.x_m);
    const extent = (cos: number, sin: number) => {
      const along = [...outer, ...inner].map((p) => p.x_m * cos + p.y_m * sin);
      return Math.max(...along) - Math.min(...along);
    };
    const length_m = extent(Math.cos(chord), Math.sin(chord));
    return { length_m, width_m: extent(-Math.sin(chord), Math.cos(chord)), area_m2 };
  });
}

/** Under every finished edge. Corners rounded to no more than the strip's width are cut from the two strips that meet there. */
export function edgeBlanks(piece: Piece, stripWidth_m: number): Blank[] {
  const path = outlinePath(piece.outline);
  const blanks: Blank[] = [];
  const corner = (segment: Segment) => segment.kind === 'arc' && arcOf(segment).radius_m <= stripWidth_m;
  path.forEach((segment, i) => {
    const spec = piece.edges[segment.edge];
    if (spec === undefined || spec.kind !== 'finished' || corner(segment)) return;
    const name = `${segment.edge} strip`;
    const { faceHeight_m } = spec;
    if (segment.kind === 'line') {
      const straight = Math.hypot(segment.to.x_m - segment.from.x_m, segment.to.y_m - segment.from.y_m);
      const length_m = straight + into(path, i, -1) + into(path, i, 1);
      if (length_m < SHORTEST_M) return;
      const note = 'Mitre it where two strips meet.';
      blanks.push({
        name,
        length_m,
        width_m: stripWidth_m,
        faceHeight_m,
        area_m2: straight * stripWidth_m,
        note,
      });
      return;
    }
    const before = path[(i + path.length - 1) % path.length]!;
    if (path.length > 1 && goesOn(before, segment) && i > 0 && !corner(before)) return;
    const run = [segment];
    while (i + run.length < path.length) {
      const next = path[i + run.length]!;
      if (!goesOn(run[run.length - 1]!, next) || corner(next)) break;
      run.push(next);
    }
    for (const curve of curvesOf(run, stripWidth_m))
      blanks.push({
        ...curve,
        name: `${segment.edge} curve`,
        faceHeight_m,
        note: 'Saw the curve after gluing, along the field.',
      });
  });
  return blanks;

  /** How far a strip runs on into the small rounded corner at one end of it: the tangent length of the whole corner. */
  function into(all: readonly Segment[], at: number, step: 1 | -1): number {
    let turn = 0;
    let radius = 0;
    let index = (at + step + all.length) % all.length;
    for (let k = 0; k < all.length && corner(all[index]!); k++) {
      const arc = arcOf(all[index]!);
      turn += Math.abs(arc.turning_rad);
      radius = arc.radius_m;
      index = (index + step + all.length) % all.length;
    }
    return turn === 0 || turn > (2 * Math.PI) / 3 ? radius : radius * Math.tan(turn / 2);
  }
}

/**
 * Round every hole larger than a tap hole, and round any hole the resin runs down. A rectangular hole gets a frame of four, wide
 * enough that its rounded corners are routed out of it; any other hole one block.
 */
export function rimBlanks(piece: Piece, stripWidth_m: number): Blank[] {
  return piece.cutOuts.flatMap((cutOut): Blank[] => {
    const { length_m: length, width_m: width } = cutOutSize(cutOut);
    if (Math.min(length, width) <= TAP_HOLE_M && cutOut.rim === 'dammed') return [];
    const faceHeight_m = cutOut.faceHeight_m ?? piece.bodyThickness_m;
    const name = `${cutOut.name} rim`;
    const outerArea = (length + 2 * stripWidth_m) * (width + 2 * stripWidth_m);
    if (cutOut.shape === 'rectangle') {
      const radius = cutOut.cornerRadius_m;
      const band = stripWidth_m + radius;
      const between = width - 2 * radius;
      const note = radius > 0 ? 'Rout the inside corners with the hole.' : '';
      const share = (outerArea - length * width) / 4;
      const one = { name, width_m: band, faceHeight_m, area_m2: share, note };
      const pair = (length_m: number) => [
        { ...one, length_m },
        { ...one, length_m },
      ];
      return [...pair(length + 2 * stripWidth_m), ...(between > SHORTEST_M ? pair(between) : [])];
    }
    const hole = pathArea_m2(cutOutPath(cutOut));
    const note = 'One block, cut through with the hole.';
    const block = { name, length_m: length + 2 * stripWidth_m, width_m: width + 2 * stripWidth_m };
    return [{ ...block, faceHeight_m, area_m2: outerArea - hole, note }];
  });
}
