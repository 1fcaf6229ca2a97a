import { edgeNames } from '#core/piece/outline.ts';
import type { CutOut, CutOutShape, EdgeProfile, EdgeSpec, Outline, Piece } from '#core/piece/piece.ts';
import { readFactor, readLength_m } from '#core/quantity/read.ts';
import type { CutOutDocument, EdgeDocument, OutlineDocument, PieceDocument } from './document.ts';
import type { Notes } from './notes.ts';

export interface PieceRead {
  /** null where the piece is not complete or not readable. */
  readonly piece: Piece | null;
  readonly boardThickness_m: number | null;
}

const SMALL_M = 0.01;
const LARGE_M = 10;

/** Reads the sizes of a piece. Whether they make a sound piece is for core/piece to say. */
export function readPiece(document: PieceDocument, notes: Notes): PieceRead {
  const size =
    (what: string, min = SMALL_M, max = LARGE_M) =>
    (text: string, ask: { path: string }) =>
      readLength_m(text, { ...ask, what, min, max });
  const boardThickness_m = notes.take(
    'piece.boardThickness',
    document.boardThickness,
    size('board thickness', 0.003, 0.15),
  );
  const bodyThickness_m = notes.need(
    'piece.bodyThickness',
    document.bodyThickness,
    'the thickness of the body',
    size('body thickness', 0.003, 0.3),
  );
  if (document.outline === null) {
    notes.miss('piece.outline', 'the shape and size of the piece');
    return { piece: null, boardThickness_m };
  }
  const outline = readOutline(document.outline, notes);
  const cutOuts = document.cutOuts.map((cutOut, index) =>
    readCutOut(cutOut, `piece.cutOuts.${index}`, notes),
  );
  const names = outline === null ? null : edgeNames(outline);
  const edges: Record<string, EdgeSpec> = {};
  let whole = bodyThickness_m !== null;
  document.edges.forEach((edge, index) => {
    const path = `piece.edges.${index}`;
    if (names !== null && !names.includes(edge.edge))
      notes.problem(
        `${path}.edge`,
        'edge.unknown',
        'This outline has no such edge.',
        edge.edge,
        names.join(', '),
      );
    if (edges[edge.edge] !== undefined)
      notes.problem(`${path}.edge`, 'edge.twice', 'This edge is given twice.', edge.edge, 'each edge once');
    const spec = readEdge(edge, path, bodyThickness_m, notes);
    if (spec === null) whole = false;
    else edges[edge.edge] = spec;
  });
  // An edge nobody has described yet is finished, as high as the body, eased 1/8 in: what most tops are.
  for (const name of names ?? [])
    if (
      edges[name] === undefined &&
      bodyThickness_m !== null &&
      !document.edges.some((edge) => edge.edge === name)
    )
      edges[name] = {
        kind: 'finished',
        faceHeight_m: bodyThickness_m,
        profile: { kind: 'square eased', radius_m: Math.min(0.003175, bodyThickness_m / 2) },
        undersideReturn_m: 0,
      };
  const known = cutOuts.filter((cutOut) => cutOut !== null);
  if (outline === null || bodyThickness_m === null || !whole || known.length !== cutOuts.length)
    return { piece: null, boardThickness_m };
  return { piece: { outline, edges, cutOuts: known, bodyThickness_m }, boardThickness_m };
}

function readOutline(document: OutlineDocument, notes: Notes): Outline | null {
  const path = 'piece.outline';
  const need = (key: string, text: string, what: string) =>
    notes.need(`${path}.${key}`, text, `the ${what}`, (typed, ask) =>
      readLength_m(typed, { ...ask, what, min: SMALL_M, max: LARGE_M }),
    );
  const radius = (key: string, text: string, what: string) =>
    text.trim() === ''
      ? 0
      : notes.take(`${path}.${key}`, text, (typed, ask) =>
          readLength_m(typed, { ...ask, what, min: 0, max: LARGE_M }),
        );
  switch (document.shape) {
    case 'rectangle': {
      const length_m = need('length', document.length, 'length');
      const width_m = need('width', document.width, 'depth');
      const cornerRadius_m = radius('cornerRadius', document.cornerRadius, 'corner radius');
      if (length_m === null || width_m === null || cornerRadius_m === null) return null;
      return { shape: 'rectangle', length_m, width_m, cornerRadius_m };
    }
    case 'ell': {
      const length_m = need('length', document.length, 'length of the main leg');
      const width_m = need('width', document.width, 'depth of the main leg');
      const returnLength_m = need('returnLength', document.returnLength, 'reach of the return');
      const returnWidth_m = need('returnWidth', document.returnWidth, 'depth of the return');
      const cornerRadius_m = radius('cornerRadius', document.cornerRadius, 'corner radius');
      const insideRadius_m = radius('insideRadius', document.insideRadius, 'inner corner radius');
      if (
        length_m === null ||
        width_m === null ||
        returnLength_m === null ||
        returnWidth_m === null ||
        cornerRadius_m === null ||
        insideRadius_m === null
      )
        return null;
      return {
        shape: 'ell',
        side: document.side,
        length_m,
        width_m,
        returnLength_m,
        returnWidth_m,
        cornerRadius_m,
        insideRadius_m,
      };
    }
    case 'round': {
      const diameter_m = need('diameter', document.diameter, 'diameter');
      return diameter_m === null ? null : { shape: 'round', diameter_m };
    }
    case 'ellipse': {
      const length_m = need('length', document.length, 'long axis');
      const width_m = need('width', document.width, 'short axis');
      return length_m === null || width_m === null ? null : { shape: 'ellipse', length_m, width_m };
    }
    case 'polygon': {
      if (document.corners.length < 3) {
        notes.miss(`${path}.corners`, 'at least three corners');
        return null;
      }
      const corners = document.corners.map((corner, index) => {
        const at = (key: 'x' | 'y', what: string) =>
          notes.need(`${path}.corners.${index}.${key}`, corner[key], what, (typed, ask) =>
            readLength_m(typed, { ...ask, what, min: -LARGE_M, max: LARGE_M }),
          );
        const x_m = at('x', 'distance from the left');
        const y_m = at('y', 'distance from the front');
        const radius_m = radius(`corners.${index}.radius`, corner.radius, 'radius of this corner');
        return x_m === null || y_m === null || radius_m === null ? null : { x_m, y_m, radius_m };
      });
      const known = corners.filter((corner) => corner !== null);
      return known.length === corners.length ? { shape: 'polygon', corners: known } : null;
    }
  }
}

function readEdge(
  document: EdgeDocument,
  path: string,
  bodyThickness_m: number | null,
  notes: Notes,
): EdgeSpec | null {
  const faceHeight_m =
    document.faceHeight.trim() === ''
      ? bodyThickness_m
      : notes.take(`${path}.faceHeight`, document.faceHeight, (text, ask) =>
          readLength_m(text, { ...ask, what: 'face height', min: 0.001, max: 1.5 }),
        );
  const undersideReturn_m =
    document.undersideReturn.trim() === ''
      ? 0
      : notes.take(`${path}.undersideReturn`, document.undersideReturn, (text, ask) =>
          readLength_m(text, { ...ask, what: 'underside return', min: 0, max: 0.3 }),
        );
  const profile = readProfile(document, path, notes);
  return faceHeight_m === null || undersideReturn_m === null || profile === null
    ? null
    : { kind: document.kind, faceHeight_m, profile, undersideReturn_m };
}

function readProfile(document: EdgeDocument, path: string, notes: Notes): EdgeProfile | null {
  const at = `${path}.profileSize`;
  const size = (what: string, otherwise_m: number) =>
    document.profileSize.trim() === ''
      ? otherwise_m
      : notes.take(at, document.profileSize, (text, ask) =>
          readLength_m(text, { ...ask, what, min: 0.0002, max: 0.2 }),
        );
  switch (document.profile) {
    case 'square eased':
    case 'round-over': {
      const radius_m = size('radius of the arris', document.profile === 'round-over' ? 0.00635 : 0.003175);
      return radius_m === null ? null : { kind: document.profile, radius_m };
    }
    case 'bevel': {
      const leg_m = size('leg of the bevel', 0.00635);
      return leg_m === null ? null : { kind: 'bevel', leg_m };
    }
    case 'bullnose':
      return { kind: 'bullnose' };
    case 'chiselled': {
      const factor =
        document.profileSize.trim() === ''
          ? 1.4
          : notes.take(at, document.profileSize, (text, ask) =>
              readFactor(text, { ...ask, what: 'development factor', min: 1, max: 2 }),
            );
      return factor === null ? null : { kind: 'chiselled', factor };
    }
  }
}

function readCutOut(document: CutOutDocument, path: string, notes: Notes): CutOut | null {
  const need = (key: 'length' | 'width' | 'fromLeft' | 'fromFront', what: string) =>
    notes.need(`${path}.${key}`, document[key], `the ${what}`, (text, ask) =>
      readLength_m(text, {
        ...ask,
        what,
        min: key === 'length' || key === 'width' ? 0.005 : -LARGE_M,
        max: LARGE_M,
      }),
    );
  const x_m = need('fromLeft', 'distance of its centre from the left');
  const y_m = need('fromFront', 'distance of its centre from the front');
  const length_m = need('length', document.shape === 'round' ? 'diameter' : 'length');
  const width_m = document.shape === 'round' ? length_m : need('width', 'width');
  const cornerRadius_m =
    document.shape !== 'rectangle' || document.cornerRadius.trim() === ''
      ? 0
      : notes.take(`${path}.cornerRadius`, document.cornerRadius, (text, ask) =>
          readLength_m(text, { ...ask, what: 'corner radius', min: 0, max: 2 }),
        );
  if (x_m === null || y_m === null || length_m === null || width_m === null || cornerRadius_m === null)
    return null;
  const shape: CutOutShape =
    document.shape === 'round'
      ? { shape: 'round', diameter_m: length_m }
      : document.shape === 'oval'
        ? { shape: 'oval', length_m, width_m }
        : { shape: 'rectangle', length_m, width_m, cornerRadius_m };
  return { ...shape, name: document.name || `cut-out`, centre: { x_m, y_m }, rim: document.rim };
}
