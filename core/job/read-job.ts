/**
 * From the texts of a job document to SI. Reads everything that is there and says what is not: `problems` are texts that
 * cannot be used (field, what was read, what is allowed), `missing` are empty fields a section still needs.
 */
import type { Coat, Colour } from '#core/mix/coat.ts';
import { checkColours } from '#core/mix/colourant-limits.ts';
import { formatFilm } from '#core/quantity/format.ts';
import type { Problem, Result } from '#core/quantity/problem.ts';
import { bad, good } from '#core/quantity/problem.ts';
import { readFilm_m, readMass_kg, readPercent, readTemperature_K } from '#core/quantity/read.ts';
import type { System } from '#core/quantity/units.ts';
import { BOARDS } from '#core/resin/boards.ts';
import type { Board, ResinCard } from '#core/resin/model.ts';
import { dayNumber, FIRST_YEAR, LAST_YEAR, moment_s } from './calendar.ts';
import { checkShape } from './check-job.ts';
import type { CoatDocument, JobDocument } from './document.ts';
import type { Missing } from './forecast.ts';
import { Notes } from './notes.ts';
import { type PieceRead, readPiece } from './read-piece.ts';
import { type RoomRead, readRoom } from './read-room.ts';

/** Which preset of thermal constants a board in trade words takes. */
const BOARD_PRESET = {
  MDF: 'mdf-18',
  'moisture-resistant MDF': 'mdf-18',
  plywood: 'plywood-18',
  'solid wood': 'solid-38',
} as const;

export interface CoatRead {
  readonly id: string;
  readonly name: string;
  /** null where the coat is not complete or not readable. */
  readonly coat: Coat | null;
  /** Local time of the first cup, s since the start of 2000; null: not given or not readable. */
  readonly startsAt_s: number | null;
}

export interface JobRead {
  readonly piece: PieceRead;
  readonly board: Board;
  readonly room: RoomRead;
  readonly coats: readonly CoatRead[];
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
  readonly missing: readonly Missing[];
}

/**
 * Shape and every text of a job: what each entry point (form, API, command line, import) calls before it keeps a job.
 * Empty texts are fine; a text that cannot be read is not.
 */
export function checkJob(
  input: unknown,
  cards: readonly ResinCard[],
  system: System = 'us',
): Result<JobDocument> {
  const shape = checkShape(input);
  if (!shape.ok) return shape;
  const read = readJob(shape.value, cards, system);
  return read.problems.length > 0 ? bad(...read.problems) : good(shape.value, read.warnings);
}

/** `system` is for the limits in problems; what is read does not hang on it. */
export function readJob(document: JobDocument, cards: readonly ResinCard[], system: System = 'us'): JobRead {
  const notes = new Notes();
  const { handOver } = document.agreed;
  if (handOver !== '' && dayNumber(handOver) === null)
    notes.problem(
      'agreed.handOver',
      'date.none',
      'There is no such day.',
      handOver,
      `a day from ${FIRST_YEAR} to ${LAST_YEAR}, as 2026-05-30`,
    );
  const piece = readPiece(document.piece, notes);
  const room = readRoom(document.room, notes);
  const preset = BOARDS[BOARD_PRESET[document.piece.board]];
  const board: Board = {
    ...preset,
    thickness_m: piece.boardThickness_m ?? preset.thickness_m,
  };
  if (document.coats.length === 0) notes.miss('coats', 'at least one coat');
  const ids = new Set<string>();
  const coats = document.coats.map((coat, index): CoatRead => {
    const path = `coats.${index}`;
    if (ids.has(coat.id))
      notes.problem(
        `${path}.id`,
        'coat.same-id',
        'Two coats have the same id.',
        coat.id,
        'an id of its own for each coat',
      );
    ids.add(coat.id);
    const startsAt_s = coat.startsAt === '' ? null : moment_s(coat.startsAt);
    if (coat.startsAt !== '' && startsAt_s === null)
      notes.problem(
        `${path}.startsAt`,
        'date.none',
        'There is no such day or time.',
        coat.startsAt,
        `a day from ${FIRST_YEAR} to ${LAST_YEAR} and a time from 00:00 to 23:59, as 2026-05-14T09:00`,
      );
    return {
      id: coat.id,
      name: coat.name || coat.kind,
      coat: readCoat(coat, path, cards, room, notes, system),
      startsAt_s,
    };
  });
  return {
    piece,
    board,
    room,
    coats,
    problems: notes.problems,
    warnings: notes.warnings,
    missing: notes.missing,
  };
}

function readCoat(
  document: CoatDocument,
  path: string,
  cards: readonly ResinCard[],
  room: RoomRead,
  notes: Notes,
  system: System,
): Coat | null {
  const card = cards.find((known) => known.id === document.resin);
  if (document.resin === '') notes.miss(`${path}.resin`, 'a resin');
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
      `up to ${formatFilm(largest, system)}`,
    );
  const wrapEdges = document.edges === 'wrapped';
  const faceFilm_m = wrapEdges
    ? notes.need(`${path}.faceFilm`, document.faceFilm, 'the film on the faces', (text, ask) =>
        readFilm_m(text, { ...ask, what: 'face film', min: 0.00002, max: 0.01, density_kg_m3 }),
      )
    : 0;
  const allowance =
    document.allowance === ''
      ? 0.1
      : notes.take(`${path}.allowance`, document.allowance, (text, ask) =>
          readPercent(text, { ...ask, what: 'spare', min: 0, max: 1 }),
        );
  const resin_K =
    document.resinTemperature === ''
      ? room.air_K
      : notes.take(`${path}.resinTemperature`, document.resinTemperature, (text, ask) =>
          readTemperature_K(text, { ...ask, what: 'resin temperature', min: 283.15, max: 318.15 }),
        );
  const largestCup_kg =
    document.largestCup === ''
      ? null
      : notes.take(`${path}.largestCup`, document.largestCup, (text, ask) =>
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
    (document.largestCup !== '' && largestCup_kg === null)
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
  const wrong = checkColours(coat).map((problem) => ({ ...problem, path: joined(path, problem.path) }));
  for (const problem of wrong) notes.add(problem);
  return wrong.some((problem) => !problem.code.startsWith('warning')) ? null : coat;
}

function joined(path: string, below: string): string {
  return below === '' ? path : below.startsWith(path) ? below : `${path}.${below}`;
}

/** A coat without colours is poured clear: one colour, no colourant. */
function readColours(document: CoatDocument, path: string, notes: Notes): readonly Colour[] | null {
  if (document.colours.length === 0)
    return [{ name: 'clear', share: 1, colourant: 'none', load: 0, swatch: '#c9c4b4' }];
  const single = document.colours.length === 1;
  const colours = document.colours.map((colour, index): Colour | null => {
    const at = `${path}.colours.${index}`;
    const share =
      single && colour.share === ''
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
