/** How the functions of core refuse an argument: the name, the value read, and what is allowed with its unit. */

/** Returns the value if it is finite and within [least, most]; throws RangeError otherwise. */
export function within(name: string, value: number, least: number, most: number, unit = ''): number {
  if (!(value >= least && value <= most))
    throw new RangeError(`${name} = ${value}: allowed ${least} to ${most} ${unit}`.trimEnd());
  return value;
}

/** Returns the value if it is finite and greater than zero; throws RangeError otherwise. */
export function positive(name: string, value: number, unit: string): number {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY))
    throw new RangeError(`${name} = ${value}: allowed any finite value above 0 ${unit}`.trimEnd());
  return value;
}

/** Returns the value if it is finite and zero or more; throws RangeError otherwise. */
export function notNegative(name: string, value: number, unit: string): number {
  if (!(value >= 0 && value < Number.POSITIVE_INFINITY))
    throw new RangeError(`${name} = ${value}: allowed any finite value from 0 ${unit}`.trimEnd());
  return value;
}
