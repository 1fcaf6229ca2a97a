/**
 * How a document with versions is written, whatever it is: a repeat of a save changes nothing and is answered as the first time;
 * a save on a version that is no longer the newest is answered with the newest and the one it was made from; nothing is
 * overwritten. The caller gives a transaction.
 */
import type { CreateOutcome, Saved, SaveOutcome } from './store.ts';

/** What one kind of document must be able to do in the transaction at hand. */
export interface VersionedRows<D> {
  readonly what: string;
  /** Version of the row, locked until the transaction ends; undefined: there is none. */
  lock(): Promise<number | undefined>;
  /** Puts in the row of version 1; false when the id is taken. */
  insert(): Promise<boolean>;
  /** What this save did when it came before. */
  earlier(): Promise<Saved | undefined>;
  insertVersion(version: number): Promise<void>;
  documentAt(version: number): Promise<D | null>;
  /** Moves the row on to a version if it still has the one before; how many rows that were. */
  moveTo(version: number): Promise<bigint>;
}

export async function createVersioned<D>(rows: VersionedRows<D>, at: string): Promise<CreateOutcome<D>> {
  if (await rows.insert()) {
    await rows.insertVersion(1);
    return { outcome: 'saved', version: 1, savedAt: at };
  }
  const earlier = await rows.earlier();
  if (earlier !== undefined) return earlier;
  const version = await rows.lock();
  const document = version === undefined ? null : await rows.documentAt(version);
  if (version === undefined || document === null)
    throw new Error(`${rows.what} vanished inside a transaction`);
  return { outcome: 'exists', current: { version, document } };
}

export async function saveVersioned<D>(
  rows: VersionedRows<D>,
  baseVersion: number,
  at: string,
): Promise<SaveOutcome<D>> {
  const newest = await rows.lock();
  if (newest === undefined) return { outcome: 'missing' };
  const earlier = await rows.earlier();
  if (earlier !== undefined) return earlier;
  if (newest !== baseVersion) {
    const document = await rows.documentAt(newest);
    if (document === null) throw new Error(`version ${newest} of ${rows.what} is missing`);
    return {
      outcome: 'conflict',
      current: { version: newest, document },
      base: await rows.documentAt(baseVersion),
    };
  }
  const version = newest + 1;
  await rows.insertVersion(version);
  if ((await rows.moveTo(version)) !== 1n) throw new Error(`${rows.what} changed under its lock`);
  return { outcome: 'saved', version, savedAt: at };
}
