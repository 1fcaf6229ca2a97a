/** What the walls ask of the piece, in sentences. */
import type { Swing } from '#core/piece/fit-to-wall/alcove.ts';
import type { CarryAnswer, Load } from '#core/piece/fit-to-wall/carry-in.ts';
import {
  type JointAnswer,
  type PieceForWalls,
  sizeToMake_m,
  taperOf,
  type WallFit,
} from '#core/piece/fit-to-wall/wall-fit.ts';
import { flatLimit_m } from '#core/piece/fit-to-wall/wall-tolerances.ts';
import type { WayAnswers, WayIn } from '#core/piece/fit-to-wall/way-in.ts';
import { formatLength, formatWeight } from '#core/quantity/format.ts';
import { fixed } from '#core/quantity/rounding.ts';
import type { System } from '#core/quantity/units.ts';

/** Joints and gaps: 32nds of an inch, tenths of a millimetre. */
function fine(length_m: number, system: System): string {
  return system === 'us'
    ? formatLength(length_m, 'us', { fraction: 32 })
    : formatLength(length_m, 'metric', { decimals: length_m < 0.02 && !isWhole(length_m) ? 1 : 0 });
}

const isWhole = (length_m: number) => Math.abs(length_m * 1000 - Math.round(length_m * 1000)) < 0.05;

export interface Made {
  readonly length_m: number | null;
  readonly depth_m: number | null;
}

/** The sizes as they are cut. */
export function madeSizes(piece: PieceForWalls, system: System): Made {
  const cut = (size_m: number | null, joint: JointAnswer | null) =>
    size_m === null ? null : sizeToMake_m(size_m, joint?.joint.way === 'scribe', system);
  return { length_m: cut(piece.length_m, piece.end), depth_m: cut(piece.depth_m, piece.back) };
}

/** What to make, and why; what is still to be measured. */
export function makeWords(fit: WallFit, piece: PieceForWalls, system: System): string[] {
  const { length_m, depth_m } = madeSizes(piece, system);
  const say = (size_m: number) => formatLength(size_m, system);
  const small = (size_m: number) => fine(size_m, system);
  const words: string[] = [];
  if (length_m === null)
    words.push(
      fit.ends === 'both'
        ? 'Measure the alcove at the back, in the middle and at the front: the smallest of the three decides the length.'
        : 'Measure the length of the cabinet to know how long the piece is.',
    );
  else if (fit.ends === 'both' && piece.width !== null && piece.end !== null) {
    const at = piece.width.narrowest === 'middle' ? 'in the middle' : `at the ${piece.width.narrowest}`;
    const narrow =
      piece.width.range_m < 1e-6
        ? `the alcove is ${say(piece.width.usable_m)} wide all through`
        : `the alcove is narrowest ${at}, ${say(piece.width.usable_m)}`;
    words.push(
      piece.end.joint.way === 'scribe'
        ? `Leave it ${say(length_m)} long and cut the ends to the walls: ${narrow}, and the widths differ by ${small(piece.width.range_m)}.`
        : `Make it ${say(length_m)} long: ${narrow}, less ${small(fit.clearance_m)} at each end.`,
    );
  } else {
    const ends = fit.ends === 'neither' ? 'each end' : 'the open end';
    const wall =
      piece.end === null
        ? ''
        : piece.end.joint.way === 'scribe'
          ? `, and ${small(piece.end.joint.spare_m)} to be cut to the wall`
          : `, less ${small(fit.clearance_m)} at the wall`;
    words.push(
      `Make it ${say(length_m)} long: the cabinet, ${small(fit.endOverhang_m)} over at ${ends}${wall}.`,
    );
  }
  if (depth_m === null)
    words.push('Measure from the back wall to the front of the cabinet to know how deep it is.');
  else {
    const wall =
      piece.back.joint.way === 'scribe'
        ? `and ${small(piece.back.joint.spare_m)} to be cut to the back wall`
        : `less ${small(fit.clearance_m)} at the back wall`;
    words.push(
      `${piece.back.joint.way === 'scribe' ? 'Leave' : 'Make'} it ${say(depth_m)} deep: ${say(fit.depth_m ?? 0)} of cabinet, ${small(fit.overhang_m)} over the front, ${wall}.`,
    );
  }
  return words;
}

/** Caulk or scribe, at the back and at the ends. */
export function jointWords(fit: WallFit, piece: PieceForWalls, system: System): string[] {
  const small = (size_m: number) => fine(size_m, system);
  const one = (where: string, { joint, tooWide }: JointAnswer): string => {
    const open =
      joint.widest_m - fit.clearance_m < 1e-6
        ? `${small(fit.clearance_m)} wide`
        : `${small(fit.clearance_m)} to ${small(joint.widest_m)} wide`;
    if (tooWide)
      return `${where}: caulk as asked, but the joint is ${open} and caulk fills ${small(fit.widestCaulk_m)}. Scribe it, or let a splash cover it.`;
    return joint.way === 'caulk'
      ? `${where}: caulk, the joint is ${open}.`
      : `${where}: scribe. Left ${small(fit.clearance_m)} off the wall it would gape ${small(joint.widest_m)}; caulk fills ${small(fit.widestCaulk_m)}.`;
  };
  const words = [
    fit.backGap_m === null
      ? `${one('Back', piece.back)} Counted on a flat wall: hold a straightedge to it and type the largest gap.`
      : one('Back', piece.back),
  ];
  if (piece.end !== null)
    words.push(
      one(fit.ends === 'both' ? 'Ends' : `${fit.ends === 'left' ? 'Left' : 'Right'} end`, piece.end),
    );
  if ([piece.back, piece.end].some((answer) => answer?.joint.way === 'scribe'))
    words.push(
      'Scribe the bare body before the first coat: cured film chips where it is cut (common practice, no source).',
    );
  return words;
}

/** The walls against what is allowed of walls as built. */
export function wallWords(fit: WallFit, piece: PieceForWalls, system: System): string[] {
  const words: string[] = [];
  const taper = fit.ends === 'both' ? taperOf(fit) : null;
  if (taper !== null) {
    const size = fine(Math.abs(taper.opens_m), system);
    const both = 2 * taper.limit_m;
    const verdict = Math.abs(taper.opens_m) <= both ? 'within' : 'more than';
    words.push(
      Math.abs(taper.opens_m) < 0.0005
        ? `The side walls run alike over ${formatLength(taper.over_m, system)}.`
        : `The side walls ${taper.opens_m < 0 ? 'close' : 'open'} by ${size} towards the front over ${formatLength(taper.over_m, system)}, ${verdict} the ${fine(both, system)} that DIN 18202 allows two walls.`,
    );
    if (taper.opens_m < -0.0005 && piece.end?.joint.way === 'scribe')
      words.push(
        'A piece cut to walls that close does not slide in from the front: it is turned or lowered in.',
      );
  }
  const span_m = fit.ends === 'both' ? piece.width?.usable_m : fit.length_m;
  if (fit.backGap_m !== null && span_m != null) {
    const limit_m = flatLimit_m(span_m);
    words.push(
      `The back wall is off by ${fine(fit.backGap_m, system)}, ${fit.backGap_m <= limit_m ? 'within' : 'more than'} the ${fine(limit_m, system)} that DIN 18202 allows a finished wall over ${formatLength(span_m, system)}.`,
    );
  }
  return words;
}

const degrees = (turn_rad: number) => `${fixed((turn_rad * 180) / Math.PI, 1)}°`;

/** Does it go between the side walls, and how far can it be turned there? */
export function swingWords(
  swing: Swing,
  length_m: number,
  width_m: number,
  tilt: { readonly goes: boolean; readonly spare_m: number },
  system: System,
): string[] {
  const spare_m = width_m - length_m;
  const lowered = tilt.goes
    ? `Lowered in one end first it goes, ${fine(tilt.spare_m, system)} to spare.`
    : `Lowered in one end first it is ${fine(-tilt.spare_m, system)} too long.`;
  if (spare_m < -1e-6)
    return [
      `It does not go in: ${fine(-spare_m, system)} longer than the alcove is wide at its narrowest.`,
      lowered,
    ];
  const straight =
    spare_m < 0.0002
      ? 'It slides in straight with nothing to spare.'
      : `It slides in straight, ${fine(spare_m, system)} to spare.`;
  if (swing.free) return [straight, 'Lying flat it can be turned right round between the walls.'];
  const [left, right] = [degrees(swing.left_rad), degrees(swing.right_rad)];
  const turns =
    left === right
      ? `${left} either way`
      : `${left} to the left (counter-clockwise) and ${right} to the right`;
  return [straight, `Lying flat, its back at the wall, it turns ${turns} before it binds.`, lowered];
}

export interface WayLine {
  readonly place: string;
  readonly goes: boolean;
  readonly words: string;
}

/** One line for each narrow place that was measured. */
export function wayLines(load: Load, way: WayIn, answers: WayAnswers, system: System): WayLine[] {
  const say = (size_m: number) => formatLength(size_m, system);
  const line = (place: string, answer: CarryAnswer | null, of: string): WayLine[] =>
    answer === null
      ? []
      : [
          {
            place,
            goes: answer.goes,
            words: answer.goes
              ? `goes ${of}, ${say(answer.spare_m)} to spare`
              : `does not go ${of}: ${say(-answer.spare_m)} short`,
          },
        ];
  const onEdge =
    way.door !== null &&
    Math.min(way.door.height_m - load.short_m, way.door.width_m - load.thickness_m) >=
      Math.min(way.door.width_m - load.short_m, way.door.height_m - load.thickness_m);
  return [
    ...line('Door', answers.door, onEdge ? 'through on edge' : 'through flat'),
    ...line('Passage', answers.passage, 'round the corner on edge'),
    ...line('Stair', answers.stair, 'round the landing on edge'),
    ...line('Lift', answers.lift, 'in by its diagonal'),
  ];
}

/** "52 3/4 in corner to corner, 22 in across, 1 1/2 in thick, about 60 lb with its resin: 2 people carry it, ..." */
export function loadWords(
  load: Load,
  people: number,
  each_kg: number,
  withResin: boolean,
  system: System,
): string {
  const say = (size_m: number) => formatLength(size_m, system);
  const most = formatWeight(each_kg, system);
  const carried =
    people === 1
      ? `one person carries it, ${most} at most`
      : `${people} people carry it, ${most} each at most`;
  return `${say(load.longest_m)} corner to corner, ${say(load.short_m)} across, ${say(load.thickness_m)} thick, about ${formatWeight(load.mass_kg, system)} ${withResin ? 'with its resin' : 'without resin'}: ${carried}.`;
}
