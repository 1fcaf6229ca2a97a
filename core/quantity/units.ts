/**
 * The unit tables and the only conversions in the project.
 *
 * Every unit is a ratio of two whole numbers to its SI unit, so that a typed decimal is rounded once and not
 * twice: 648 mm is 648 x 1 / 1000, 25.5 in is 25.5 x 127 / 5000.
 *
 * Sources: NIST Special Publication 811 (2008), appendix B, and NIST Handbook 44, appendix C: inch 25.4 mm,
 * pound 0.45359237 kg, US gallon 231 cubic inches, all exact by definition; the rest follows from these by
 * counting (12 in a foot, 36 in a yard, 128 fl oz a gallon, 16 oz a pound). Feet are international feet; a
 * survey foot is 2 parts in a million longer and of no account on a bench.
 */

/**
 * SI value = (value + offset) x times / per; a reciprocal unit: times / per / value; by mass: also divided by
 * density.
 */
export interface Unit {
  readonly times: number;
  readonly per: number;
  /** Added before scaling: a thermometer's zero. */
  readonly offset?: number;
  /** Spreading rates as sq ft/gal, which fall as the film thickens. */
  readonly reciprocal?: true;
  /** Mass per area, which needs a density to become a thickness. */
  readonly byMass?: true;
}

const ounce_kg = { times: 45359237, per: 16e8 };
const fluidOunce_m3 = { times: 3785411784, per: 128e12 };

/** 1 US gal over 1 sq ft is 231/144 in = 58674/1440000 m thick. */
const gallonPerSquareFoot_m = { times: 58674, per: 1440000 };

export const units = {
  length: {
    m: { times: 1, per: 1 },
    cm: { times: 1, per: 100 },
    mm: { times: 1, per: 1000 },
    um: { times: 1, per: 1e6 },
    in: { times: 127, per: 5000 },
    ft: { times: 1524, per: 5000 },
    yd: { times: 4572, per: 5000 },
    mil: { times: 127, per: 5e6 },
  },
  area: {
    m2: { times: 1, per: 1 },
    cm2: { times: 1, per: 1e4 },
    mm2: { times: 1, per: 1e6 },
    'sq in': { times: 64516, per: 1e8 },
    'sq ft': { times: 9290304, per: 1e8 },
  },
  volume: {
    m3: { times: 1, per: 1 },
    L: { times: 1, per: 1000 },
    mL: { times: 1, per: 1e6 },
    'cu in': { times: 16387064, per: 1e12 },
    'cu ft': { times: 28316846592, per: 1e12 },
    'fl oz': fluidOunce_m3,
    cup: { times: 8 * fluidOunce_m3.times, per: fluidOunce_m3.per },
    pt: { times: 16 * fluidOunce_m3.times, per: fluidOunce_m3.per },
    qt: { times: 32 * fluidOunce_m3.times, per: fluidOunce_m3.per },
    gal: { times: 128 * fluidOunce_m3.times, per: fluidOunce_m3.per },
  },
  mass: {
    kg: { times: 1, per: 1 },
    g: { times: 1, per: 1000 },
    mg: { times: 1, per: 1e6 },
    lb: { times: 16 * ounce_kg.times, per: ounce_kg.per },
    oz: ounce_kg,
  },
  temperature: {
    K: { times: 1, per: 1 },
    C: { times: 1, per: 1, offset: 273.15 },
    F: { times: 5, per: 9, offset: 459.67 },
  },
  temperatureDifference: {
    'delta K': { times: 1, per: 1 },
    'delta C': { times: 1, per: 1 },
    'delta F': { times: 5, per: 9 },
  },
  density: {
    'kg/m3': { times: 1, per: 1 },
    'g/mL': { times: 1000, per: 1 },
    'lb/ft3': { times: 45359237e4, per: 28316846592 },
    'lb/gal': { times: 45359237e4, per: 3785411784 },
  },
  viscosity: {
    'Pa s': { times: 1, per: 1 },
    'mPa s': { times: 1, per: 1000 },
    P: { times: 1, per: 10 },
    cP: { times: 1, per: 1000 },
  },
  film: {
    m: { times: 1, per: 1 },
    cm: { times: 1, per: 100 },
    mm: { times: 1, per: 1000 },
    um: { times: 1, per: 1e6 },
    in: { times: 127, per: 5000 },
    mil: { times: 127, per: 5e6 },
    'fl oz/sq ft': { times: gallonPerSquareFoot_m.times, per: 128 * gallonPerSquareFoot_m.per },
    'L/m2': { times: 1, per: 1000 },
    'sq ft/gal': { ...gallonPerSquareFoot_m, reciprocal: true },
    'm2/L': { times: 1, per: 1000, reciprocal: true },
    'g/m2': { times: 1, per: 1000, byMass: true },
    'kg/m2': { times: 1, per: 1, byMass: true },
    'g/sq ft': { times: 1e5, per: 9290304, byMass: true },
    'oz/sq ft': { times: 45359237, per: 16 * 9290304, byMass: true },
  },
  time: {
    s: { times: 1, per: 1 },
    min: { times: 60, per: 1 },
    h: { times: 3600, per: 1 },
    d: { times: 86400, per: 1 },
    wk: { times: 604800, per: 1 },
  },
  fraction: {
    '1': { times: 1, per: 1 },
    '%': { times: 1, per: 100 },
  },
} as const satisfies Record<string, Record<string, Unit>>;

type Tables = typeof units;
export type Dimension = keyof Tables;
export type UnitOf<D extends Dimension> = { [K in D]: Extract<keyof Tables[K], string> }[D];
export type UnitName = UnitOf<Dimension>;

/** The units a unit can be converted to: those that share a dimension with it. */
export type Partner<U extends UnitName> = {
  [D in Dimension]: U extends UnitOf<D> ? UnitOf<D> : never;
}[Dimension];

/** The two ways of speaking about a job. */
export type System = 'us' | 'metric';

const dimensions = Object.keys(units) as Dimension[];

/** A unit of one dimension by its name, or undefined. */
export function unitIn(dimension: Dimension, name: string): Unit | undefined {
  const table: Record<string, Unit> = units[dimension];
  return Object.hasOwn(table, name) ? table[name] : undefined;
}

function unitNamed(name: string): Unit {
  for (const dimension of dimensions) {
    const unit = unitIn(dimension, name);
    if (unit !== undefined) return unit;
  }
  throw new RangeError(`unit is ${JSON.stringify(name)}; allowed: a unit listed in core/quantity/units.ts`);
}

/** Throws RangeError unless the value is a finite number; -0 becomes 0. */
export function finite(name: string, value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`${name} is ${value}; allowed: a finite number`);
  return value + 0;
}

function densityFor(density_kg_m3: number | undefined): number {
  if (density_kg_m3 === undefined || !(density_kg_m3 > 0) || !Number.isFinite(density_kg_m3)) {
    throw new RangeError(
      `density_kg_m3 is ${density_kg_m3}; allowed: more than 0 (mass per area needs the density of the mix)`,
    );
  }
  return density_kg_m3;
}

/**
 * A value in a unit, as SI (m, m2, m3, kg, K, kg/m3, Pa s, s, or a plain ratio; films in m).
 * Throws RangeError on a value that is not finite, on a spreading rate of 0 or less, and on mass per area
 * without a density.
 */
export function scaleToSI(value: number, unit: Unit, density_kg_m3?: number): number {
  finite('value', value);
  if (unit.reciprocal === true) {
    if (!(value > 0)) throw new RangeError(`spreading rate is ${value}; allowed: more than 0`);
    return finite('film', unit.times / unit.per / value);
  }
  const si = ((value + (unit.offset ?? 0)) * unit.times) / unit.per;
  return finite('result', unit.byMass === true ? si / densityFor(density_kg_m3) : si);
}

/** The reverse of scaleToSI, with the same domain. */
export function scaleFromSI(si: number, unit: Unit, density_kg_m3?: number): number {
  finite('value', si);
  if (unit.reciprocal === true) {
    if (!(si > 0)) throw new RangeError(`film is ${si} m; allowed: more than 0 for a spreading rate`);
    return finite('result', unit.times / unit.per / si);
  }
  const scaled = unit.byMass === true ? si * densityFor(density_kg_m3) : si;
  return finite('result', (scaled * unit.per) / unit.times - (unit.offset ?? 0));
}

/** A value in a named unit, as SI; see scaleToSI for what is thrown. Example: toSI(25.5, 'in') is 0.6477 m. */
export function toSI(value: number, unit: UnitName, density_kg_m3?: number): number {
  return scaleToSI(value, unitNamed(unit), density_kg_m3);
}

/** An SI value in a named unit; see scaleFromSI. Example: fromSI(0.6477, 'in') is 25.5. */
export function fromSI(si: number, unit: UnitName, density_kg_m3?: number): number {
  return scaleFromSI(si, unitNamed(unit), density_kg_m3);
}

/**
 * From one unit to another of the same dimension. Example: convert(4, 'fl oz/sq ft', 'mm') is 1.2733.
 * Throws RangeError when the two do not share a dimension, and as toSI and fromSI do.
 */
export function convert<U extends UnitName>(
  value: number,
  from: U,
  to: Partner<U>,
  density_kg_m3?: number,
): number {
  for (const dimension of dimensions) {
    const source = unitIn(dimension, from);
    const target = unitIn(dimension, to);
    if (source === undefined || target === undefined) continue;
    if (source === target) return finite('value', value);
    return scaleFromSI(scaleToSI(value, source, density_kg_m3), target, density_kg_m3);
  }
  throw new RangeError(
    `cannot convert ${JSON.stringify(from)} to ${JSON.stringify(to)}: no common dimension`,
  );
}
