/**
 * The open jobs and resin cards of this tab. A session outlives its screen: what could not be saved is retried wherever the
 * maker goes on.
 */

import type { JobDocument } from '#core/job/document.ts';
import { bad, good, type Result } from '#core/quantity/problem.ts';
import { ResinCardDocument } from '#core/resin/card-document.ts';
import { saveJob } from '#web/api/jobs-api.ts';
import { saveResin } from '#web/api/resins-api.ts';
import { type Draft, loadDraft, loadDraftOf } from './draft-store.ts';
import { DocumentSession, JobSession, type SessionPorts, type SessionState } from './job-session.ts';
import { uuid7 } from './uuid7.ts';

export type ResinSession = DocumentSession<ResinCardDocument>;

const jobs = new Map<string, JobSession>();
const resins = new Map<string, ResinSession>();
const listeners = new Set<() => void>();
const PREFIX = 'pourwright.draft.';
/** Drafts of cards stand beside those of jobs, whose ids are UUIDs and never begin so. */
const RESIN = 'resin.';

/** The device's storage; where the browser forbids it, `keepDraft` fails and the screen says that nothing is kept. */
const storage: Storage | null = (() => {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
})();

const common: Omit<SessionPorts, 'save'> = {
  storage: {
    getItem: (key) => storage?.getItem(key) ?? null,
    setItem: (key, value) => {
      if (storage === null) throw new Error('this browser keeps nothing');
      storage.setItem(key, value);
    },
    removeItem: (key) => storage?.removeItem(key),
  },
  newId: () => uuid7(),
  now_ms: () => Date.now(),
  later: (run, delay_ms) => {
    const timer = setTimeout(run, delay_ms);
    return () => clearTimeout(timer);
  },
};
const jobPorts: SessionPorts = { ...common, save: saveJob };
const resinPorts: SessionPorts<ResinCardDocument> = {
  ...common,
  save: (key, sent) => saveResin(key.slice(RESIN.length), sent),
};

function cardShape(input: unknown): Result<ResinCardDocument> {
  const parsed = ResinCardDocument.safeParse(input);
  return parsed.success
    ? good(parsed.data)
    : bad({ path: '', code: 'card.shape', message: 'This is not a resin card.' });
}

interface Loaded<T> {
  readonly version: number;
  readonly document: T;
}

export function openSession(jobId: string, loaded: Loaded<JobDocument>): JobSession {
  return opened(jobs, jobId, loaded, () => new JobSession(jobId, loaded, jobPorts));
}

export function openResinSession(id: string, loaded: Loaded<ResinCardDocument>): ResinSession {
  return opened(
    resins,
    id,
    loaded,
    () => new DocumentSession<ResinCardDocument>(RESIN + id, loaded, resinPorts, cardShape),
  );
}

function opened<T, S extends DocumentSession<T>>(
  known: Map<string, S>,
  id: string,
  loaded: Loaded<T>,
  make: () => S,
): S {
  const found = known.get(id);
  if (found !== undefined) {
    found.refresh(loaded);
    return found;
  }
  const made = make();
  known.set(id, made);
  made.subscribe(tell);
  tell();
  return made;
}

export function knownSession(jobId: string): JobSession | null {
  return jobs.get(jobId) ?? null;
}

export function knownResinSession(id: string): ResinSession | null {
  return resins.get(id) ?? null;
}

/** Takes up every draft this device still holds, so that it is saved even if its document is not opened. */
export function resumeDrafts(): void {
  const keys = Object.keys(storage ?? {})
    .filter((key) => key.startsWith(PREFIX) && !key.endsWith('.unreadable'))
    .map((key) => key.slice(PREFIX.length));
  const from = <T>(draft: Draft<T>) => ({ version: draft.baseVersion, document: draft.base });
  for (const key of keys) {
    if (key.startsWith(RESIN)) {
      const draft = loadDraftOf(common.storage, key, cardShape);
      if (draft !== null) openResinSession(key.slice(RESIN.length), from(draft));
    } else {
      const draft = loadDraft(common.storage, key);
      if (draft !== null) openSession(key, from(draft));
    }
  }
}

export interface Standing {
  readonly state: SessionState['save'];
  /** Where the attention is needed, or the first document not saved. */
  readonly place: { readonly kind: 'job' | 'resin'; readonly id: string } | null;
  readonly problems: number;
  /** False when this device could not keep the draft. */
  readonly kept: boolean;
}

const CALM: Standing = { state: 'saved', place: null, problems: 0, kept: true };
const gravity: readonly SessionState['save'][] = [
  'saved',
  'waiting',
  'saving',
  'offline',
  'refused',
  'conflict',
];
let standing: Standing = CALM;

function tell(): void {
  let worst: Standing = CALM;
  const open = [
    ...[...jobs].map(([id, session]) => ({ kind: 'job', id, state: session.state() }) as const),
    ...[...resins].map(([id, session]) => ({ kind: 'resin', id, state: session.state() }) as const),
  ];
  for (const { kind, id, state } of open) {
    const { save, problems, kept } = state;
    if (gravity.indexOf(save) > gravity.indexOf(worst.state) || !kept)
      worst = { state: save, place: { kind, id }, problems: problems.length, kept };
  }
  if (JSON.stringify(worst) !== JSON.stringify(standing)) {
    standing = worst;
    for (const listener of listeners) listener();
  }
}

export function subscribeStanding(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** How all open documents stand: the worst of them. */
export const readStanding = (): Standing => standing;

function saveAll(): void {
  for (const session of [...jobs.values(), ...resins.values()]) session.saveNow();
}

window.addEventListener('online', saveAll);
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'hidden') saveAll();
});
window.addEventListener('beforeunload', (event) => {
  if (!standing.kept) event.preventDefault();
});
