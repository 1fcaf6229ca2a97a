/**
 * One open document, a job unless said otherwise: the document with undo, its draft on this device and its way to the server. Saving is debounced and carries
 * the version it was read at; an answer that never came is asked for again under the same id; a conflict stops saving until
 * every field is settled. Plain class so that it is tested without a browser: storage, server and timer are passed in.
 */
import { checkShape } from '#core/job/check-job.ts';
import type { JobDocument } from '#core/job/document.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { same } from './at-path.ts';
import {
  type CheckShape,
  type DraftStorage,
  dropDraft,
  keepDraft,
  loadDraftOf,
  type Sent,
} from './draft-store.ts';
import { merge, type Side } from './merge.ts';
import { change, type History, redo, replace, startHistory, undo } from './undo.ts';

export type SaveAnswer<T = JobDocument> =
  | { readonly kind: 'saved'; readonly version: number }
  | { readonly kind: 'conflict'; readonly version: number; readonly document: T }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | { readonly kind: 'unreachable'; readonly reason: string };

export interface SessionPorts<T = JobDocument> {
  readonly storage: DraftStorage;
  readonly save: (jobId: string, sent: Sent<T>) => Promise<SaveAnswer<T>>;
  readonly newId: () => string;
  readonly now_ms: () => number;
  /** Returns what cancels it. */
  readonly later: (run: () => void, delay_ms: number) => () => void;
}

export type SaveState = 'saved' | 'waiting' | 'saving' | 'offline' | 'refused' | 'conflict';

export interface Conflict<T = JobDocument> {
  readonly base: T;
  readonly theirs: T;
  readonly theirVersion: number;
}

export interface SessionState<T = JobDocument> {
  readonly document: T;
  readonly version: number;
  readonly save: SaveState;
  /** False when the device refused to keep the draft (storage full or off). */
  readonly kept: boolean;
  readonly problems: readonly Problem[];
  readonly reason: string;
  readonly conflict: Conflict<T> | null;
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
  /** True when this session began from a draft found on the device. */
  readonly resumed: boolean;
}

export const SAVE_AFTER_MS = 900;
export const RETRY_FIRST_MS = 2000;
export const RETRY_LONGEST_MS = 30000;

export class DocumentSession<T> {
  readonly jobId: string;
  readonly #ports: SessionPorts<T>;
  readonly #listeners = new Set<() => void>();
  #history: History<T>;
  #base: T;
  #version: number;
  #sent: Sent<T> | null = null;
  #inFlight = false;
  #cancelTimer: (() => void) | null = null;
  #retry_ms = RETRY_FIRST_MS;
  #state: SessionState<T>;

  constructor(
    jobId: string,
    loaded: { readonly version: number; readonly document: T },
    ports: SessionPorts<T>,
    checkShape: CheckShape<T>,
  ) {
    this.jobId = jobId;
    this.#ports = ports;
    const draft = loadDraftOf(ports.storage, jobId, checkShape);
    this.#base = draft?.base ?? loaded.document;
    this.#version = draft?.baseVersion ?? loaded.version;
    this.#sent = draft?.sent ?? null;
    this.#history = startHistory(draft?.document ?? loaded.document);
    const resumed = draft !== null && !same(draft.document, loaded.document);
    this.#state = {
      document: this.#history.present,
      version: this.#version,
      save: 'saved',
      kept: true,
      problems: [],
      reason: '',
      conflict: null,
      undoLabel: null,
      redoLabel: null,
      resumed,
    };
    if (this.#dirty()) this.#schedule(0);
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly state = (): SessionState<T> => this.#state;

  /** `place` joins keystrokes in one field into one step of undo. */
  edit(label: string, place: string, make: (document: T) => T): void {
    const next = make(this.#history.present);
    this.#take(change(this.#history, next, label, place, this.#ports.now_ms()));
  }

  undo(): void {
    this.#take(undo(this.#history));
  }

  redo(): void {
    this.#take(redo(this.#history));
  }

  /** Settles a conflict: their version becomes the ground, my choices go on top and are saved. */
  settle(choices: Readonly<Record<string, Side>>): void {
    const conflict = this.#state.conflict;
    if (conflict === null) return;
    const merged = merge(conflict.base, this.#history.present, conflict.theirs, choices);
    this.#base = conflict.theirs;
    this.#version = conflict.theirVersion;
    this.#sent = null;
    this.#set({ conflict: null, save: 'waiting' });
    this.#take(replace(this.#history, merged, 'Merge'));
    this.#schedule(0);
  }

  /** A newer version was read from the server; it is taken only when nothing typed here would be lost. */
  refresh(loaded: { readonly version: number; readonly document: T }): void {
    if (this.#dirty() || this.#inFlight || this.#state.conflict !== null || loaded.version <= this.#version)
      return;
    this.#base = loaded.document;
    this.#version = loaded.version;
    this.#history = startHistory(loaded.document);
    this.#set({ version: loaded.version, save: 'saved' });
  }

  /** Saves now: when leaving the page, coming back online, or asked to. */
  saveNow(): void {
    if (this.#dirty() && this.#state.conflict === null) this.#schedule(0);
  }

  close(): void {
    this.saveNow();
    this.#cancelTimer?.();
    this.#cancelTimer = null;
    if (this.#dirty() && this.#state.conflict === null) void this.#send();
  }

  #dirty(): boolean {
    return this.#sent !== null || !same(this.#base, this.#history.present);
  }

  #take(history: History<T>): void {
    if (history === this.#history) return;
    this.#history = history;
    const kept = this.#keep();
    this.#set({ kept });
    if (this.#state.conflict !== null) return;
    if (this.#dirty()) this.#schedule(SAVE_AFTER_MS);
    else this.#set({ save: 'saved', problems: [], reason: '' });
  }

  #keep(): boolean {
    if (!this.#dirty()) {
      dropDraft(this.#ports.storage, this.jobId);
      return true;
    }
    return keepDraft(this.#ports.storage, {
      jobId: this.jobId,
      baseVersion: this.#version,
      base: this.#base,
      document: this.#history.present,
      sent: this.#sent,
      changedAt: new Date(this.#ports.now_ms()).toISOString(),
    });
  }

  #schedule(delay_ms: number): void {
    this.#cancelTimer?.();
    if (this.#state.save !== 'offline' && this.#state.save !== 'refused') this.#set({ save: 'waiting' });
    this.#cancelTimer = this.#ports.later(() => {
      this.#cancelTimer = null;
      void this.#send();
    }, delay_ms);
  }

  async #send(): Promise<void> {
    if (this.#inFlight || this.#state.conflict !== null || !this.#dirty()) return;
    const sent: Sent<T> = this.#sent ?? {
      saveId: this.#ports.newId(),
      baseVersion: this.#version,
      document: this.#history.present,
    };
    this.#sent = sent;
    this.#keep();
    this.#inFlight = true;
    this.#set({ save: 'saving' });
    let answer: SaveAnswer<T>;
    try {
      answer = await this.#ports.save(this.jobId, sent);
    } catch (error) {
      answer = { kind: 'unreachable', reason: error instanceof Error ? error.message : String(error) };
    }
    this.#inFlight = false;
    this.#answer(sent, answer);
  }

  #answer(sent: Sent<T>, answer: SaveAnswer<T>): void {
    switch (answer.kind) {
      case 'saved':
        this.#saved(sent.document, answer.version);
        break;
      case 'conflict':
        // The version "someone else" saved may be our own, whose answer was lost.
        if (same(answer.document, sent.document)) this.#saved(sent.document, answer.version);
        else {
          this.#sent = null;
          this.#set({
            save: 'conflict',
            conflict: { base: this.#base, theirs: answer.document, theirVersion: answer.version },
            kept: this.#keep(),
          });
        }
        break;
      case 'refused': {
        this.#sent = null;
        const kept = this.#keep();
        this.#set({ save: 'refused', problems: answer.problems, reason: '', kept });
        if (!same(sent.document, this.#history.present)) this.#schedule(SAVE_AFTER_MS);
        break;
      }
      case 'unreachable':
        this.#set({ save: 'offline', reason: answer.reason });
        this.#schedule(this.#retry_ms);
        this.#retry_ms = Math.min(this.#retry_ms * 2, RETRY_LONGEST_MS);
        break;
    }
  }

  #saved(document: T, version: number): void {
    this.#base = document;
    this.#version = version;
    this.#sent = null;
    this.#retry_ms = RETRY_FIRST_MS;
    const kept = this.#keep();
    this.#set({ save: 'saved', version, problems: [], reason: '', resumed: false, kept });
    if (this.#dirty()) this.#schedule(SAVE_AFTER_MS);
  }

  #set(part: Partial<SessionState<T>>): void {
    this.#state = {
      ...this.#state,
      ...part,
      document: this.#history.present,
      undoLabel: this.#history.past.at(-1)?.label ?? null,
      redoLabel: this.#history.future[0]?.label ?? null,
    };
    for (const listener of this.#listeners) listener();
  }
}

/** An open job. */
export class JobSession extends DocumentSession<JobDocument> {
  constructor(
    jobId: string,
    loaded: { readonly version: number; readonly document: JobDocument },
    ports: SessionPorts,
  ) {
    super(jobId, loaded, ports, checkShape);
  }
}
