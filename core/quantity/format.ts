/**
 * Quantities as text for people. Every formatter is pure and knows no locale: a point for decimals, no
 * thousands marks, rounding half away from zero, never "-0". All throw RangeError on NaN, Infinity and
 * figures beyond 1e15 in the unit shown.
 */

import { type Kind, shownFor, withUnit } from './display.ts';
import { decimalsFor, fixed, roundTo, settle, trimmed } from './rounding.ts';
import { finite, fromSI, type System, toSI } from './units.ts';

export type { Kind } from './display.ts';
export { formatDuration } from './format-duration.ts';
export { formatLength, type LengthStyle } from './format-length.ts';
export { formatRange } from './format-range.ts';

export interface Style {
  /** Decimals instead of the usual ones; 0 to 12. */
  readonly decimals?: number | undefined;
}

function format(si: number, kind: Kind, system: System, style: Style): string {
  finite(kind, si);
  const first = shownFor(kind, system, si);
  // Rounding may carry a figure over a limit: 999.6 mL is "1.00 L" and not "1000 mL".
  const rounded = roundTo(fromSI(si, first.unit), style.decimals ?? first.decimals);
  const { unit, decimals } = shownFor(kind, system, toSI(rounded, first.unit));
  return withUnit(fixed(fromSI(si, unit), style.decimals ?? decimals), unit);
}

/** An area in m2 as "12.5 sq ft" or "1.16 m²". */
export function formatArea(area_m2: number, system: System, style: Style = {}): string {
  return format(area_m2, 'area', system, style);
}

/** A volume in m3 as "40.0 fl oz" (gallons from 1 gal on) or "1183 mL" (litres from 1 L on: "1.18 L"). */
export function formatVolume(volume_m3: number, system: System, style: Style = {}): string {
  return format(volume_m3, 'volume', system, style);
}

/**
 * A mass to be weighed out, in kg: grams in both systems, kilograms from 10 kg on. "850 g", "12.5 g", "10.25
 * kg".
 */
export function formatMass(mass_kg: number, system: System = 'metric', style: Style = {}): string {
  return format(mass_kg, 'mass', system, style);
}

/** The weight of a body to be lifted or shipped, in kg: "86 lb" or "39 kg". */
export function formatWeight(mass_kg: number, system: System, style: Style = {}): string {
  return format(mass_kg, 'weight', system, style);
}

/** A temperature in kelvin (0 or more) as "75 °F" or "24 °C". */
export function formatTemperature(temperature_K: number, system: System, style: Style = {}): string {
  if (temperature_K < 0) throw new RangeError(`temperature_K is ${temperature_K}; allowed: 0 or more`);
  return format(temperature_K, 'temperature', system, style);
}

/** A difference of temperature in kelvin as "5.0 °F" or "2.8 °C". */
export function formatTemperatureDifference(difference_K: number, system: System, style: Style = {}): string {
  return format(difference_K, 'temperatureDifference', system, style);
}

export interface FilmStyle extends Style {
  /**
   * Spoken of as an amount on an area (what is poured) or as a thickness; an amount in US units, a thickness
   * in metric when left out.
   */
  readonly as?: 'amount' | 'thickness' | undefined;
}

/** A film in metres as "4.0 fl oz/sq ft" or "1.27 mm"; as a thickness "50 mil", as an amount "1.27 L/m²". */
export function formatFilm(thickness_m: number, system: System, style: FilmStyle = {}): string {
  if (style.as === 'thickness') return format(thickness_m, 'filmThickness', system, style);
  if (style.as === 'amount' && system === 'metric') {
    return withUnit(fixed(fromSI(finite('thickness_m', thickness_m), 'L/m2'), style.decimals ?? 2), 'L/m2');
  }
  return format(thickness_m, 'film', system, style);
}

/** A viscosity in Pa s with three significant digits: "1200 cP", "1200 mPa·s", "12.5 Pa·s". */
export function formatViscosity(viscosity_Pa_s: number, system: System, style: Style = {}): string {
  finite('viscosity_Pa_s', viscosity_Pa_s);
  const first = shownFor('viscosity', system, viscosity_Pa_s).unit;
  const value = settle(fromSI(viscosity_Pa_s, first));
  if (style.decimals !== undefined) return withUnit(fixed(value, style.decimals), first);
  const rounded = roundTo(value, decimalsFor(value, 3));
  const { unit } = shownFor('viscosity', system, toSI(rounded, first));
  return withUnit(trimmed(settle(fromSI(toSI(rounded, first), unit)), 12), unit);
}

/** A density in kg/m3 as "9.18 lb/gal" or "1.10 g/mL". */
export function formatDensity(density_kg_m3: number, system: System, style: Style = {}): string {
  return format(density_kg_m3, 'density', system, style);
}

/** A fraction as "35%". */
export function formatPercent(fraction: number, style: Style = {}): string {
  return format(fraction, 'percent', 'metric', style);
}

/**
 * Parts of A to parts of B as "2:1 by volume", with at most three decimals. Throws RangeError unless both are
 * more than 0.
 */
export function formatRatio(ratio: { a: number; b: number; basis: 'volume' | 'weight' }): string {
  if (!(ratio.a > 0 && ratio.b > 0)) {
    throw new RangeError(`ratio is ${ratio.a}:${ratio.b}; allowed: both more than 0`);
  }
  return `${trimmed(ratio.a, 3)}:${trimmed(ratio.b, 3)} by ${ratio.basis}`;
}
