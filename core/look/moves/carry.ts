/** Where a move takes a speck of the film, and where a speck came from. */

import type { Move } from '../move.ts';
import { dragCarry } from './drag-carry.ts';
import { puddleCarry } from './puddle-carry.ts';
import { strokeCarry } from './stroke-carry.ts';
import { swirlCarry } from './swirl-carry.ts';
import { tiltCarry } from './tilt-carry.ts';
import { waverCarry } from './waver-carry.ts';

/** Both ways of one move. A speck is (x, y) in metres in the first two places of `speck`, changed in place. */
export interface Carry {
  /** To where the speck is after the move. */
  readonly on: (speck: Float64Array) => void;
  /** To where the speck was before it; false when it was not on the board yet: it is in the puddle this move pours. */
  readonly back: (speck: Float64Array) => boolean;
}

/**
 * Both ways of a move, ready to be called millions of times. Throws RangeError naming the figure that is out of range: all
 * must be finite; radius, width of a stroke, film, wavelength and draw above 0; depth 0 to 1.
 */
export function carry(move: Move): Carry {
  for (const [name, value] of Object.entries(move))
    for (const figure of Array.isArray(value) ? value : [value])
      if (typeof figure === 'number' && !Number.isFinite(figure))
        throw new RangeError(`${move.kind}: ${name} must be a finite number, not ${figure}`);
  switch (move.kind) {
    case 'puddle':
      return puddleCarry(move);
    case 'drag':
      return dragCarry(move);
    case 'stroke':
      return strokeCarry(move);
    case 'swirl':
      return swirlCarry(move);
    case 'waver':
      return waverCarry(move);
    case 'tilt':
      return tiltCarry(move);
  }
}
