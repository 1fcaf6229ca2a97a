/**
 * The store as the rest of the app sees it: jobs and resin cards with every version ever saved, and the shop. What each method must do is
 * written here; `acceptance.ts` checks it for every database. Time is passed in (`at`, ISO 8601 in UTC): the store has no clock.
 *
 * The version rule, for jobs, resin cards and the shop:
 * - versions count 1, 2, 3 ... without gaps, and a stored version is never changed or removed;
 * - a save names the version it was read at (`baseVersion`); it is stored only if that is still the newest one, in one
 *   transaction, so of two saves on the same base exactly one is stored and the other is told of the conflict;
 * - a save names itself (`saveId`, made by the client); repeating it, at any time later, answers as the first time did and
 *   changes nothing, whatever else the repeat says;
 * - when a method has answered "saved", the document survives a crash of the process and of the machine.
 */
import type { JobDocument } from '#core/job/document.ts';
import type { FrozenPour } from '#core/pour/run/frozen-pour.ts';
import type { RunEvent } from '#core/pour/run/run-event.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { ResinCardDocument } from '#core/resin/card-document.ts';
import type { OffcutMovement } from '#core/shelf/offcuts.ts';
import type { Shop } from './shop.ts';

export interface Store {
  /** Every job, newest save first, ties by id. `archived` true or false: only those that are, or are not, in the archive. */
  listJobs(filter?: { readonly archived?: boolean }): Promise<readonly JobSummary[]>;

  /** Stores version 1 of a new job. The id is a lower-case UUID made by the client. */
  createJob(job: NewJob): Promise<CreateOutcome>;

  /** The newest version, or null if there is no such job. Archived jobs are answered too. */
  getJob(id: string): Promise<StoredJob | null>;

  /** Stores the next version, by the version rule. Saving leaves an archived job in the archive. */
  saveJob(save: JobSave): Promise<SaveOutcome>;

  /** Every version, oldest first, without the documents; null if there is no such job. */
  listVersions(id: string): Promise<readonly VersionNote[] | null>;

  /** One version as it was saved; null if there is no such job or version. */
  getVersion(id: string, version: number): Promise<StoredVersion | null>;

  /** Puts a job in the archive. False if there is no such job. Repeating it keeps the first time. Makes no version. */
  archiveJob(id: string, at: string): Promise<boolean>;

  /** Takes a job out of the archive. False if there is no such job. Repeating it is harmless. Makes no version. */
  restoreJob(id: string): Promise<boolean>;

  /** The newest version of the shop, or null before the first save (whose base version is 0). */
  getShop(): Promise<StoredShop | null>;

  /** Stores the next version of the shop, by the version rule. */
  saveShop(save: ShopSave): Promise<ShopOutcome>;

  /** Every resin card of the shop with its newest document, by name, ties by id; archived ones too. */
  listResins(): Promise<readonly StoredResin[]>;

  /** Stores version 1 of a new card. The id is that of its document, and stays. */
  createResin(resin: NewResin): Promise<CreateOutcome<ResinCardDocument>>;

  /** The newest version, or null if there is no such card. Archived cards are answered too. */
  getResin(id: string): Promise<StoredResin | null>;

  /** Stores the next version, by the version rule. Saving leaves an archived card in the archive. */
  saveResin(save: ResinSave): Promise<SaveOutcome<ResinCardDocument>>;

  /** As for jobs: false if there is no such card; repeating it keeps the first time; makes no version. */
  archiveResin(id: string, at: string): Promise<boolean>;
  restoreResin(id: string): Promise<boolean>;

  /** Every movement of offcuts, oldest first; what lies on the shelf follows from them (core/shelf/offcuts.ts). */
  listOffcutMovements(): Promise<readonly StoredMovement[]>;

  /**
   * Adds a movement if it can follow those there are, in one transaction: of two that take the same offcut exactly one is stored, the
   * other is told. Repeating a movement changes nothing and is answered as the first time.
   */
  moveOffcuts(movement: NewMovement): Promise<MovementOutcome>;

  /** Runs without their plans, the newest first, ties by id; of one job, or all. */
  listRuns(jobId?: string): Promise<readonly RunSummary[]>;

  /** Opens a run with its frozen pour. An id that is there already is answered with the time it was first opened, and nothing is changed. */
  openRun(run: NewRun): Promise<{ readonly outcome: 'saved'; readonly openedAt: string }>;

  /** A run with its frozen pour, or null if there is no such run. */
  getRun(id: string): Promise<StoredRun | null>;

  /**
   * Adds events, each once however often it is sent, in one transaction. An event of another run, or one that is there with other
   * contents, is passed over: the first one stays. Answers with the number of the newest event; null if there is no such run.
   */
  addRunEvents(add: NewRunEvents): Promise<number | null>;

  /** Events of a run with a number above `after`, in the order they came in; null if there is no such run. */
  listRunEvents(id: string, after: number): Promise<readonly StoredRunEvent[] | null>;

  /** Waits for what is under way and lets the database go. Using the store afterwards fails; closing twice does not. */
  close(): Promise<void>;
}

export interface JobSummary {
  readonly id: string;
  readonly title: string;
  readonly customerName: string;
  readonly stage: JobDocument['agreed']['stage'];
  /** Promised day, YYYY-MM-DD, or ''. */
  readonly handOver: string;
  /** Start of the earliest coat that has one, local YYYY-MM-DDTHH:MM, or ''. */
  readonly firstPourAt: string;
  readonly version: number;
  /** When the newest version was saved. */
  readonly updatedAt: string;
  readonly archived: boolean;
}

export interface NewJob {
  readonly id: string;
  readonly document: JobDocument;
  readonly saveId: string;
  readonly at: string;
}

export interface JobSave extends NewJob {
  readonly baseVersion: number;
}

export interface NewMovement {
  readonly movement: OffcutMovement;
  readonly at: string;
}

export interface StoredMovement {
  /** 1, 2, 3 ... in the order they were stored. */
  readonly number: number;
  readonly at: string;
  readonly movement: OffcutMovement;
}

export type MovementOutcome =
  | { readonly outcome: 'saved'; readonly number: number; readonly savedAt: string }
  | { readonly outcome: 'refused'; readonly problems: readonly Problem[] };

export interface NewRun {
  readonly id: string;
  readonly jobId: string;
  readonly title: string;
  readonly pour: FrozenPour;
  readonly at: string;
}

export interface RunSummary {
  readonly id: string;
  readonly jobId: string;
  readonly coatId: string;
  readonly title: string;
  readonly openedAt: string;
  /** Number of its newest event; 0: none yet. */
  readonly lastEvent: number;
}

export interface StoredRun extends RunSummary {
  readonly pour: FrozenPour;
}

export interface NewRunEvents {
  readonly id: string;
  readonly events: readonly { readonly event: RunEvent; readonly happenedAt: string }[];
}

export interface StoredRunEvent {
  readonly number: number;
  /** When it happened, by the clock of the server, as well as that could be told. */
  readonly happenedAt: string;
  readonly event: RunEvent;
}

export interface NewResin {
  readonly id: string;
  readonly document: ResinCardDocument;
  readonly saveId: string;
  readonly at: string;
}

export interface ResinSave extends NewResin {
  readonly baseVersion: number;
}

export interface StoredResin extends Versioned<ResinCardDocument> {
  readonly id: string;
  readonly savedAt: string;
  readonly archived: boolean;
}

export interface ShopSave {
  readonly baseVersion: number;
  readonly shop: Shop;
  readonly saveId: string;
  readonly at: string;
}

export interface Versioned<T> {
  readonly version: number;
  readonly document: T;
}

export interface StoredVersion extends Versioned<JobDocument> {
  readonly savedAt: string;
}

export interface StoredJob extends StoredVersion {
  readonly id: string;
  readonly archived: boolean;
}

export interface VersionNote {
  readonly version: number;
  readonly saveId: string;
  readonly savedAt: string;
}

export interface StoredShop {
  readonly version: number;
  readonly savedAt: string;
  readonly shop: Shop;
}

export interface Saved {
  readonly outcome: 'saved';
  readonly version: number;
  readonly savedAt: string;
}

export interface Conflict<T> {
  readonly outcome: 'conflict';
  /** The newest version. */
  readonly current: Versioned<T>;
  /** The document the save was based on, so that both sides' changes can be told; null if that version never existed. */
  readonly base: T | null;
}

/** `exists`: another save already made one of this id. */
export type CreateOutcome<T = JobDocument> =
  | Saved
  | { readonly outcome: 'exists'; readonly current: Versioned<T> };

export type SaveOutcome<T = JobDocument> = Saved | Conflict<T> | { readonly outcome: 'missing' };

/** Before the first save there is no current shop: a save on any base but 0 is then answered with version 0 and a new shop. */
export type ShopOutcome = Saved | Conflict<Shop>;
