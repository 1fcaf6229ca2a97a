/**
 * Readers of what people type. Each takes a text and a question, and answers with the SI value or with a
 * problem that says what was not understood, what was read and what is allowed. None throws on what was
 * typed, and none answers NaN or Infinity.
 *
 * Numbers: 25.5, 25,5 (a comma is a decimal comma unless it could mark thousands: "1,200" is refused as
 * ambiguous), 25 1/2, 25-1/2, 25½. Quantities below zero are refused unless the question allows them with
 * `min`; temperatures stop at absolute zero.
 */

import type { Ask } from './ask.ts';
import type { Result } from './problem.ts';
import { type Dimensioned, readQuantity } from './reader.ts';
import { compact, isBareOunce, named, over, unitFor } from './unit-words.ts';
import type { UnitOf } from './units.ts';

export type { Ask } from './ask.ts';
export { readAngle_rad } from './read-angle.ts';
export type { MixRatio } from './read-counts.ts';
export { readCount, readFactor, readPercent, readRatio, readRelativeHumidity } from './read-counts.ts';
export { readDuration_s } from './read-duration.ts';
export { type FilmAsk, readFilm_m } from './read-film.ts';

const length: Dimensioned = {
  name: 'length',
  what: 'length',
  example: '25 1/2 in, 2 ft 1 1/2 in or 648 mm',
  find: (words) => unitFor('length', words),
  byName: (name) => named('length', name),
  shown: { us: 'in', metric: 'mm' },
  floor: 0,
  next: { ft: 'in' },
};

/** A length in metres: 25 1/2", 25-1/2 in, 2' 1-1/2", 2 ft 1 1/2, 648mm, 64,8 cm. */
export function readLength_m(text: string, ask: Ask<UnitOf<'length'>> = {}): Result<number> {
  return readQuantity(text, ask, length);
}

const area: Dimensioned = {
  name: 'area',
  what: 'area',
  example: '12.5 sq ft or 1.16 m2',
  find: (words) => unitFor('area', words),
  byName: (name) => named('area', name),
  shown: { us: 'sq ft', metric: 'm2' },
  floor: 0,
  powers: true,
};

/** An area in square metres: 12.5 sq ft, 1.16 m2, 1800 in². */
export function readArea_m2(text: string, ask: Ask<UnitOf<'area'>> = {}): Result<number> {
  return readQuantity(text, ask, area);
}

const volume: Dimensioned = {
  name: 'volume',
  what: 'volume',
  example: '40 fl oz or 1200 mL',
  find: (words) => {
    if (isBareOunce(words)) {
      return { code: 'oz', about: '"oz" can be a volume or a weight: say fl oz (volume) or oz by weight' };
    }
    const weight = unitFor('mass', words);
    if (weight !== undefined)
      return { code: 'unknown-unit', about: `"${words}" is a weight, and a volume is needed` };
    return unitFor('volume', words);
  },
  byName: (name) => named('volume', name),
  shown: { us: 'fl oz', metric: 'mL' },
  floor: 0,
  powers: true,
};

/** A volume in cubic metres: 40 fl oz, 1.2 L, 1200 mL, 1 gal 2 qt. US measures. "oz" alone is refused. */
export function readVolume_m3(text: string, ask: Ask<UnitOf<'volume'>> = {}): Result<number> {
  return readQuantity(text, ask, volume);
}

const mass: Dimensioned = {
  name: 'mass',
  what: 'weight',
  example: '850 g, 1.2 kg or 2 lb 3 oz',
  find: (words) => {
    if (unitFor('volume', words) !== undefined) {
      return { code: 'unknown-unit', about: `"${words}" is a volume, and a weight is needed` };
    }
    return unitFor('mass', words);
  },
  byName: (name) => named('mass', name),
  shown: { us: 'lb', metric: 'kg' },
  floor: 0,
  next: { lb: 'oz' },
};

/** A mass in kilograms: 850 g, 1.2 kg, 2 lb 3 oz (avoirdupois ounces). */
export function readMass_kg(text: string, ask: Ask<UnitOf<'mass'>> = {}): Result<number> {
  return readQuantity(text, ask, mass);
}

const temperature: Dimensioned = {
  name: 'temperature',
  what: 'temperature',
  example: '75 °F or 24 °C',
  find: (words) => unitFor('temperature', words),
  byName: (name) => named('temperature', name),
  shown: { us: 'F', metric: 'C' },
  floor: 0,
};

/** A temperature in kelvin: 75F, 75 °F, 24C, 297 K. */
export function readTemperature_K(text: string, ask: Ask<UnitOf<'temperature'>> = {}): Result<number> {
  return readQuantity(text, ask, temperature);
}

const temperatureDifference: Dimensioned = {
  name: 'temperature-difference',
  what: 'temperature difference',
  example: '5 °F or 3 °C',
  find: (words) => {
    const unit = unitFor('temperature', words);
    return unit === undefined ? undefined : named('temperatureDifference', `delta ${unit.name}`);
  },
  byName: (name) => named('temperatureDifference', name),
  shown: { us: 'delta F', metric: 'delta C' },
};

/** A difference of temperature in kelvin, of either sign: 5 F is 2.78 K, -3 C is -3 K. */
export function readTemperatureDifference_K(
  text: string,
  ask: Ask<UnitOf<'temperatureDifference'>> = {},
): Result<number> {
  return readQuantity(text, ask, temperatureDifference);
}

const density: Dimensioned = {
  name: 'density',
  what: 'density',
  example: '1.10 g/mL, 1100 kg/m3 or 9.2 lb/gal',
  find: (words) => {
    const [above = '', below = '', rest] = words.replace(/ per /i, '/').split('/');
    if (rest !== undefined) return undefined;
    const [weight, room] = [unitFor('mass', above), unitFor('volume', below)];
    return weight === undefined || room === undefined ? undefined : over('density', weight, room);
  },
  byName: (name) => named('density', name),
  shown: { us: 'lb/gal', metric: 'g/mL' },
  floor: 0,
  powers: true,
};

/** A density in kg/m3: 1.10 g/mL, 1100 kg/m3, 9.2 lb/gal, 68 lb/ft3; any mass over any volume. */
export function readDensity_kg_m3(text: string, ask: Ask<UnitOf<'density'>> = {}): Result<number> {
  return readQuantity(text, ask, density);
}

const viscosity: Dimensioned = {
  name: 'viscosity',
  what: 'viscosity',
  example: '1200 cP, 1200 mPa s or 1.2 Pa s',
  find: (words) => {
    if (/^M ?Pa/.test(words)) {
      return { code: 'unknown-unit', about: `"${words}" is a million Pa s; type mPa s with a small m` };
    }
    return unitFor('viscosity', compact(words));
  },
  byName: (name) => named('viscosity', name),
  shown: { us: 'cP', metric: 'mPa s' },
  floor: 0,
};

/** A viscosity in Pa s: 1200 cP, 1200 mPa s, 1.2 Pa·s. */
export function readViscosity_Pa_s(text: string, ask: Ask<UnitOf<'viscosity'>> = {}): Result<number> {
  return readQuantity(text, ask, viscosity);
}
