import { useMemo } from 'react';
import { type BodyWork, bodyWork, partsByBoard } from '#core/job/body-work.ts';
import type { JobDocument, PieceDocument } from '#core/job/document.ts';
import type { JobForecast } from '#core/job/forecast.ts';
import { Notes } from '#core/job/notes.ts';
import { type PieceRead, readPiece } from '#core/job/read-piece.ts';
import type { ShopBody } from '#core/job/shop-body.ts';
import type { BodyPart } from '#core/piece/body/body.ts';
import { bodyParts } from '#core/piece/body/body-parts.ts';
import type { Piece } from '#core/piece/piece.ts';
import { reviewPiece } from '#core/piece/validate.ts';
import { bad, good, type Result } from '#core/quantity/problem.ts';
import { type Offcut, type OffcutMovement, offcutsOnShelf, standingCuts } from '#core/shelf/offcuts.ts';
import { useOffcutShelf } from '#web/api/offcuts-api.ts';
import { useShop } from '#web/api/queries.ts';
import type { CuttingRequest } from '#web/body/cutting-messages.ts';
import type { Path } from '#web/draft/at-path.ts';
import { useSheet } from '../../context.tsx';
import { usePieceAt } from './use-piece-at.ts';

export interface BodyAt {
  readonly work: BodyWork;
  readonly piece: Piece;
  readonly parts: readonly BodyPart[];
  /** Parts of another thickness, not in the cutting plan. */
  readonly others: readonly BodyPart[];
  /** null: nothing to cut from. */
  readonly request: CuttingRequest | null;
}

/** Lines of a coat's bill that stay on the piece. */
const STAYS: readonly string[] = ['top', 'faces', 'rims', 'underside'];

/** Cured resin on the piece, kg; 0 while it is not planned, or where a job has several pieces to share it. */
export function resinOnPiece_kg(forecast: JobForecast | null, job: JobDocument, base: Path): number {
  if (base.length !== 1 || job.otherPieces.length > 0) return 0;
  return (forecast?.coats ?? [])
    .flatMap((coat) => coat.plan?.quantity.lines ?? [])
    .reduce((sum, line) => (STAYS.includes(line.key) ? sum + line.mass_kg : sum), 0);
}

/** How movements of offcuts name a piece of the job. */
export function pieceKey(job: JobDocument, base: Path): string {
  const index = base[1];
  return typeof index === 'number' ? (job.otherPieces[index]?.id ?? '') : '';
}

/** The shelf as it was before the cuts of this very piece, so that its plan stays what it was when it was cut. */
export function shelfBefore(
  movements: readonly OffcutMovement[],
  jobId: string,
  piece: string,
): readonly Offcut[] {
  const own = new Set(standingCuts(movements, jobId, piece).map(({ id }) => id));
  return offcutsOnShelf(movements.filter(({ id }) => !own.has(id)));
}

/** Everything about the body of a piece, or why there is nothing to say yet; null while the piece is not complete. Pure. */
export function bodyAt(
  document: PieceDocument,
  read: PieceRead,
  piece: Piece,
  shop: ShopBody,
  offcuts: readonly Offcut[],
  resin_kg: number,
): Result<BodyAt> {
  const work = bodyWork({ ...read, board: document.board, shop, offcuts, resin_kg });
  if (!work.ok) return bad(...work.problems);
  const { options, stock, cutting, boardThickness_m } = work.value;
  const { own, others } = partsByBoard(bodyParts(piece, options), boardThickness_m);
  return good({
    work: work.value,
    piece,
    parts: own,
    others,
    request: stock.length === 0 || own.length === 0 ? null : { parts: own, stock, options: cutting },
  });
}

/** The body of the piece at a path of the job; the same objects until something changes. */
export function useBodyAt(base: Path): Result<BodyAt> | null {
  const { jobId, document: job, forecast } = useSheet();
  const { document, read, piece } = usePieceAt(base);
  const { body } = useShop();
  const { movements } = useOffcutShelf();
  const key = pieceKey(job, base);
  // To the gram, so that a new forecast of the same coats asks nothing new.
  const resin_kg = Math.round(resinOnPiece_kg(forecast, job, base) * 1000) / 1000;
  const offcuts = useMemo(
    () =>
      shelfBefore(
        movements.map(({ movement }) => movement),
        jobId,
        key,
      ),
    [movements, jobId, key],
  );
  return useMemo(
    () =>
      piece === null || !read.body.sound ? null : bodyAt(document, read, piece, body, offcuts, resin_kg),
    [document, read, piece, body, offcuts, resin_kg],
  );
}

/** The same for paper, in one go. */
export function bodyForPaper(
  document: PieceDocument,
  shop: ShopBody,
  offcuts: readonly Offcut[],
  resin_kg: number,
): BodyAt | null {
  const read = readPiece(document, new Notes());
  if (read.piece === null || !read.body.sound || reviewPiece(read.piece).problems.length > 0) return null;
  const found = bodyAt(document, read, read.piece, shop, offcuts, resin_kg);
  return found.ok ? found.value : null;
}
