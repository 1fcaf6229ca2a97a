/** Moving cut-outs and adding tap holes: pure functions from one piece document to the next. */
import type { CutOutDocument, PieceDocument } from '#core/job/document.ts';
import { cutOutPath, outlinePath } from '#core/piece/outline.ts';
import { bounds } from '#core/piece/path.ts';
import type { Piece, Point } from '#core/piece/piece.ts';
import { readLength_m } from '#core/quantity/read.ts';
import { toSI } from '#core/quantity/units.ts';
import { type Grid, lengthWords, snapped_m } from './grid.ts';

const FAR_M = 10;
const MOST_CUT_OUTS = 50;
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

/** With a tap hole behind the largest cut-out, or near the middle of the back where there is none. `drawn` is the piece as read. */
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
      : { x_m: (bowl.minX_m + bowl.maxX_m) / 2, y_m: bowl.maxY_m + BEHIND_BOWL_M };
  const text = (value_m: number): string => lengthWords(snapped_m(value_m, grid), grid.system);
  const hole: CutOutDocument = {
    name: freeName(piece, 'tap hole'),
    shape: 'round',
    length: TAP_HOLE[grid.system],
    width: '',
    cornerRadius: '',
    fromLeft: text(at.x_m),
    fromFront: text(at.y_m),
    rim: 'dammed',
  };
  return { ...piece, cutOuts: [...piece.cutOuts, hole] };
}

export function withoutCutOut(piece: PieceDocument, index: number): PieceDocument {
  if (piece.cutOuts[index] === undefined) return piece;
  return { ...piece, cutOuts: piece.cutOuts.toSpliced(index, 1) };
}
