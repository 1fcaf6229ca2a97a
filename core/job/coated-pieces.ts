/** The pieces of a job measured, and what a coat finds that is poured on some of them. */
import { measurePiece } from '#core/piece/measure.ts';
import type { PieceMeasures } from '#core/piece/piece.ts';
import type { PieceRules } from '#core/piece/piece-rules.ts';
import { together } from '#core/piece/together.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import type { Board } from '#core/resin/model.ts';
import type { PieceDocument } from './document.ts';
import type { PieceForecast } from './forecast.ts';
import { problemInOneUnit } from './one-unit.ts';
import { atPieceField } from './piece-field.ts';
import type { JobPieceRead } from './read-job.ts';

export interface MeasuredPiece extends PieceForecast {
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
}

/** One piece on its own, with what core/piece finds about it at its fields. */
export function measureAt(
  read: JobPieceRead,
  document: PieceDocument,
  system: System,
  rules: PieceRules,
): MeasuredPiece {
  const { id, name, path, splashes, board } = read;
  const of = { id, name, path, splashes, board, problems: [], warnings: [] };
  if (read.piece === null) return { ...of, piece: null, measures: null };
  const atField = (problem: Problem) => problemInOneUnit(atPieceField(problem, document, path), system);
  const measured = measurePiece(read.piece, {}, rules);
  return measured.ok
    ? { ...of, piece: read.piece, measures: measured.value, warnings: measured.warnings.map(atField) }
    : { ...of, piece: null, measures: null, problems: measured.problems.map(atField) };
}

export interface CoatedPieces {
  readonly pieces: readonly PieceForecast[];
  /** All of them together, their splashes among the top: these are poured flat beside it, in the same coats. */
  readonly measures: PieceMeasures;
  /** Of the piece with the largest top: the film is worked out on one board. */
  readonly board: Board;
}

/** null where one of the pieces is missing or cannot be measured, and so nothing can be said of the coat. */
export function coatedPieces(ids: readonly string[], pieces: readonly PieceForecast[]): CoatedPieces | null {
  const coated = ids.map((id) => pieces.find((piece) => piece.id === id));
  const known = coated.filter((piece) => piece !== undefined);
  const measured = known.flatMap(({ name, measures, splashes }) =>
    measures === null ? [] : [{ name, measures: withSplashes(measures, splashes) }],
  );
  if (measured.length === 0 || measured.length < ids.length) return null;
  return { pieces: known, measures: together(measured), board: largest(known).board };
}

function withSplashes(measures: PieceMeasures, splashes: PieceForecast['splashes']): PieceMeasures {
  const beside_m2 = splashes.reduce((sum, splash) => sum + splash.filmArea_m2, 0);
  return { ...measures, topArea_m2: measures.topArea_m2 + beside_m2 };
}

/** Of tops of one size the one on the thinner board, so that the order of the pieces does not matter. */
function largest(pieces: readonly PieceForecast[]): PieceForecast {
  const area_m2 = (of: PieceForecast) => of.measures?.topArea_m2 ?? 0;
  return pieces.reduce((most, piece) => {
    const more_m2 = area_m2(piece) - area_m2(most);
    const thinner = piece.board.thickness_m < most.board.thickness_m;
    return more_m2 > 0 || (more_m2 === 0 && thinner) ? piece : most;
  });
}

/** A film warms on its board: where the boards of a coat differ, its times are those of one of them. */
export function boardDoubt({ pieces, board }: CoatedPieces, path: string): Problem | null {
  const others = pieces.filter((piece) => !sameBoard(piece.board, board));
  if (others.length === 0) return null;
  const of = pieces.find((piece) => piece.board === board);
  return {
    path,
    code: 'warning.boards',
    message: `The times of this coat are those of a film on the board of "${of?.name}". ${others.map(({ name }) => `"${name}"`).join(' and ')} ${others.length === 1 ? 'has' : 'have'} another board, on which it may warm and set a little sooner or later.`,
  };
}

function sameBoard(a: Board, b: Board): boolean {
  return (Object.keys(a) as (keyof Board)[]).every((key) => a[key] === b[key]);
}
