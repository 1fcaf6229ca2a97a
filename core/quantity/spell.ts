/**
 * Quantities as text for documents: exact enough that reading back what was spelled gives the same value
 * within half a step, and in the form a person would type. The steps are finer than any tool in the shop. All
 * throw RangeError on NaN, Infinity and figures beyond 1e15 in the unit spelled.
 */

import { fixed, settle, trimmed } from './rounding.ts';
import { finite, fromSI, type System, type UnitName } from './units.ts';

interface Spelling {
  readonly unit: UnitName;
  readonly decimals: number;
}

const spellings = {
  area: { us: { unit: 'sq ft', decimals: 5 }, metric: { unit: 'm2', decimals: 6 } },
  volume: { us: { unit: 'fl oz', decimals: 4 }, metric: { unit: 'mL', decimals: 3 } },
  mass: { us: { unit: 'g', decimals: 3 }, metric: { unit: 'g', decimals: 3 } },
  weight: { us: { unit: 'lb', decimals: 4 }, metric: { unit: 'kg', decimals: 4 } },
  film: { us: { unit: 'fl oz/sq ft', decimals: 4 }, metric: { unit: 'mm', decimals: 4 } },
  density: { us: { unit: 'lb/gal', decimals: 4 }, metric: { unit: 'g/mL', decimals: 5 } },
  viscosity: { us: { unit: 'cP', decimals: 3 }, metric: { unit: 'mPa s', decimals: 3 } },
} as const satisfies Record<string, Record<System, Spelling>>;

function spell(si: number, kind: keyof typeof spellings, system: System): string {
  finite(kind, si);
  const { unit, decimals } = spellings[kind][system];
  return `${trimmed(fromSI(si, unit), decimals)} ${unit}`;
}

/**
 * A length in metres as it would be typed: inches with a fraction when it is a 64th of an inch (within a ten-
 * millionth of an inch), else inches with four decimals; millimetres with up to three decimals. Example:
 * spellLength(0.6477, 'us') is "25 1/2 in".
 */
export function spellLength(length_m: number, system: System): string {
  finite('length_m', length_m);
  if (system === 'metric') return `${trimmed(fromSI(length_m, 'mm'), 3)} mm`;
  const inches = settle(fromSI(length_m, 'in'));
  const parts = Math.round(Math.abs(inches) * 64);
  if (Math.abs(Math.abs(inches) * 64 - parts) > 64e-7 || parts === 0) return `${trimmed(inches, 4)} in`;
  let [above, below] = [parts % 64, 64];
  while (above > 0 && above % 2 === 0) [above, below] = [above / 2, below / 2];
  const whole = Math.floor(parts / 64);
  const sign = inches < 0 ? '-' : '';
  if (above === 0) return `${sign}${whole} in`;
  return whole === 0 ? `${sign}${above}/${below} in` : `${sign}${whole} ${above}/${below} in`;
}

/** An area in m2, to 0.00001 sq ft or 0.000001 m2. */
export function spellArea(area_m2: number, system: System): string {
  return spell(area_m2, 'area', system);
}

/** A volume in m3, to 0.0001 fl oz or 0.001 mL. */
export function spellVolume(volume_m3: number, system: System): string {
  return spell(volume_m3, 'volume', system);
}

/** A mass in kg, in grams to 0.001 g in both systems. */
export function spellMass(mass_kg: number, system: System = 'metric'): string {
  return spell(mass_kg, 'mass', system);
}

/** The weight of a body in kg, to 0.0001 lb or 0.0001 kg. */
export function spellWeight(mass_kg: number, system: System): string {
  return spell(mass_kg, 'weight', system);
}

/** A film in metres, to 0.0001 fl oz/sq ft or 0.0001 mm. */
export function spellFilm(thickness_m: number, system: System): string {
  return spell(thickness_m, 'film', system);
}

/** A density in kg/m3, to 0.0001 lb/gal or 0.00001 g/mL. */
export function spellDensity(density_kg_m3: number, system: System): string {
  return spell(density_kg_m3, 'density', system);
}

/** A viscosity in Pa s, to 0.001 cP or 0.001 mPa s. */
export function spellViscosity(viscosity_Pa_s: number, system: System): string {
  return spell(viscosity_Pa_s, 'viscosity', system);
}

/** A temperature in kelvin, to 0.001 of a degree: "75 F", "24 C". */
export function spellTemperature(temperature_K: number, system: System): string {
  finite('temperature_K', temperature_K);
  const unit = system === 'us' ? 'F' : 'C';
  return `${trimmed(fromSI(temperature_K, unit), 3)} ${unit}`;
}

/** A difference of temperature in kelvin, to 0.001 of a degree: "5 F". */
export function spellTemperatureDifference(difference_K: number, system: System): string {
  finite('difference_K', difference_K);
  const unit = system === 'us' ? 'F' : 'C';
  return `${trimmed(fromSI(difference_K, `delta ${unit}`), 3)} ${unit}`;
}

/**
 * A duration in seconds in the largest unit that divides it to two decimals, else in seconds to 0.001 s: "1.5
 * h", "20 min", "90.25 s".
 */
export function spellDuration(time_s: number): string {
  finite('time_s', time_s);
  for (const unit of ['d', 'h', 'min'] as const) {
    const value = settle(fromSI(time_s, unit));
    if (Math.abs(value) >= 1 && settle(value * 2) === Math.round(value * 2))
      return `${trimmed(value, 1)} ${unit}`;
  }
  return `${trimmed(time_s, 3)} s`;
}

/** A fraction as a percentage, to 0.0001 %: "35%". */
export function spellPercent(fraction: number): string {
  return `${trimmed(fromSI(finite('fraction', fraction), '%'), 4)}%`;
}

/**
 * A mix ratio as it would be typed: "2:1 by volume"; up to six decimals. Throws RangeError unless both are
 * more than 0.
 */
export function spellRatio(ratio: { a: number; b: number; basis: 'volume' | 'weight' }): string {
  if (!(fixedIsPositive(ratio.a) && fixedIsPositive(ratio.b))) {
    throw new RangeError(`ratio is ${ratio.a}:${ratio.b}; allowed: both at least 0.000001`);
  }
  return `${trimmed(ratio.a, 6)}:${trimmed(ratio.b, 6)} by ${ratio.basis}`;
}

function fixedIsPositive(value: number): boolean {
  return Number.isFinite(value) && Number(fixed(value, 6)) > 0;
}
