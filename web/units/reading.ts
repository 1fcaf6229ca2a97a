/** What a typed quantity comes to in the other system, shown beside the field. */
import {
  formatFilm,
  formatLength,
  formatMass,
  formatTemperature,
  formatWeight,
} from '#core/quantity/format.ts';
import { readFilm_m, readLength_m, readMass_kg, readTemperature_K } from '#core/quantity/read.ts';
import type { System } from '#core/quantity/units.ts';

export type QuantityKind = 'length' | 'film' | 'temperature' | 'mass' | 'percent' | 'duration' | 'words';

const metricWords = /\d\s*(?:mm|cm|m|um|microns?|g|kg|ml|l|°?c|celsius|k)\b|\/\s*m2|m²/i;
const usWords = /["']|\d\s*(?:in|inch|inches|ft|feet|foot|yd|mils?|fl|oz|ounces?|lbs?|°?f|fahrenheit|sq)\b/i;

/** Which system a text is typed in, or null when it does not say. */
export function typedSystem(text: string): System | null {
  const us = usWords.test(text);
  const metric = metricWords.test(text);
  return us === metric ? null : us ? 'us' : 'metric';
}

/**
 * "648 mm" for "25 1/2 in": in the system on screen when the text is typed in the other, else in the other one.
 * null where there is nothing to add, or the text cannot be read (the problem beside the field says that).
 */
export function readingOf(kind: QuantityKind, text: string, system: System): string | null {
  if (text.trim() === '') return null;
  const typed = typedSystem(text);
  const to: System = typed === null ? system : typed === 'us' ? 'metric' : 'us';
  switch (kind) {
    case 'length': {
      const read = readLength_m(text);
      return read.ok
        ? formatLength(read.value, to, to === 'metric' && read.value < 0.02 ? { decimals: 1 } : {})
        : null;
    }
    case 'film': {
      const read = readFilm_m(text, { density_kg_m3: 1100 });
      return read.ok && read.value > 0 ? formatFilm(read.value, to) : null;
    }
    case 'temperature': {
      const read = readTemperature_K(text);
      return read.ok ? formatTemperature(read.value, to) : null;
    }
    case 'mass': {
      const read = readMass_kg(text);
      if (!read.ok) return null;
      return to === 'us' ? formatWeight(read.value, 'us') : formatMass(read.value);
    }
    default:
      return null;
  }
}
