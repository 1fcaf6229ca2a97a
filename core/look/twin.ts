/** A move done again on the other side, for a look that is the same on both. */
import type { LookMoveDocument, SYMMETRIES } from './look-document.ts';
import type { Place } from './move.ts';

export type Symmetry = (typeof SYMMETRIES)[number];

interface Mirror {
  readonly place: (p: Place) => Place;
  readonly heading: (rad: number) => number;
  /** -1 where left and right change over. */
  readonly hand: 1 | -1;
}

const MIRRORS: Readonly<Record<Exclude<Symmetry, 'none'>, (middle: Place) => Mirror>> = {
  'left and right': ([x]) => ({
    place: (p) => [2 * x - p[0], p[1]],
    heading: (rad) => Math.PI - rad,
    hand: -1,
  }),
  'front and back': ([, y]) => ({
    place: (p) => [p[0], 2 * y - p[1]],
    heading: (rad) => -rad,
    hand: -1,
  }),
  'half turn': ([x, y]) => ({
    place: (p) => [2 * x - p[0], 2 * y - p[1]],
    heading: (rad) => rad + Math.PI,
    hand: 1,
  }),
};

/**
 * The same move on the other side of the middle; null for what is done to the whole film alike (waver, tilt, fog, buffer: a
 * waver of the other hand does not exist, so natural edges differ a little from side to side, as they do on the bench).
 */
export function twinOf(move: LookMoveDocument, symmetry: Symmetry, middle: Place): LookMoveDocument | null {
  if (symmetry === 'none') return null;
  const mirror = MIRRORS[symmetry](middle);
  const at = (p: Place): [number, number] => {
    const [x, y] = mirror.place(p);
    return [x, y];
  };
  switch (move.kind) {
    case 'puddle':
    case 'stroke':
      return { ...move, path: move.path.map(at) };
    case 'comb':
      return { ...move, through: at(move.through), heading_rad: mirror.heading(move.heading_rad) };
    case 'swirl':
      return { ...move, centre: at(move.centre), turn_rad: mirror.hand * move.turn_rad };
    case 'waver':
    case 'tilt':
    case 'fogged edge':
    case 'clear buffer':
      return null;
  }
}

/** A place on the other side of the middle; null without symmetry. */
export function twinPlace(p: Place, symmetry: Symmetry, middle: Place): Place | null {
  return symmetry === 'none' ? null : MIRRORS[symmetry](middle).place(p);
}

/** Whether a place lies on the side that is made from the other: right, or back for front and back. */
export function otherSide([x, y]: Place, symmetry: Symmetry, middle: Place): boolean {
  if (symmetry === 'none') return false;
  return symmetry === 'front and back' ? y > middle[1] : x > middle[0];
}
