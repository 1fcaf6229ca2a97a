/**
 * What was typed and is not on the server yet, kept on this device: one record a job, written on every change, so that an
 * error, a reload or a lost network loses nothing. Unreadable texts are part of it; they are texts like any other.
 */
import { checkShape } from '#core/job/check-job.ts';
import type { JobDocument } from '#core/job/document.ts';

/** A save whose answer never came: it is sent again with the same id before anything newer, so the server counts it once. */
export interface Sent {
  readonly saveId: string;
  readonly baseVersion: number;
  readonly document: JobDocument;
}

export interface Draft {
  readonly jobId: string;
  readonly baseVersion: number;
  /** The document as it was at `baseVersion`. */
  readonly base: JobDocument;
  readonly document: JobDocument;
  readonly sent: Sent | null;
  readonly changedAt: string;
}

export interface DraftStorage {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

const keyOf = (jobId: string) => `pourwright.draft.${jobId}`;

/** The draft of a job, or null. A record that cannot be read is moved aside, not deleted. */
export function loadDraft(storage: DraftStorage, jobId: string): Draft | null {
  const text = storage.getItem(keyOf(jobId));
  if (text === null) return null;
  try {
    const found = JSON.parse(text) as Draft;
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
export function keepDraft(storage: DraftStorage, draft: Draft): boolean {
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
