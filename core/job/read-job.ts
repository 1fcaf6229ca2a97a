/**
 * From the texts of a job document to SI. Reads everything that is there and says what is not: `problems` are texts that
 * cannot be used (field, what was read, what is allowed), `missing` are empty fields a section still needs.
 */
import type { Coat } from '#core/mix/coat.ts';
import type { Problem, Result } from '#core/quantity/problem.ts';
import { bad, good } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { BOARDS } from '#core/resin/boards.ts';
import type { Board, ResinCard } from '#core/resin/model.ts';
import { checkShape } from './check-job.ts';
import { FIRST_PIECE_ID, type JobDocument } from './document.ts';
import type { Missing } from './forecast.ts';
import { localMinutes } from './local-time.ts';
import { lookFindings } from './look-findings.ts';
import { Notes } from './notes.ts';
import { coatedIds, type PiecePlace, piecesOf } from './pieces.ts';
import { readCoat } from './read-coat.ts';
import { type PieceRead, readPiece } from './read-piece.ts';
import { type RoomRead, readRoom } from './read-room.ts';

/** Which preset of thermal constants a board in trade words takes. */
const BOARD_PRESET = {
  MDF: 'mdf-18',
  'moisture-resistant MDF': 'mdf-18',
  plywood: 'plywood-18',
  'solid wood': 'solid-38',
} as const;

export interface JobPieceRead extends PieceRead, Omit<PiecePlace, 'document'> {
  /** As the film feels it. */
  readonly board: Board;
}

export interface CoatRead {
  readonly id: string;
  readonly name: string;
  /** Ids of the pieces it is poured on. */
  readonly pieces: readonly string[];
  /** null where the coat is not complete or not readable. */
  readonly coat: Coat | null;
}

export interface JobRead {
  /** The first one first. */
  readonly pieces: readonly JobPieceRead[];
  readonly room: RoomRead;
  readonly coats: readonly CoatRead[];
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
  readonly missing: readonly Missing[];
}

/**
 * Shape and every text of a job: what each entry point (form, API, command line, import) calls before it keeps a job.
 * Empty texts are fine; a text that cannot be read is not. Never throws, whatever the input.
 */
export function checkJob(input: unknown, cards: readonly ResinCard[], system?: System): Result<JobDocument> {
  const shape = checkShape(input);
  if (!shape.ok) return shape;
  const read = readJob(shape.value, cards, system);
  return read.problems.length > 0 ? bad(...read.problems) : good(shape.value, read.warnings);
}

/**
 * Reads every text of a job. `system`: the units in which limits are told; without it, those that were typed. What is read does not
 * hang on it. Never throws on a document of the right shape.
 */
export function readJob(document: JobDocument, cards: readonly ResinCard[], system?: System): JobRead {
  const notes = new Notes(system);
  const { handOver } = document.agreed;
  if (handOver !== '' && localMinutes(`${handOver}T00:00`) === null)
    notes.problem(
      'agreed.handOver',
      'date.none',
      'There is no such day.',
      handOver,
      'a day of the calendar, as 2026-05-30',
    );
  const places = piecesOf(document);
  noteIds(places, notes);
  const pieces = places.map(({ document: typed, ...place }): JobPieceRead => {
    const piece = readPiece(typed, notes, place.path);
    const preset = BOARDS[BOARD_PRESET[typed.board]];
    const board = { ...preset, thickness_m: piece.boardThickness_m ?? preset.thickness_m };
    return { ...place, ...piece, board };
  });
  const room = readRoom(document.room, notes);
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
    if (coat.startsAt !== '' && localMinutes(coat.startsAt) === null)
      notes.problem(
        `${path}.startsAt`,
        'date.none',
        'There is no such day or time.',
        coat.startsAt,
        'a day of the calendar and a time from 00:00 to 23:59, as 2026-05-14T09:00',
      );
    const coated = coatedIds(coat, places);
    const unknown = coated.filter((id) => !places.some((place) => place.id === id));
    for (const id of unknown)
      notes.problem(
        `${path}.pieces`,
        'coat.piece',
        'This coat is poured on a piece that the job does not have.',
        id,
        places.map((place) => place.id).join(', '),
      );
    const read = readCoat(coat, path, cards, room, notes);
    return {
      id: coat.id,
      name: coat.name || coat.kind,
      pieces: coated,
      coat: unknown.length > 0 ? null : read,
    };
  });
  return {
    pieces,
    room,
    coats,
    problems: notes.problems,
    warnings: [...notes.warnings, ...lookFindings(document, { pieces }, system)],
    missing: notes.missing,
  };
}

function noteIds(places: readonly PiecePlace[], notes: Notes): void {
  places.forEach(({ id, path }, index) => {
    if (places.findIndex((other) => other.id === id) < index)
      notes.problem(
        `${path}.id`,
        'piece.same-id',
        'Two pieces have the same id.',
        id,
        `an id of its own for each piece, and not "${FIRST_PIECE_ID}", which is the first`,
      );
  });
}
