/** The figure itself when it is above `least`, else a RangeError that names it. */
export function above(name: string, value: number, least = 0): number {
  if (!(value > least)) throw new RangeError(`${name} must be above ${least}, not ${value}`);
  return value;
}
