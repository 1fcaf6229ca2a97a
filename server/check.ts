/** The one place where the server checks a job somebody sends, so that every entry point refuses the same things. */
import type { JobDocument } from '#core/job/document.ts';
import { checkJob } from '#core/job/read-job.ts';
import type { Result } from '#core/quantity/problem.ts';
import { GENERIC_CARDS } from '#core/resin/cards.ts';

export function checkDocument(input: unknown): Result<JobDocument> {
  return checkJob(input, GENERIC_CARDS);
}
