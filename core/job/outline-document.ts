/** An outline or a hole that comes from elsewhere, a drawing file or a tape survey, as the texts a job document holds. */
import { chord_m } from '#core/piece/arc.ts';
import { cutOutSize } from '#core/piece/cut-out-size.ts';
import { ELLIPSE_TOLERANCE_M } from '#core/piece/ellipse.ts';
import type { ImportedDrawing, ImportedLoop } from '#core/piece/files/imported-drawing.ts';
import { importedCutOut } from '#core/piece/files/imported-piece.ts';
import { bounds } from '#core/piece/path.ts';
import type { CutOut, Path, Point, Segment } from '#core/piece/piece.ts';
import { lengthToType } from '#core/quantity/length-to-type.ts';
import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import type { CornerDocument, CutOutDocument, OutlineDocument } from './document.ts';

/** What a polygon of a document holds at most. */
const MOST_CORNERS = 200;
/** An outline is a rectangle or a circle when the drawing strays no further from it, m. */
const SAME_OUTLINE_M = 1e-5;
/** An ellipse is itself drawn to a tolerance, on both sides. */
const SAME_ELLIPSE_M = 2 * ELLIPSE_TOLERANCE_M;
/** Turned by less than this is not turned: 0.1 mm on 1 m. */
const NOT_TURNED_RAD = 1e-4;

/** Corners in order, m, as a polygon in the units a shop types. */
export function polygonDocument(corners: readonly Point[], system: System): OutlineDocument {
  const text = (value_m: number) => lengthToType(value_m, system);
  return {
    shape: 'polygon',
    corners: corners.map(({ x_m, y_m }) => ({ x: text(x_m), y: text(y_m), radius: '', bow: '' })),
  };
}

/**
 * The outline of a drawing, its lower left corner on the origin: a rectangle or a circle where it is one to 0.01 mm, an ellipse to 0.2 mm,
 * else corner by corner with the rise of every arc. Refused when it has more corners than a document holds.
 */
export function outlineDocument(drawing: ImportedDrawing, system: System): Result<OutlineDocument> {
  const text = (value_m: number) => lengthToType(value_m, system);
  const plain = importedCutOut(drawing, { x_m: 0, y_m: 0 });
  const least = plain.ok && plain.value.cutOut.shape === 'oval' ? SAME_ELLIPSE_M : SAME_OUTLINE_M;
  if (plain.ok && plain.value.strays_m <= least) {
    const straight = unturned(plain.value.cutOut);
    if (straight?.shape === 'round') return good({ shape: 'round', diameter: text(straight.diameter_m) });
    if (straight?.shape === 'oval')
      return good({ shape: 'ellipse', length: text(straight.length_m), width: text(straight.width_m) });
    if (straight?.shape === 'rectangle')
      return good({
        shape: 'rectangle',
        length: text(straight.length_m),
        width: text(straight.width_m),
        cornerRadius: straight.cornerRadius_m > 0 ? text(straight.cornerRadius_m) : '',
      });
  }
  const path = drawing.outline.path.flatMap(noMoreThanHalf);
  if (path.length > MOST_CORNERS)
    return bad({
      path: 'piece.outline',
      code: 'file.too-many-parts',
      message: 'The outline has too many lines and arcs for a piece.',
      read: String(path.length),
      allowed: `up to ${MOST_CORNERS}; draw curves as arcs`,
    });
  const { minX_m, minY_m } = bounds(drawing.outline.path);
  return good({
    shape: 'polygon',
    corners: cornersOf(path, { x_m: minX_m, y_m: minY_m }, system),
  });
}

/** Corners of a counter-clockwise path, measured from `from`, with the rise of every arc. */
function cornersOf(path: Path, from: Point, system: System): CornerDocument[] {
  const text = (value_m: number) => lengthToType(value_m, system);
  return path.map((segment) => ({
    x: text(segment.from.x_m - from.x_m),
    y: text(segment.from.y_m - from.y_m),
    radius: '',
    // bulge = 2 rise / chord; the path runs counter-clockwise, so a left turn bows outwards.
    bow: segment.bulge === 0 ? '' : text((segment.bulge * chord_m(segment)) / 2),
  }));
}

/** Arcs up to here keep a rise below half their chord when both are rounded to what is typed. */
const MOST_BULGE = 0.99;

/** An arc of half a circle or more as two: a side of a document rises by half its chord at most. */
function noMoreThanHalf(segment: Segment): readonly Segment[] {
  const { from, to, bulge } = segment;
  if (Math.abs(bulge) <= MOST_BULGE) return [segment];
  const half = Math.tan(Math.atan(bulge) / 2);
  // The middle of the arc lies off the middle of the chord by the rise, to the right of a left turn.
  const middle = {
    x_m: (from.x_m + to.x_m) / 2 + (bulge * (to.y_m - from.y_m)) / 2,
    y_m: (from.y_m + to.y_m) / 2 - (bulge * (to.x_m - from.x_m)) / 2,
  };
  return [
    { ...segment, to: middle, bulge: half },
    { ...segment, from: middle, bulge: half },
  ];
}

export interface HolesRead {
  readonly cutOuts: readonly CutOutDocument[];
  /** Holes that no cut-out of a document can stand for, each with its reason. */
  readonly left: readonly Problem[];
}

/** The holes of a drawing as cut-outs, measured from its lower left corner. */
export function holeDocuments(drawing: ImportedDrawing, system: System): HolesRead {
  const { minX_m, minY_m } = bounds(drawing.outline.path);
  const cutOuts: CutOutDocument[] = [];
  const left: Problem[] = [];
  drawing.cutOuts.forEach((loop, i) => {
    const middle = middleOf(loop.path);
    const at = { x_m: middle.x_m - minX_m, y_m: middle.y_m - minY_m };
    const read = loopDocument(drawing, loop, at, `hole ${i + 1}`, system);
    if (read.ok) cutOuts.push(read.value);
    else left.push(...read.problems);
  });
  return { cutOuts, left };
}

/** The outline of a full-size template as one cut-out with its middle at `at`. */
export function templateDocument(
  drawing: ImportedDrawing,
  at: Point,
  name: string,
  system: System,
): Result<CutOutDocument> {
  return loopDocument(drawing, drawing.outline, at, name, system);
}

function loopDocument(
  drawing: ImportedDrawing,
  loop: ImportedLoop,
  at: Point,
  name: string,
  system: System,
): Result<CutOutDocument> {
  const read = importedCutOut({ ...drawing, outline: loop }, at, name);
  if (!read.ok)
    return bad(
      ...read.problems.map((problem) => ({
        ...problem,
        message: `${name} (${sizeOf(loop.path)}): ${problem.message}`,
      })),
    );
  const text = (value_m: number) => lengthToType(value_m, system);
  const place = { name, fromLeft: text(at.x_m), fromFront: text(at.y_m), rim: 'dammed' as const };
  if (read.value.cutOut.shape === 'template') {
    const path = loop.path.flatMap(noMoreThanHalf);
    if (path.length > MOST_CORNERS)
      return bad({
        path: 'piece.cutOuts',
        code: 'file.too-many-parts',
        message: `${name} (${sizeOf(loop.path)}) has too many lines and arcs for a cut-out.`,
        read: String(path.length),
        allowed: `up to ${MOST_CORNERS}; draw curves as arcs`,
      });
    const corners = cornersOf(path, middleOf(loop.path), system);
    return good({ ...place, shape: 'template', length: '', width: '', cornerRadius: '', corners });
  }
  const straight = unturned(read.value.cutOut);
  const cutOut = straight ?? read.value.cutOut;
  const { length_m, width_m } = cutOutSize(cutOut);
  const degrees = ((cutOut.rotation_rad ?? 0) * 180) / Math.PI;
  return good({
    ...place,
    ...(straight === null ? { turned: `${Number(degrees.toFixed(4))} degrees` } : {}),
    shape: cutOut.shape,
    length: text(length_m),
    width: cutOut.shape === 'round' ? '' : text(width_m),
    cornerRadius:
      cutOut.shape === 'rectangle' && cutOut.cornerRadius_m > 0 ? text(cutOut.cornerRadius_m) : '',
  });
}

function middleOf(path: Path): Point {
  const box = bounds(path);
  return { x_m: (box.minX_m + box.maxX_m) / 2, y_m: (box.minY_m + box.maxY_m) / 2 };
}

function sizeOf(path: Path): string {
  const box = bounds(path);
  return `${((box.maxX_m - box.minX_m) * 1000).toFixed(1)} mm x ${((box.maxY_m - box.minY_m) * 1000).toFixed(1)} mm`;
}

/** The same cut-out without a turn: sides swapped after a quarter turn; null when it stands at another angle. */
function unturned(cutOut: CutOut): CutOut | null {
  if (cutOut.shape === 'round' || cutOut.shape === 'template') return cutOut;
  const quarters = (cutOut.rotation_rad ?? 0) / (Math.PI / 2);
  const whole = Math.round(quarters);
  if (Math.abs(quarters - whole) * (Math.PI / 2) > NOT_TURNED_RAD) return null;
  return whole % 2 === 0 ? cutOut : { ...cutOut, length_m: cutOut.width_m, width_m: cutOut.length_m };
}
