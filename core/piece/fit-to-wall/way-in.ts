/** Every narrow place between the van and the wall, answered for one piece. */
import { type CarryAnswer, carriers, intoBox, type Load, roundCorner, throughDoor } from './carry-in.ts';

export interface WayIn {
  /** Sizes of a place; null: not measured, or not on the way. */
  readonly door: { readonly width_m: number; readonly height_m: number } | null;
  readonly passage: Corner | null;
  readonly stair: Corner | null;
  readonly lift: { readonly width_m: number; readonly depth_m: number; readonly height_m: number } | null;
  readonly liftEach_kg: number;
}

/** A square corner between two widths under a ceiling. */
export interface Corner {
  readonly before_m: number;
  readonly after_m: number;
  readonly height_m: number;
}

export interface WayAnswers {
  readonly door: CarryAnswer | null;
  readonly passage: CarryAnswer | null;
  readonly stair: CarryAnswer | null;
  readonly lift: CarryAnswer | null;
  readonly people: number;
}

/**
 * Door, corner of a passage, landing of a stair, lift, and how many people carry.
 *
 * @throws RangeError unless all sizes are positive.
 */
export function wayIn(load: Load, way: WayIn): WayAnswers {
  const round = (corner: Corner | null) =>
    corner && roundCorner(load, corner.before_m, corner.after_m, corner.height_m);
  return {
    door: way.door && throughDoor(load, way.door.width_m, way.door.height_m),
    passage: round(way.passage),
    stair: round(way.stair),
    lift: way.lift && intoBox(load, way.lift.width_m, way.lift.depth_m, way.lift.height_m),
    people: carriers(load.mass_kg, way.liftEach_kg),
  };
}
