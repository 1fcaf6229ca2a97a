import { edgeNames } from '#core/piece/outline.ts';
import type { EdgeSpec, Piece } from '#core/piece/piece.ts';
import { readSurvey } from '#core/piece/survey/read-survey.ts';
import { readLength_m } from '#core/quantity/read.ts';
import type { PieceDocument } from './document.ts';
import type { Asked, Notes } from './notes.ts';
import { type BodyRead, readBody } from './read-body.ts';
import { readCutOut } from './read-cut-out.ts';
import { readEdge, usualEdge } from './read-edge.ts';
import { takeFit } from './read-fit.ts';
import { readOutline } from './read-outline.ts';
import { readSplashes, type SplashPart } from './read-piece-splash.ts';

export interface PieceRead {
  /** null where the piece is not complete or not readable. */
  readonly piece: Piece | null;
  readonly boardThickness_m: number | null;
  /** Boards of their own beside the top; empty where the outline cannot be read. */
  readonly splashes: readonly SplashPart[];
  readonly body: BodyRead;
}

/**
 * Reads the sizes of a piece. Whether they make a sound piece is for core/piece to say. `at`: where it stands in the job,
 * "piece" or "otherPieces.0".
 */
export function readPiece(document: PieceDocument, notes: Notes, at = 'piece'): PieceRead {
  const size = (what: string, min: number, max: number) => (text: string, ask: Asked) =>
    readLength_m(text, { ...ask, what, min, max });
  const boardThickness_m = notes.take(
    `${at}.boardThickness`,
    document.boardThickness,
    size('board thickness', 0.003, 0.15),
  );
  const bodyThickness_m = notes.need(
    `${at}.bodyThickness`,
    document.bodyThickness,
    'the thickness of the body',
    size('body thickness', 0.003, 0.3),
  );
  // What the walls ask changes nothing of the piece until it is used; here it is only read.
  if (document.fit) takeFit(document.fit, `${at}.fit`, notes);
  // The outline is taken from the survey only when the maker says so; until then its texts are only checked.
  if (document.survey !== null) {
    const survey = readSurvey(document.survey, `${at}.survey`, notes.system);
    for (const problem of survey.ok ? survey.warnings : survey.problems)
      (survey.ok ? notes.warnings : notes.problems).push(problem);
  }
  if (document.outline === null) {
    notes.miss(`${at}.outline`, 'the shape and size of the piece');
    const body = readBody(document.body, `${at}.body`, null, notes);
    return { piece: null, boardThickness_m, splashes: [], body };
  }
  const outline = readOutline(document.outline, notes, `${at}.outline`);
  // Documents from before there were splashes hold none.
  const splashes = readSplashes(document.splashes ?? [], outline, notes, `${at}.splashes`);
  const cutOuts = document.cutOuts.map((cutOut, index) =>
    readCutOut(cutOut, `${at}.cutOuts.${index}`, notes),
  );
  const names = outline === null ? null : edgeNames(outline);
  const body = readBody(document.body, `${at}.body`, names, notes);
  const edges = new Map<string, EdgeSpec>();
  let whole = bodyThickness_m !== null;
  document.edges.forEach((edge, index) => {
    const path = `${at}.edges.${index}`;
    const unknown = names !== null && !names.includes(edge.edge);
    const twice = document.edges.findIndex((other) => other.edge === edge.edge) < index;
    if (unknown)
      notes.problem(
        `${path}.edge`,
        'edge.unknown',
        'This outline has no such edge.',
        edge.edge,
        names.join(', '),
      );
    if (twice)
      notes.problem(`${path}.edge`, 'edge.twice', 'This edge is given twice.', edge.edge, 'each edge once');
    const spec = readEdge(edge, path, bodyThickness_m, notes);
    if (spec === null || unknown || twice) whole = false;
    else edges.set(edge.edge, spec);
  });
  for (const name of names ?? [])
    if (bodyThickness_m !== null && !document.edges.some((edge) => edge.edge === name))
      edges.set(name, usualEdge(bodyThickness_m));
  const known = cutOuts.filter((cutOut) => cutOut !== null);
  if (outline === null || bodyThickness_m === null || !whole || known.length !== cutOuts.length)
    return { piece: null, boardThickness_m, splashes, body };
  return {
    piece: { outline, edges: Object.fromEntries(edges), cutOuts: known, bodyThickness_m },
    boardThickness_m,
    splashes,
    body,
  };
}
