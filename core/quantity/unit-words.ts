/** The words people use for units, and what they stand for. */

import type { Unit } from './units.ts';
import { type Dimension, unitIn } from './units.ts';

const words = {
  length: {
    m: 'm meter meters metre metres',
    cm: 'cm centimeter centimeters centimetre centimetres',
    mm: 'mm millimeter millimeters millimetre millimetres',
    um: 'um micron microns micrometer micrometers micrometre micrometres',
    in: 'in inch inches ins "',
    ft: "ft foot feet '",
    yd: 'yd yds yard yards',
    mil: 'mil mils thou',
  },
  area: {
    m2: 'm2 sqm squaremeter squaremeters squaremetre squaremetres',
    cm2: 'cm2 sqcm',
    mm2: 'mm2 sqmm',
    'sq in': 'sqin in2 sqinch sqinches squareinch squareinches',
    'sq ft': 'sqft ft2 sf sqfoot sqfeet squarefoot squarefeet',
  },
  volume: {
    m3: 'm3 cum cubicmeter cubicmeters cubicmetre cubicmetres',
    L: 'l liter liters litre litres ltr',
    mL: 'ml cc cm3 milliliter milliliters millilitre millilitres',
    'cu in': 'cuin in3 cubicinch cubicinches',
    'cu ft': 'cuft ft3 cubicfoot cubicfeet',
    'fl oz': 'floz flozs fluidoz fluidounce fluidounces flounce flounces ozfl',
    cup: 'cup cups',
    pt: 'pt pts pint pints',
    qt: 'qt qts quart quarts',
    gal: 'gal gals gallon gallons',
  },
  mass: {
    kg: 'kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes',
    g: 'g gr gm gms gram grams gramme grammes',
    mg: 'mg milligram milligrams',
    lb: 'lb lbs pound pounds',
    oz: 'oz ounce ounces',
  },
  temperature: {
    K: 'k kelvin kelvins',
    C: 'c celsius centigrade',
    F: 'f fahrenheit',
  },
  viscosity: {
    'Pa s': 'pas pascalsecond pascalseconds',
    'mPa s': 'mpas millipascalsecond millipascalseconds',
    P: 'p poise',
    cP: 'cp cps centipoise',
  },
  time: {
    s: 's sec secs second seconds',
    min: 'min mins minute minutes m',
    h: 'h hr hrs hour hours',
    d: 'd day days',
    wk: 'wk wks week weeks w',
  },
  fraction: {
    '%': '% percent pct',
  },
} as const;

type Worded = keyof typeof words;

/** Dimension to word to unit name, turned round once. */
const index = new Map<string, ReadonlyMap<string, string>>(
  Object.entries(words).map(([dimension, table]) => [
    dimension,
    new Map(
      Object.entries(table).flatMap(([name, list]) => list.split(' ').map((word) => [word, name] as const)),
    ),
  ]),
);

/** Words without case, points, spaces and brackets: "sq. ft." is "sqft", "fl. oz" is "floz", "ft²" is "ft2". */
export function compact(text: string): string {
  return text
    .toLowerCase()
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/[\s.()^·*-]/g, '');
}

/**
 * The name of the unit meant by some words, or undefined. Temperatures may carry a degree sign or "degrees".
 */
export function unitNameFor(dimension: Worded, text: string): string | undefined {
  let word = compact(text);
  if (dimension === 'volume') word = word.replace(/^us(?=.)/, '');
  if (dimension === 'temperature') word = word.replace(/^(?:°|degrees?|deg)(?=.)/, '');
  if (dimension === 'mass')
    word = word.replace(/^(oz|ounces?)(?:byweight|weight|wt|avdp|av|avoirdupois)$/, '$1');
  return index.get(dimension)?.get(word);
}

/** "oz" alone, which may be a volume or a weight. */
export function isBareOunce(text: string): boolean {
  return /^(?:us)?(?:oz|ozs|ounce|ounces)$/.test(compact(text));
}

export interface NamedUnit extends Unit {
  readonly name: string;
}

/** The unit meant, with its name. */
export function unitFor(dimension: Worded, text: string): NamedUnit | undefined {
  const name = unitNameFor(dimension, text);
  return name === undefined ? undefined : named(dimension, name);
}

/** A unit by its own name, with its name. */
export function named(dimension: Dimension, name: string): NamedUnit | undefined {
  const unit = unitIn(dimension, name);
  return unit === undefined ? undefined : { ...unit, name };
}

/** One unit over another: the exact one of the table if it is there, else composed. */
export function over(dimension: Dimension, above: NamedUnit, below: NamedUnit): NamedUnit {
  const name = `${above.name}/${below.name}`;
  return named(dimension, name) ?? { name, times: above.times * below.per, per: above.per * below.times };
}

/** How a unit is printed: "sq ft", "m²", "°F". */
export function label(name: string): string {
  if (name === 'C' || name === 'F') return `°${name}`;
  if (name.startsWith('delta ')) return name === 'delta K' ? 'K' : `°${name.slice(6)}`;
  if (name === 'Pa s' || name === 'mPa s') return name.replace(' ', '·');
  return name
    .replace(/^um$/, 'µm')
    .replace(/([a-z])2(?=\/|$)/g, '$1²')
    .replace(/([a-z])3(?=\/|$)/g, '$1³');
}
