/** From a file to a job: every way it can be wrong is answered with what was read and what is allowed. */
import type { JobDocument } from '#core/job/document.ts';
import { checkJob } from '#core/job/read-job.ts';
import { bad, type Result } from '#core/quantity/problem.ts';
import { GENERIC_CARDS } from '#core/resin/cards.ts';
import type { ResinCard } from '#core/resin/model.ts';

export const LARGEST_FILE_BYTES = 2_000_000;

export function readJobText(
  text: string,
  size_bytes: number,
  cards: readonly ResinCard[] = GENERIC_CARDS,
): Result<JobDocument> {
  if (size_bytes > LARGEST_FILE_BYTES)
    return bad({
      path: '',
      code: 'file.too-large',
      message: 'The file is larger than any job.',
      read: `${(size_bytes / 1e6).toFixed(1)} MB`,
      allowed: `up to ${LARGEST_FILE_BYTES / 1e6} MB`,
    });
  let found: unknown;
  try {
    found = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return bad({
      path: '',
      code: 'file.not-json',
      message: `The file is not JSON (${error instanceof Error ? error.message : 'unreadable'}).`,
      read: text.slice(0, 40),
      allowed: 'a job file, as saved by Download',
    });
  }
  return checkJob(found, cards);
}
