/** What was measured at the walls and on the way in, in SI. */
import { LIFT_EACH_KG } from '#core/piece/fit-to-wall/carry-in.ts';
import { CLEARANCE_M, SCRIBE_SPARE_M, WIDEST_CAULK_M } from '#core/piece/fit-to-wall/from-wall.ts';
import { END_OVERHANG_M, FRONT_OVERHANG_M, type WallFit } from '#core/piece/fit-to-wall/wall-fit.ts';
import type { WayIn } from '#core/piece/fit-to-wall/way-in.ts';
import { bad, good, type Result } from '#core/quantity/problem.ts';
import { readLength_m, readMass_kg } from '#core/quantity/read.ts';
import type { System } from '#core/quantity/units.ts';
import type { FitDocument } from './fit-document.ts';
import { Notes } from './notes.ts';

export interface FitRead {
  readonly walls: WallFit;
  readonly way: WayIn;
}

/** Tops are a hand to ten metres; joints and overhangs stay under 30 cm, gaps of a wall under 10 cm. */
const LEAST_M = 0.01;
const MOST_M = 10;

/**
 * Reads the measurements under `path`; what is not measured is null, what the shop decides has its usual value. A door, corner or lift
 * of which only some sizes are known is null too.
 */
export function readFit(document: FitDocument, path: string, system?: System): Result<FitRead> {
  const notes = new Notes(system);
  const read = takeFit(document, path, notes);
  return notes.problems.length > 0 ? bad(...notes.problems) : good(read, notes.warnings);
}

/** The same, with what cannot be read noted and left out, so that the rest can still be answered. */
export function takeFit(document: FitDocument, path: string, notes: Notes): FitRead {
  const at = (key: string) => `${path}.${key}`;
  const size = (key: string, text: string, what: string, min = LEAST_M, max = MOST_M) =>
    notes.take(at(key), text, (typed, ask) => readLength_m(typed, { ...ask, what, min, max }));
  const usual = (key: string, text: string, usual_m: number, what: string, max: number) =>
    size(key, text, what, 0, max) ?? usual_m;
  const width = (place: 'back' | 'middle' | 'front') => ({
    width_m: size(`alcove.${place}.width`, document.alcove[place].width, `width at the ${place}`),
    at_m: size(
      `alcove.${place}.at`,
      document.alcove[place].at,
      `where the width at the ${place} was taken`,
      0,
    ),
  });
  const { back, middle, front } = { back: width('back'), middle: width('middle'), front: width('front') };
  order(document, path, notes, [back.at_m, middle.at_m, front.at_m]);
  const walls: WallFit = {
    ends: document.ends,
    joint: document.joint,
    clearance_m: usual('clearance', document.clearance, CLEARANCE_M, 'joint at a wall', 0.1),
    widestCaulk_m: usual('widestCaulk', document.widestCaulk, WIDEST_CAULK_M, 'widest caulked joint', 0.1),
    scribeSpare_m: usual('scribeSpare', document.scribeSpare, SCRIBE_SPARE_M, 'spare for scribing', 0.1),
    backGap_m: size('backGap', document.backGap, 'gap at the back wall', 0, 0.1),
    depth_m: size('depth', document.depth, 'depth of the cabinet'),
    length_m: size('length', document.length, 'length of the cabinet'),
    overhang_m: usual('overhang', document.overhang, FRONT_OVERHANG_M, 'overhang at the front', 1),
    endOverhang_m: usual('endOverhang', document.endOverhang, END_OVERHANG_M, 'overhang at the end', 1),
    alcove: {
      back,
      middle,
      front,
      reach_m: size('alcove.reach', document.alcove.reach, 'depth of the side walls'),
    },
  };
  const { door, passage, stair, lift } = document;
  const doorSizes = {
    width_m: size('door.width', door.width, 'width of the door'),
    height_m: size('door.height', door.height, 'height of the door'),
  };
  const passageSizes = {
    before_m: size('passage.before', passage.before, 'width before the corner'),
    after_m: size('passage.after', passage.after, 'width after the corner'),
    height_m: size('passage.height', passage.height, 'height of the passage'),
  };
  const stairSizes = {
    before_m: size('stair.flight', stair.flight, 'width of the flight'),
    after_m: size('stair.landing', stair.landing, 'depth of the landing'),
    height_m: size('stair.height', stair.height, 'headroom of the stair'),
  };
  const liftSizes = {
    width_m: size('lift.width', lift.width, 'width of the lift'),
    depth_m: size('lift.depth', lift.depth, 'depth of the lift'),
    height_m: size('lift.height', lift.height, 'height of the lift'),
  };
  const liftEach_kg = notes.or(at('liftEach'), document.liftEach, LIFT_EACH_KG, (text, ask) =>
    readMass_kg(text, { ...ask, what: 'what one person carries', min: 1, max: 100 }),
  );
  const way: WayIn = {
    door: whole(doorSizes),
    passage: whole(passageSizes),
    stair: whole(stairSizes),
    lift: whole(liftSizes),
    liftEach_kg: liftEach_kg ?? LIFT_EACH_KG,
  };
  return { walls, way };
}

type Known<T> = { readonly [K in keyof T]: number };

function whole<T extends Record<string, number | null>>(sizes: T): Known<T> | null {
  return Object.values(sizes).every((size) => size !== null) ? (sizes as Known<T>) : null;
}

/** Back, middle and front are taken in this order from the back wall. */
function order(
  document: FitDocument,
  path: string,
  notes: Notes,
  [back, middle, front]: readonly (number | null)[],
): void {
  const out = (place: 'middle' | 'front', before: string) =>
    notes.problem(
      `${path}.alcove.${place}.at`,
      'fit.order',
      `The width at the ${place} was taken no farther from the back wall than the one ${before}.`,
      document.alcove[place].at,
      `farther out than ${before}`,
    );
  if (back != null && middle != null && middle <= back) out('middle', 'at the back');
  if (middle != null && front != null && front <= middle) out('front', 'in the middle');
  else if (middle == null && back != null && front != null && front <= back) out('front', 'at the back');
}
