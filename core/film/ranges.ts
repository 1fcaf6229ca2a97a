import { positive } from '#core/quantity/domain.ts';

/** A computed value and the ends of the range to print with it, all in the unit of the value. */
export interface Spread {
  readonly low: number;
  readonly value: number;
  readonly high: number;
}

/** How far the viscosity of a resin in a shop may be off, as a factor either way (typical; an estimate from memory). */
export const VISCOSITY_FACTOR = 1.5;

/**
 * Range of a quantity that goes with Theta to a power, when the viscosity may be off by a factor either way: value divided
 * and multiplied by factor^|power|. With power 1/2 (faces, run-off, bubbles, tilt) and 1.5 that is -18 % and +22 %.
 * Powers of the others: 1 thinning and drip growth, 1/8 puddle radius, -1/2 face film.
 * @param value finite, any sign @param thetaPower exponent of Theta, finite @param viscosityFactor from 1
 * @throws RangeError outside these, or when the range would not be finite.
 */
export function rangeFromViscosity(
  value: number,
  thetaPower: number,
  viscosityFactor: number = VISCOSITY_FACTOR,
): Spread {
  if (!Number.isFinite(value)) throw new RangeError(`value = ${value}: allowed any finite value`);
  if (!Number.isFinite(thetaPower))
    throw new RangeError(`thetaPower = ${thetaPower}: allowed any finite value`);
  if (!(viscosityFactor >= 1))
    throw new RangeError(`viscosityFactor = ${viscosityFactor}: allowed 1 or more`);
  const by = positive('viscosityFactor^power', viscosityFactor ** Math.abs(thetaPower), '');
  const ends = [value / by, value * by].sort((a, b) => a - b);
  if (!Number.isFinite(ends[0]! + ends[1]!))
    throw new RangeError(`value = ${value}: allowed values whose range stays finite`);
  return { low: ends[0]!, value, high: ends[1]! };
}
