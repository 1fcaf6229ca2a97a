/** The pieces of a job: which there are, what they are called, and how one is added, copied and taken away. */
import {
  type CoatDocument,
  emptyPiece,
  FIRST_PIECE_ID,
  type JobDocument,
  type OtherPieceDocument,
  type PieceDocument,
} from './document.ts';

/** As many as a job holds: the first and twelve more. */
export const MOST_PIECES = 13;

export interface PiecePlace {
  /** "piece" for the first, its own for each other one. */
  readonly id: string;
  /** Unlike that of any other piece of the job; "piece 2" where nothing is typed. */
  readonly name: string;
  /** As problems name it: "piece", "otherPieces.0". */
  readonly path: string;
  readonly document: PieceDocument;
}

/** All pieces in their order, the first one first. Documents from before there could be several hold one. */
export function piecesOf(job: JobDocument): readonly PiecePlace[] {
  const others = job.otherPieces ?? [];
  const taken = new Set<string>();
  return [job.piece, ...others].map((document, index) => {
    const typed = (document.name ?? '').trim() || `piece ${index + 1}`;
    let name = typed;
    for (let n = 2; taken.has(name); n++) name = `${typed} (${n})`;
    taken.add(name);
    return {
      id: index === 0 ? FIRST_PIECE_ID : others[index - 1]!.id,
      name,
      path: index === 0 ? 'piece' : `otherPieces.${index - 1}`,
      document,
    };
  });
}

/** Ids of the pieces a coat is poured on: those it names, all where it names none. An id that is none stays in. */
export function coatedIds(coat: Pick<CoatDocument, 'pieces'>, pieces: readonly PiecePlace[]): string[] {
  const named = coat.pieces ?? [];
  return named.length === 0 ? pieces.map(({ id }) => id) : [...new Set(named)];
}

/** The job with one more piece at the end, empty but for what `like` gives. @throws RangeError when it is full. */
export function withPiece(job: JobDocument, id: string, like: Partial<PieceDocument> = {}): JobDocument {
  const others = job.otherPieces ?? [];
  if (others.length + 1 >= MOST_PIECES)
    throw new RangeError(`${others.length + 1} pieces: allowed up to ${MOST_PIECES}`);
  const added: OtherPieceDocument = { ...emptyPiece(), ...like, id };
  return { ...job, otherPieces: [...others, added] };
}

/**
 * The job with a copy of a piece at its end. What was measured at the walls is of that one place and not copied. The copy is coated
 * with the coats that name the piece. The same job where there is no such piece.
 */
export function withCopy(job: JobDocument, of: string, id: string): JobDocument {
  const piece = piecesOf(job).find((each) => each.id === of);
  if (piece === undefined) return job;
  const like = { ...structuredClone(piece.document), name: `${piece.name} copy`, survey: null, fit: null };
  const coats = job.coats.map((coat) =>
    (coat.pieces ?? []).includes(of) ? { ...coat, pieces: [...coat.pieces, id] } : coat,
  );
  return { ...withPiece(job, id, like), coats };
}

/**
 * The job without a piece; the next one takes the place of the first. A coat that was poured on this piece alone keeps its id, so that it
 * says it is poured on nothing, and is not poured on all others of a sudden. The last piece stays.
 */
export function withoutPiece(job: JobDocument, id: string): JobDocument {
  const others = job.otherPieces ?? [];
  const [next, ...rest] = others;
  if (next === undefined || !piecesOf(job).some((each) => each.id === id)) return job;
  if (id !== FIRST_PIECE_ID)
    return {
      ...job,
      otherPieces: others.filter((each) => each.id !== id),
      coats: job.coats.map((coat) => uncoated(coat, id)),
    };
  const { id: freed, ...first } = next;
  const swapped = (each: string) =>
    each === FIRST_PIECE_ID ? freed : each === freed ? FIRST_PIECE_ID : each;
  return {
    ...job,
    piece: first,
    otherPieces: rest,
    coats: job.coats.map((coat) =>
      (coat.pieces ?? []).length === 0
        ? coat
        : uncoated({ ...coat, pieces: coat.pieces.map(swapped) }, freed),
    ),
  };
}

function uncoated(coat: CoatDocument, id: string): CoatDocument {
  const left = (coat.pieces ?? []).filter((each) => each !== id);
  return left.length === 0 || left.length === coat.pieces.length ? coat : { ...coat, pieces: left };
}
