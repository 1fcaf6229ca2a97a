/** How thick, or how much on an area: the reader of films and coverage. */

import type { Ask } from './ask.ts';
import type { Result } from './problem.ts';
import { type Dimensioned, type Found, readQuantity } from './reader.ts';
import { compact, isBareOunce, type NamedUnit, named, over, unitFor } from './unit-words.ts';
import type { UnitOf } from './units.ts';

export interface FilmAsk extends Ask<UnitOf<'film'>> {
  /** Density of the mixed resin; needed for weight per area. More than 0. */
  readonly density_kg_m3?: number | undefined;
}

const byWeight = /\(? ?\b(?:by weight|weight|wt|avdp|av|avoirdupois)\b\.? ?\)?/i;

/** "4 oz/sq ft by weight" and "4 oz by weight per sq ft" both name the ounce. */
function split(words: string): readonly string[] {
  const slashed = words.replace(/ ?\bper\b ?/i, '/');
  const weight = byWeight.test(slashed) ? ' weight' : '';
  const [above = '', ...below] = slashed.replace(byWeight, '').split('/');
  return [`${above.trim()}${weight}`, ...below.map((part) => part.trim())];
}

function thickness(words: string): NamedUnit | undefined {
  const unit = unitFor('length', words);
  return unit === undefined ? undefined : named('film', unit.name);
}

function find(words: string): Found | undefined {
  const [above = '', below, rest] = split(words);
  if (rest !== undefined) return undefined;
  if (below === undefined) {
    if (isBareOunce(above))
      return { code: 'no-area', about: `"${words}" says how much, but not on what area` };
    return thickness(words);
  }
  const areaBelow = unitFor('area', below);
  if (areaBelow !== undefined) {
    if (isBareOunce(above)) {
      return { code: 'oz', about: '"oz" can be a volume or a weight: say fl oz (volume) or oz by weight' };
    }
    const room = unitFor('volume', above);
    if (room !== undefined) return over('film', room, areaBelow);
    const weight = unitFor('mass', above);
    if (weight !== undefined) return { ...over('film', weight, areaBelow), byMass: true };
    return undefined;
  }
  const areaAbove = unitFor('area', above);
  if (areaAbove === undefined) return undefined;
  if (isBareOunce(below)) {
    return { code: 'oz', about: '"oz" can be a volume or a weight: say fl oz (volume)' };
  }
  const room = unitFor('volume', compact(below));
  if (room === undefined) return undefined;
  // A spreading rate: the film is volume over area, so the ratio is that of the volume to the area.
  const film = over('film', room, areaAbove);
  return (
    named('film', `${areaAbove.name}/${room.name}`) ?? {
      name: `${areaAbove.name}/${room.name}`,
      times: film.times,
      per: film.per,
      reciprocal: true,
    }
  );
}

const film: Dimensioned = {
  name: 'film',
  what: 'film',
  example: '4 fl oz/sq ft, 1.3 mm or 50 mil',
  find,
  byName: (name) => named('film', name),
  shown: { us: 'fl oz/sq ft', metric: 'mm' },
  floor: 0,
  powers: true,
};

/**
 * A film as its thickness in metres: 1.3 mm, 50 mil, 1/16 in, 4 fl oz/sq ft, 40 sq ft/gal, 1.3 L/m2, 0.8
 * m2/L; with the density in the question also 1.4 kg/m2, 130 g/sq ft, 4.6 oz by weight/sq ft. "oz/sq ft"
 * alone is refused. Throws RangeError when the density in the question is not more than 0.
 */
export function readFilm_m(text: string, ask: FilmAsk = {}): Result<number> {
  const density_kg_m3 = ask.density_kg_m3;
  if (density_kg_m3 !== undefined && !(density_kg_m3 > 0 && Number.isFinite(density_kg_m3))) {
    throw new RangeError(`density_kg_m3 is ${density_kg_m3}; allowed: more than 0`);
  }
  return readQuantity(text, ask, film, density_kg_m3);
}
