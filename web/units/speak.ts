/** Computed figures in the words of one system; what every screen says a number with. */
import {
  formatArea,
  formatDuration,
  formatFilm,
  formatLength,
  formatMass,
  formatPercent,
  formatTemperature,
  formatVolume,
  formatWeight,
} from '#core/quantity/format.ts';
import { fixed } from '#core/quantity/rounding.ts';
import { fromSI, type System } from '#core/quantity/units.ts';

export interface Speak {
  readonly system: System;
  readonly length: (length_m: number) => string;
  readonly area: (area_m2: number) => string;
  readonly volume: (volume_m3: number) => string;
  /** On the scale: grams. */
  readonly mass: (mass_kg: number) => string;
  /** To be lifted or shipped. */
  readonly weight: (mass_kg: number) => string;
  readonly temperature: (temperature_K: number) => string;
  /** What is poured on an area. */
  readonly film: (film_m: number) => string;
  /** What stands on a face. */
  readonly thickness: (film_m: number) => string;
  readonly duration: (time_s: number) => string;
  readonly percent: (share: number) => string;
  /** Edge lengths added up: feet or metres. */
  readonly run: (length_m: number) => string;
}

export function speakIn(system: System): Speak {
  return {
    system,
    length: (v) => formatLength(v, system),
    area: (v) => formatArea(v, system),
    volume: (v) => formatVolume(v, system),
    mass: (v) => formatMass(v, system),
    weight: (v) => formatWeight(v, system),
    temperature: (v) => formatTemperature(v, system),
    film: (v) => formatFilm(v, system),
    thickness: (v) => formatFilm(v, system, { as: 'thickness' }),
    duration: (v) => formatDuration(v),
    percent: (v) => formatPercent(v),
    run: (v) => (system === 'us' ? `${fixed(fromSI(v, 'ft'), 1)} ft` : `${fixed(v, 2)} m`),
  };
}

const speakers: Readonly<Record<System, Speak>> = { us: speakIn('us'), metric: speakIn('metric') };

export function speaker(system: System): Speak {
  return speakers[system];
}

/** "+12 s" and "-1 min 30 s": time left over, or short. */
export function signedDuration(time_s: number): string {
  return time_s < 0 ? `${formatDuration(-time_s)} short` : `${formatDuration(time_s)} spare`;
}
