import { checkShape } from '#core/job/check-job.ts';
import type { JobDocument } from '#core/job/document.ts';
import { sayProblem } from '#core/quantity/problem.ts';

/** Thrown when a stored document can no longer be read: a damaged database, or a format change without a migration. */
export class UnreadableDocumentError extends Error {
  override readonly name = 'UnreadableDocumentError';
}

/** A stored job document; fields added to the format since it was saved get their defaults. */
export function readStored(text: string, id: string, version: number): JobDocument {
  let input: unknown;
  try {
    input = JSON.parse(text);
  } catch {
    throw new UnreadableDocumentError(
      `Version ${version} of job ${id} is stored as something that is not JSON.`,
    );
  }
  const read = checkShape(input);
  if (read.ok) return read.value;
  const [first] = read.problems;
  throw new UnreadableDocumentError(
    `Version ${version} of job ${id} cannot be read. ${first === undefined ? '' : sayProblem(first)}`,
  );
}
