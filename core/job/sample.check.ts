/** Job documents for the tests of this room. */
import { vanityVesselSink } from '#examples/jobs.ts';
import type { CoatDocument, EdgeDocument, JobDocument, PieceDocument } from './document.ts';

export const job: JobDocument = vanityVesselSink;

export function withPiece(change: Partial<PieceDocument>): JobDocument {
  return { ...job, piece: { ...job.piece, ...change } };
}

export function withCoat(change: Partial<CoatDocument>, index = 0): JobDocument {
  return { ...job, coats: job.coats.map((coat, i) => (i === index ? { ...coat, ...change } : coat)) };
}

export function edgeOf(edge: string, change: Partial<EdgeDocument> = {}): EdgeDocument {
  return {
    edge,
    kind: 'finished',
    faceHeight: '1 1/2 in',
    profile: 'square eased',
    profileSize: '1/8 in',
    undersideReturn: '',
    ...change,
  };
}

/** A copy with one place changed; the place is a path such as `coats.0.film`. */
export function changed(document: JobDocument, path: string, value: unknown): JobDocument {
  const copy = structuredClone(document) as unknown as Record<string, unknown>;
  const keys = path.split('.');
  const last = keys.pop()!;
  const at = keys.reduce<Record<string, unknown>>((o, key) => o[key] as Record<string, unknown>, copy);
  at[last] = value;
  return copy as unknown as JobDocument;
}
