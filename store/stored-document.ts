import { checkShape } from '#core/job/check-job.ts';
import type { JobDocument } from '#core/job/document.ts';
import { bad, good, type Result, sayProblem } from '#core/quantity/problem.ts';
import { ResinCardDocument } from '#core/resin/card-document.ts';

/** Thrown when a stored document can no longer be read: a damaged database, or a format change without a migration. */
export class UnreadableDocumentError extends Error {
  override readonly name = 'UnreadableDocumentError';
}

/** A stored job document; fields added to the format since it was saved get their defaults. */
export function readStored(text: string, id: string, version: number): JobDocument {
  return read(text, `Version ${version} of job ${id}`, checkShape);
}

/** The same of a resin card. */
export function readStoredResin(text: string, id: string, version: number): ResinCardDocument {
  return read(text, `Version ${version} of resin card ${id}`, cardShape);
}

function cardShape(input: unknown): Result<ResinCardDocument> {
  const parsed = ResinCardDocument.safeParse(input);
  if (parsed.success) return good(parsed.data);
  return bad(
    ...parsed.error.issues.map((issue) => ({
      path: issue.path.join('.'),
      code: 'card.shape',
      message: issue.message,
    })),
  );
}

function read<T>(text: string, what: string, check: (input: unknown) => Result<T>): T {
  let input: unknown;
  try {
    input = JSON.parse(text);
  } catch {
    throw new UnreadableDocumentError(`${what} is stored as something that is not JSON.`);
  }
  const found = check(input);
  if (found.ok) return found.value;
  const [first] = found.problems;
  throw new UnreadableDocumentError(
    `${what} cannot be read. ${first === undefined ? '' : sayProblem(first)}`,
  );
}
