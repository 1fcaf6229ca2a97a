/** What says which state of a job a sheet was printed from. */
import { createHash } from 'node:crypto';
import type { JobDocument } from '#core/job/document.ts';

export interface Revision {
  readonly version: number;
  /** First twelve hex digits of SHA-256 over the piece as saved, or all of several: the same pieces, the same mark. */
  readonly hash: string;
}

export function revisionOf(document: JobDocument, version: number): Revision {
  const { piece, otherPieces } = document;
  const saved = otherPieces.length === 0 ? piece : [piece, ...otherPieces];
  const hash = createHash('sha256').update(JSON.stringify(saved)).digest('hex').slice(0, 12);
  return { version, hash };
}
