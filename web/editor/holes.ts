/** Moving cut-outs and adding tap holes: pure functions from one piece document to the next. */
import type { CutOutDocument, PieceDocument } from '#core/job/document.ts';
import { Notes } from '#core/job/notes.ts';
import { templateDocument } from '#core/job/outline-document.ts';
import { readCutOut } from '#core/job/read-cut-out.ts';
import type { ImportedDrawing } from '#core/piece/files/imported-drawing.ts';
import { cutOutPath, outlinePath } from '#core/piece/outline.ts';
import { bounds } from '#core/piece/path.ts';
import type { Piece, Point } from '#core/piece/piece.ts';
import { PIECE_RULES, type PieceRules } from '#core/piece/piece-rules.ts';
import { reviewPiece } from '#core/piece/validate.ts';
import { bad, good, type Result } from '#core/quantity/problem.ts';
import { readLength_m } from '#core/quantity/read.ts';
import { toSI } from '#core/quantity/units.ts';
import { type Grid, lengthWords, snapped_m } from './grid.ts';

const FAR_M = 10;
const MOST_CUT_OUTS = 50;
/** As small as a cut-out may be typed. */
const FEWEST_M = 0.005;
/** A tap hole, 1 3/8 in or 35 mm, as taps are made for (common practice, no source). */
const TAP_HOLE = { us: '1 3/8 in', metric: '35 mm' } as const;
/** Its centre behind the rim of a bowl, and before the back of a top that has none (common practice, no source). */
const BEHIND_BOWL_M = toSI(2.5, 'in');

/** Where its centre stands; null where the texts cannot be read. */
export function cutOutPlace(cutOut: CutOutDocument): Point | null {
  const x = readLength_m(cutOut.fromLeft, { min: -FAR_M, max: FAR_M });
  const y = readLength_m(cutOut.fromFront, { min: -FAR_M, max: FAR_M });
  return x.ok && y.ok ? { x_m: x.value, y_m: y.value } : null;
}

/** The centre of a cut-out set on the grid line nearest to a place. A distance that stays keeps the text it was typed as. */
export function withCutOutAt(piece: PieceDocument, index: number, to: Point, grid: Grid): PieceDocument {
  const cutOut = piece.cutOuts[index];
  const from = cutOut === undefined ? null : cutOutPlace(cutOut);
  if (cutOut === undefined || from === null) return piece;
  const text = (typed: string, was_m: number, is_m: number): string => {
    const on_m = snapped_m(Math.min(FAR_M, Math.max(-FAR_M, is_m)), grid);
    return Math.abs(is_m - was_m) < 1e-9 || Math.abs(on_m - was_m) < 1e-9
      ? typed
      : lengthWords(on_m, grid.system);
  };
  const fromLeft = text(cutOut.fromLeft, from.x_m, to.x_m);
  const fromFront = text(cutOut.fromFront, from.y_m, to.y_m);
  if (fromLeft === cutOut.fromLeft && fromFront === cutOut.fromFront) return piece;
  const moved = { ...cutOut, fromLeft, fromFront };
  return { ...piece, cutOuts: piece.cutOuts.map((other, i) => (i === index ? moved : other)) };
}

/** A name nothing on the piece has yet: "tap hole", "tap hole 2". */
function freeName(piece: PieceDocument, name: string): string {
  const taken = new Set(piece.cutOuts.map((cutOut) => cutOut.name));
  for (let i = 1; ; i += 1) {
    const next = i === 1 ? name : `${name} ${i}`;
    if (!taken.has(next)) return next;
  }
}

/** Tap holes stand this far apart (centre-set; common practice, no source). */
const TAPS_APART_M = toSI(4, 'in');

/**
 * With a tap hole behind the largest cut-out, or near the middle of the back where there is none; the next ones 4 in to its right
 * and left. `drawn` is the piece as read.
 */
export function withTapHole(piece: PieceDocument, drawn: Piece, grid: Grid): PieceDocument {
  if (piece.cutOuts.length >= MOST_CUT_OUTS) return piece;
  const box = bounds(outlinePath(drawn.outline));
  const rims = drawn.cutOuts.map((cutOut) => bounds(cutOutPath(cutOut)));
  const wide = (b: (typeof rims)[number]): number => b.maxX_m - b.minX_m;
  const bowl = rims.reduce<(typeof rims)[number] | null>(
    (best, rim) => (wide(rim) > 0.06 && (best === null || wide(rim) > wide(best)) ? rim : best),
    null,
  );
  const at =
    bowl === null
      ? { x_m: (box.minX_m + box.maxX_m) / 2, y_m: box.maxY_m - BEHIND_BOWL_M }
      : {
          x_m: (bowl.minX_m + bowl.maxX_m) / 2,
          // Between the bowl and the back where there is not room for more.
          y_m: Math.min(bowl.maxY_m + BEHIND_BOWL_M, (bowl.maxY_m + box.maxY_m) / 2),
        };
  const taken = (x_m: number): boolean =>
    drawn.cutOuts.some(
      ({ centre }) =>
        Math.abs(centre.y_m - at.y_m) < TAPS_APART_M / 2 && Math.abs(centre.x_m - x_m) < TAPS_APART_M / 2,
    );
  const beside = [0, 1, -1, 2, -2, 3, -3].map((n) => at.x_m + n * TAPS_APART_M);
  const x_m = beside.find((x) => !taken(x)) ?? at.x_m;
  const text = (value_m: number): string => lengthWords(snapped_m(value_m, grid), grid.system);
  const hole: CutOutDocument = {
    name: freeName(piece, 'tap hole'),
    shape: 'round',
    length: TAP_HOLE[grid.system],
    width: '',
    cornerRadius: '',
    fromLeft: text(x_m),
    fromFront: text(at.y_m),
    rim: 'dammed',
  };
  return { ...piece, cutOuts: [...piece.cutOuts, hole] };
}

/** What a cut-out is drawn as before anyone gives its sizes (common practice, no source). */
const USUAL = {
  rectangle: { name: 'sink', us: ['21 in', '14 in', '1 in'], metric: ['530 mm', '350 mm', '25 mm'] },
  oval: { name: 'bowl', us: ['17 in', '14 in', ''], metric: ['430 mm', '350 mm', ''] },
  round: { name: 'bowl', us: ['15 in', '', ''], metric: ['380 mm', '', ''] },
} as const;
export type UsualShape = keyof typeof USUAL;
/** A cut-out put in by a button takes at most this share of the piece either way. */
const MOST_SHARE = 0.6;

/** With a cut-out of the usual size, smaller where the piece is, where least stands against it. `drawn` is the piece as read. */
export function withCutOut(
  piece: PieceDocument,
  drawn: Piece,
  shape: UsualShape,
  grid: Grid,
  rules: PieceRules = PIECE_RULES,
): PieceDocument {
  if (piece.cutOuts.length >= MOST_CUT_OUTS) return piece;
  const box = bounds(outlinePath(drawn.outline));
  const [wide_m, deep_m] = [box.maxX_m - box.minX_m, box.maxY_m - box.minY_m];
  const usual = USUAL[shape];
  const fitted = (typed: string, most_m: number): string => {
    const read = readLength_m(typed);
    if (!read.ok || read.value <= most_m) return typed;
    return lengthWords(Math.max(snapped_m(most_m, grid), FEWEST_M), grid.system);
  };
  const [length, width, cornerRadius] = usual[grid.system];
  const round = shape === 'round';
  const made: CutOutDocument = {
    name: freeName(piece, usual.name),
    shape,
    length: fitted(length, MOST_SHARE * (round ? Math.min(wide_m, deep_m) : wide_m)),
    width: fitted(width, MOST_SHARE * deep_m),
    cornerRadius,
    fromLeft: '0 in',
    fromFront: '0 in',
    rim: 'wrapped',
  };
  return placed(piece, drawn, made, grid, rules);
}

/** With a full-size template of a drawing for a hole, placed as one put in by a button; refused with what is wrong with the drawing. */
export function withTemplate(
  piece: PieceDocument,
  drawn: Piece,
  drawing: ImportedDrawing,
  grid: Grid,
  rules: PieceRules = PIECE_RULES,
): Result<PieceDocument> {
  if (piece.cutOuts.length >= MOST_CUT_OUTS)
    return bad({
      path: 'piece.cutOuts',
      code: 'cut-out.count',
      message: 'There are too many cut-outs for one more.',
      read: String(piece.cutOuts.length + 1),
      allowed: `up to ${MOST_CUT_OUTS}`,
    });
  const made = templateDocument(drawing, { x_m: 0, y_m: 0 }, freeName(piece, 'sink'), grid.system);
  return made.ok ? good(placed(piece, drawn, made.value, grid, rules)) : made;
}

/** With a hole at the place nearest to the middle where nothing stands against it, or where least does. */
function placed(
  piece: PieceDocument,
  drawn: Piece,
  made: CutOutDocument,
  grid: Grid,
  rules: PieceRules,
): PieceDocument {
  const box = bounds(outlinePath(drawn.outline));
  const [wide_m, deep_m] = [box.maxX_m - box.minX_m, box.maxY_m - box.minY_m];
  const text = (value_m: number): string => lengthWords(snapped_m(value_m, grid), grid.system);
  const ways = Array.from({ length: 9 * 9 }, (_, i) => ({
    x: ((i % 9) - 4) / 9,
    y: (Math.floor(i / 9) - 4) / 9,
  })).sort((a, b) => Math.hypot(a.x, a.y) - Math.hypot(b.x, b.y));
  let best: { readonly cutOut: CutOutDocument; readonly against: number } | null = null;
  for (const { x, y } of ways) {
    const cutOut = {
      ...made,
      fromLeft: text((box.minX_m + box.maxX_m) / 2 + x * wide_m),
      fromFront: text((box.minY_m + box.maxY_m) / 2 + y * deep_m),
    };
    const read = readCutOut(cutOut, 'cutOut', new Notes());
    if (read === null) continue;
    const { problems, warnings } = reviewPiece({ ...drawn, cutOuts: [...drawn.cutOuts, read] }, rules);
    const own = (p: { readonly path: string; readonly message: string }): boolean =>
      p.path.startsWith(`cutOuts.${drawn.cutOuts.length}.`) || p.message.includes(`"${cutOut.name}"`);
    const against = problems.filter(own).length * 100 + warnings.filter(own).length;
    if (best === null || against < best.against) best = { cutOut, against };
    if (against === 0) break;
  }
  return best === null ? piece : { ...piece, cutOuts: [...piece.cutOuts, best.cutOut] };
}

export function withoutCutOut(piece: PieceDocument, index: number): PieceDocument {
  if (piece.cutOuts[index] === undefined) return piece;
  return { ...piece, cutOuts: piece.cutOuts.toSpliced(index, 1) };
}
