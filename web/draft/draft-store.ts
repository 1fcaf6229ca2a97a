/**
 * What was typed and is not on the server yet, kept on this device: one record a document (a job, a resin card), written on every change, so that an
 * error, a reload or a lost network loses nothing. Unreadable texts are part of it; they are texts like any other.
 */
import { checkShape } from '#core/job/check-job.ts';
import type { JobDocument } from '#core/job/document.ts';
import type { Result } from '#core/quantity/problem.ts';

/** A save whose answer never came: it is sent again with the same id before anything newer, so the server counts it once. */
export interface Sent<T = JobDocument> {
  readonly saveId: string;
  readonly baseVersion: number;
  readonly document: T;
}

export interface Draft<T = JobDocument> {
  readonly jobId: string;
  readonly baseVersion: number;
  /** The document as it was at `baseVersion`. */
  readonly base: T;
  readonly document: T;
  readonly sent: Sent<T> | null;
  readonly changedAt: string;
}

export interface DraftStorage {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

const keyOf = (jobId: string) => `pourwright.draft.${jobId}`;

/** Says whether a kept document still has the shape of its kind. */
export type CheckShape<T> = (input: unknown) => Result<T>;

/** The draft of a job, or null. A record that cannot be read is moved aside, not deleted. */
export function loadDraft(storage: DraftStorage, jobId: string): Draft | null {
  return loadDraftOf(storage, jobId, checkShape);
}

/** The same of a document of another kind. */
export function loadDraftOf<T>(
  storage: DraftStorage,
  jobId: string,
  checkShape: CheckShape<T>,
): Draft<T> | null {
  const text = storage.getItem(keyOf(jobId));
  if (text === null) return null;
  try {
    const found = JSON.parse(text) as Draft<unknown>;
    const base = checkShape(found.base);
    const document = checkShape(found.document);
    const sent = found.sent === null ? null : checkShape(found.sent.document);
    if (base.ok && document.ok && Number.isInteger(found.baseVersion) && (sent === null || sent.ok))
      return {
        jobId,
        baseVersion: found.baseVersion,
        base: base.value,
        document: document.value,
        sent: sent === null || found.sent === null ? null : { ...found.sent, document: sent.value },
        changedAt: String(found.changedAt),
      };
  } catch {
    // Falls through: kept aside below.
  }
  storage.setItem(`${keyOf(jobId)}.unreadable`, text);
  storage.removeItem(keyOf(jobId));
  return null;
}

/** True when it was kept; false when the device has no room, which the screen then says. */
export function keepDraft<T>(storage: DraftStorage, draft: Draft<T>): boolean {
  try {
    storage.setItem(keyOf(draft.jobId), JSON.stringify(draft));
    return true;
  } catch {
    return false;
  }
}

export function dropDraft(storage: DraftStorage, jobId: string): void {
  storage.removeItem(keyOf(jobId));
}
