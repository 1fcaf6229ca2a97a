/** The way to the room: door, corner of a passage, lift, and how many hands. */

/** A flat piece with its longest measure first: longest diagonal of the outline, its short side and its thickness. */
export interface Load {
  readonly longest_m: number;
  readonly short_m: number;
  readonly thickness_m: number;
  readonly mass_kg: number;
}

export interface CarryAnswer {
  readonly goes: boolean;
  /** Room left at the tightest, m; negative: short by that much. */
  readonly spare_m: number;
}

/** What one person is asked to lift near the body: 25 kg (a shop default after published lifting guidance; from memory). */
export const LIFT_EACH_KG = 25;

function check(load: Load): void {
  if (!(load.longest_m > 0 && load.short_m > 0 && load.thickness_m > 0 && load.mass_kg >= 0))
    throw new RangeError('sizes of a load must be positive and its mass 0 or more');
}

/**
 * Through a door, long way ahead: on edge, its short side against the height and its thickness against the width, or laid flat;
 * the better of the two. Counts on a straight run in front of the door as long as the piece.
 *
 * @throws RangeError unless sizes are positive.
 */
export function throughDoor(load: Load, width_m: number, height_m: number): CarryAnswer {
  check(load);
  if (!(width_m > 0 && height_m > 0)) throw new RangeError('a door has a width and a height');
  const onEdge = Math.min(height_m - load.short_m, width_m - load.thickness_m);
  const flat = Math.min(width_m - load.short_m, height_m - load.thickness_m);
  const spare_m = Math.max(onEdge, flat);
  return { goes: spare_m >= 0, spare_m };
}

/**
 * Longest thing of a thickness that goes round a square corner between passages a and b wide, kept level: the least over the
 * turn of (a cos + b sin - t) / (sin cos). Without thickness the classical (a^(2/3) + b^(2/3))^(3/2).
 *
 * @throws RangeError unless a and b are positive and 0 <= thickness < the narrower of them.
 */
export function longestRoundCorner_m(a_m: number, b_m: number, thickness_m: number): number {
  if (!(a_m > 0 && b_m > 0 && thickness_m >= 0 && thickness_m < Math.min(a_m, b_m)))
    throw new RangeError('passages must be wider than the piece is thick');
  const fits = (turn: number) =>
    (a_m * Math.cos(turn) + b_m * Math.sin(turn) - thickness_m) / (Math.sin(turn) * Math.cos(turn));
  // One valley: thirds of the interval find its floor.
  let low = 1e-6;
  let high = Math.PI / 2 - 1e-6;
  while (high - low > 1e-9) {
    const third = (high - low) / 3;
    if (fits(low + third) < fits(high - third)) high -= third;
    else low += third;
  }
  return fits((low + high) / 2);
}

/**
 * Round a square corner of a passage, or the landing of a stair, standing on edge. Tilted up by the slack under the ceiling the
 * piece is shorter in plan, and that is counted: plan length = sqrt(longest^2 - slack^2), slack = height - short side.
 *
 * @throws RangeError unless sizes are positive.
 */
export function roundCorner(load: Load, a_m: number, b_m: number, height_m: number): CarryAnswer {
  check(load);
  if (!(a_m > 0 && b_m > 0 && height_m > 0)) throw new RangeError('a passage has two widths and a height');
  if (load.short_m > height_m) return { goes: false, spare_m: height_m - load.short_m };
  if (load.thickness_m >= Math.min(a_m, b_m))
    return { goes: false, spare_m: Math.min(a_m, b_m) - load.thickness_m };
  const slack = Math.min(height_m - load.short_m, load.longest_m);
  const plan = Math.sqrt(load.longest_m ** 2 - slack ** 2);
  const spare_m = longestRoundCorner_m(a_m, b_m, load.thickness_m) - plan;
  return { goes: spare_m >= 0, spare_m };
}

/**
 * Into a lift or a van: its longest diagonal against the diagonal of the room inside. Needed, not always enough: a wide piece
 * may bind before.
 *
 * @throws RangeError unless sizes are positive.
 */
export function intoBox(load: Load, width_m: number, depth_m: number, height_m: number): CarryAnswer {
  check(load);
  if (!(width_m > 0 && depth_m > 0 && height_m > 0)) throw new RangeError('a lift has three sizes');
  const spare_m = Math.hypot(width_m, depth_m, height_m) - load.longest_m;
  return { goes: spare_m >= 0, spare_m };
}

/**
 * People needed to carry it.
 *
 * @throws RangeError unless the mass is 0 or more and the share of each positive.
 */
export function carriers(mass_kg: number, each_kg = LIFT_EACH_KG): number {
  if (!(mass_kg >= 0 && each_kg > 0))
    throw new RangeError('mass must be 0 or more, the share of each positive');
  return Math.max(1, Math.ceil(mass_kg / each_kg - 1e-9));
}
