/** All pieces of a job as they are cut together. */
import { partsByBoard } from '#core/job/body-work.ts';
import { type CutTogether, cutTogether, type PieceToCut } from '#core/job/cut-together.ts';
import type { JobDocument } from '#core/job/document.ts';
import { Notes } from '#core/job/notes.ts';
import { piecesOf } from '#core/job/pieces.ts';
import { readPiece } from '#core/job/read-piece.ts';
import type { ShopBody } from '#core/job/shop-body.ts';
import { bodyParts } from '#core/piece/body/body-parts.ts';
import { reviewPiece } from '#core/piece/validate.ts';
import { type Offcut, type OffcutMovement, offcutsOnShelf, standingCuts } from '#core/shelf/offcuts.ts';
import { bodyAt } from './use-body-at.ts';

export interface JobCuts {
  readonly lists: readonly CutTogether[];
  /** Names of pieces with nothing to cut yet. */
  readonly waiting: readonly string[];
  /** Of another board than any body: "counter: back splash". */
  readonly others: readonly string[];
}

const TOGETHER = 'together, ';

/** How movements of offcuts name the pieces of a job that are cut together. */
export function togetherKey(board: string, thickness_m: number): string {
  return `${TOGETHER}${board} ${(thickness_m * 1000).toFixed(1)} mm`;
}

/** The shelf as it was before the pieces of this job were cut together, so that the plan stays what it was when it was cut. */
export function shelfBeforeTogether(movements: readonly OffcutMovement[], jobId: string): readonly Offcut[] {
  const keys = new Set(movements.map(({ piece }) => piece).filter((key) => key.startsWith(TOGETHER)));
  const own = new Set([...keys].flatMap((key) => standingCuts(movements, jobId, key).map(({ id }) => id)));
  return offcutsOnShelf(movements.filter(({ id }) => !own.has(id)));
}

export function jobCuts(job: JobDocument, shop: ShopBody, offcuts: readonly Offcut[]): JobCuts {
  const ready: PieceToCut[] = [];
  const waiting: string[] = [];
  for (const { id, name, document } of piecesOf(job)) {
    const read = readPiece(document, new Notes());
    const sound = read.piece !== null && read.body.sound && reviewPiece(read.piece).problems.length === 0;
    const found = sound ? bodyAt(document, read, read.piece!, shop, offcuts, 0) : null;
    if (!found?.ok) waiting.push(name);
    else {
      const { work, piece } = found.value;
      ready.push({ id, name, board: document.board, work, parts: bodyParts(piece, work.options) });
    }
  }
  const lists = cutTogether(ready);
  const taken = new Set(lists.flatMap(({ parts }) => parts.map(({ name }) => name)));
  const others = ready.flatMap(({ name, parts, work }) =>
    partsByBoard(parts, work.boardThickness_m)
      .others.map((part) => `${name}: ${part.name}`)
      .filter((each) => !taken.has(each)),
  );
  return { lists, waiting, others };
}
