import type { Coat, Colour } from '#core/mix/coat.ts';
import { checkColours } from '#core/mix/colourant-limits.ts';
import { sayRange } from '#core/quantity/ask.ts';
import { readFilm_m, readMass_kg, readPercent, readTemperature_K } from '#core/quantity/read.ts';
import { named } from '#core/quantity/unit-words.ts';
import type { System } from '#core/quantity/units.ts';
import type { ResinCard } from '#core/resin/model.ts';
import type { CoatDocument } from './document.ts';
import type { Notes } from './notes.ts';
import type { RoomRead } from './read-room.ts';

/** One coat; null where something it needs is missing, not readable or not possible: `notes` then say what. */
export function readCoat(
  document: CoatDocument,
  path: string,
  cards: readonly ResinCard[],
  room: RoomRead,
  notes: Notes,
): Coat | null {
  const card = cards.find((known) => known.id === document.resin);
  if (document.resin.trim() === '') notes.miss(`${path}.resin`, 'a resin');
  else if (card === undefined)
    notes.problem(
      `${path}.resin`,
      'coat.resin',
      'There is no resin card with this id.',
      document.resin,
      cards.map((known) => known.id).join(', '),
    );
  const density_kg_m3 = card?.model.density_kg_m3 ?? 1100;
  const largest = card?.largestFilm_m ?? 0.02;
  const film_m = notes.need(`${path}.film`, document.film, 'the film on the top', (text, ask) =>
    readFilm_m(text, { ...ask, what: 'film', min: 0.00005, max: 0.05, density_kg_m3 }),
  );
  if (film_m !== null && card !== undefined && film_m > largest * 1.0001)
    notes.problem(
      `${path}.film`,
      'coat.film-too-thick',
      `${card.name} may not be poured this thick in one coat: it would heat itself.`,
      document.film,
      filmLimit(largest, notes.system ?? 'us'),
    );
  const wrapEdges = document.edges === 'wrapped';
  const faceFilm_m = wrapEdges
    ? notes.need(`${path}.faceFilm`, document.faceFilm, 'the film on the faces', (text, ask) =>
        readFilm_m(text, { ...ask, what: 'face film', min: 0.00002, max: 0.01, density_kg_m3 }),
      )
    : 0;
  const allowance = notes.or(`${path}.allowance`, document.allowance, 0.1, (text, ask) =>
    readPercent(text, { ...ask, what: 'spare', min: 0, max: 1 }),
  );
  const resin_K = notes.or(`${path}.resinTemperature`, document.resinTemperature, room.air_K, (text, ask) =>
    readTemperature_K(text, { ...ask, what: 'resin temperature', min: 283.15, max: 318.15 }),
  );
  const largestCup_kg = notes.take(`${path}.largestCup`, document.largestCup, (text, ask) =>
    readMass_kg(text, { ...ask, what: 'largest cup', min: 0.02, max: 20 }),
  );
  const colours = readColours(document, path, notes);
  if (
    card === undefined ||
    film_m === null ||
    faceFilm_m === null ||
    allowance === null ||
    resin_K === null ||
    colours === null ||
    film_m > largest * 1.0001 ||
    (document.largestCup.trim() !== '' && largestCup_kg === null)
  )
    return null;
  const coat: Coat = {
    id: document.id,
    name: document.name || document.kind,
    kind: document.kind,
    card,
    film_m,
    faceFilm_m,
    wrapEdges,
    colours,
    allowance,
    resin: { conversion: 0, temperature_K: resin_K },
    board_K: room.board_K ?? room.air_K ?? resin_K,
    crew: document.crew,
    largestCup_kg,
    fewestCups: 1,
  };
  const wrong = checkColours(coat).map((problem) => ({ ...problem, path: `${path}.${problem.path}` }));
  for (const problem of wrong) notes.add(problem);
  return wrong.some((problem) => !problem.code.startsWith('warning')) ? null : coat;
}

/** Told with four digits and rounded down, so that what is told may be typed. */
function filmLimit(largest_m: number, system: System): string {
  const unit = named('film', system === 'us' ? 'fl oz/sq ft' : 'mm')!;
  return sayRange(undefined, largest_m, unit)!;
}

/** A coat without colours is poured clear: one colour, no colourant. */
function readColours(document: CoatDocument, path: string, notes: Notes): readonly Colour[] | null {
  if (document.colours.length === 0)
    return [{ name: 'clear', share: 1, colourant: 'none', load: 0, swatch: '#c9c4b4' }];
  const single = document.colours.length === 1;
  const colours = document.colours.map((colour, index): Colour | null => {
    const at = `${path}.colours.${index}`;
    const share =
      single && colour.share.trim() === ''
        ? 1
        : notes.need(`${at}.share`, colour.share, 'the share of this colour', (text, ask) =>
            readPercent(text, { ...ask, what: 'share', min: 0.001, max: 1 }),
          );
    const load =
      colour.colourant === 'none'
        ? 0
        : notes.need(`${at}.load`, colour.load, 'how much colourant', (text, ask) =>
            readPercent(text, { ...ask, what: 'colourant', min: 0, max: 1 }),
          );
    if (share === null || load === null) return null;
    return {
      name: colour.name || `colour ${index + 1}`,
      share,
      colourant: colour.colourant,
      load,
      swatch: colour.swatch,
    };
  });
  const whole = colours.filter((colour) => colour !== null);
  return whole.length === colours.length ? whole : null;
}
