/** The open jobs of this tab. A session outlives its screen: what could not be saved is retried wherever the maker goes on. */
import type { JobDocument } from '#core/job/document.ts';
import { saveJob } from '#web/api/jobs-api.ts';
import { loadDraft } from './draft-store.ts';
import { JobSession, type SessionPorts, type SessionState } from './job-session.ts';
import { uuid7 } from './uuid7.ts';

const open = new Map<string, JobSession>();
const listeners = new Set<() => void>();
const PREFIX = 'pourwright.draft.';

/** The device's storage; where the browser forbids it, `keepDraft` fails and the screen says that nothing is kept. */
const storage: Storage | null = (() => {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
})();

const ports: SessionPorts = {
  storage: {
    getItem: (key) => storage?.getItem(key) ?? null,
    setItem: (key, value) => {
      if (storage === null) throw new Error('this browser keeps nothing');
      storage.setItem(key, value);
    },
    removeItem: (key) => storage?.removeItem(key),
  },
  save: saveJob,
  newId: () => uuid7(),
  now_ms: () => Date.now(),
  later: (run, delay_ms) => {
    const timer = setTimeout(run, delay_ms);
    return () => clearTimeout(timer);
  },
};

export function openSession(
  jobId: string,
  loaded: { readonly version: number; readonly document: JobDocument },
): JobSession {
  const known = open.get(jobId);
  if (known !== undefined) {
    known.refresh(loaded);
    return known;
  }
  const made = new JobSession(jobId, loaded, ports);
  open.set(jobId, made);
  made.subscribe(tell);
  tell();
  return made;
}

export function knownSession(jobId: string): JobSession | null {
  return open.get(jobId) ?? null;
}

/** Takes up every draft this device still holds, so that it is saved even if its job is not opened. */
export function resumeDrafts(): void {
  const ids = Object.keys(storage ?? {})
    .filter((key) => key.startsWith(PREFIX) && !key.endsWith('.unreadable'))
    .map((key) => key.slice(PREFIX.length));
  for (const id of ids) {
    const draft = loadDraft(ports.storage, id);
    if (draft !== null) openSession(id, { version: draft.baseVersion, document: draft.base });
  }
}

export interface Standing {
  readonly state: SessionState['save'];
  /** Where the attention is needed, or the first job not saved. */
  readonly jobId: string | null;
  readonly title: string;
  readonly problems: number;
  /** False when this device could not keep the draft. */
  readonly kept: boolean;
}

const CALM: Standing = { state: 'saved', jobId: null, title: '', problems: 0, kept: true };
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
  for (const [jobId, session] of open) {
    const { save, document, problems, kept } = session.state();
    if (gravity.indexOf(save) > gravity.indexOf(worst.state) || !kept)
      worst = { state: save, jobId, title: document.title, problems: problems.length, kept };
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

/** How all open jobs stand: the worst of them. */
export const readStanding = (): Standing => standing;

window.addEventListener('online', () => {
  for (const session of open.values()) session.saveNow();
});
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'hidden') for (const session of open.values()) session.saveNow();
});
window.addEventListener('beforeunload', (event) => {
  if (!standing.kept) event.preventDefault();
});
