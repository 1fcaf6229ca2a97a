/** What the editor shows of a piece document: the piece as read, its drawing, and what core/piece says about it. */
import type { PieceDocument } from '#core/job/document.ts';
import { Notes } from '#core/job/notes.ts';
import { problemInOneUnit } from '#core/job/one-unit.ts';
import { readPiece } from '#core/job/read-piece.ts';
import { type Drawing, dimensionedDrawing } from '#core/piece/drawing.ts';
import type { Piece } from '#core/piece/piece.ts';
import { PIECE_RULES, type PieceRules } from '#core/piece/piece-rules.ts';
import type { StandingSplash } from '#core/piece/splash-strips.ts';
import { reviewPiece } from '#core/piece/validate.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';

export interface Look {
  readonly piece: Piece;
  readonly drawing: Drawing;
  /** Boards that stand on it. */
  readonly splashes: readonly StandingSplash[];
  /** What keeps it from being measured. */
  readonly problems: readonly Problem[];
  /** What the shop should know. */
  readonly warnings: readonly Problem[];
}

/** Seen from above no drawing tells it. */
const ANY_BODY = '1 1/2 in';

/** null where a text cannot be read or the outline cannot be drawn. */
export function lookAt(
  document: PieceDocument,
  system: System,
  rules: PieceRules = PIECE_RULES,
): Look | null {
  // The drawing does not wait for the thickness of the body.
  const bodyThickness = document.bodyThickness.trim() === '' ? ANY_BODY : document.bodyThickness;
  const { piece, splashes } = readPiece({ ...document, bodyThickness }, new Notes(system));
  if (piece === null) return null;
  const drawing = dimensionedDrawing(piece, rules);
  if (!drawing.ok) return null;
  const { problems, warnings } = reviewPiece(piece, rules);
  const say = (found: readonly Problem[]) => found.map((problem) => problemInOneUnit(problem, system));
  return { piece, drawing: drawing.value, splashes, problems: say(problems), warnings: say(warnings) };
}

/** What stands against a cut-out, worst first: problems, then warnings. */
export function aboutCutOut(look: Look, index: number): readonly Problem[] {
  const own = (p: Problem): boolean => p.path.startsWith(`cutOuts.${index}.`);
  return [...look.problems.filter(own), ...look.warnings.filter(own)];
}
