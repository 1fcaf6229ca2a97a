/**
 * Keeps one worker busy with the newest version of every document asked about. A question that a newer one on the same job
 * overtakes before it was sent is dropped; an answer to an overtaken question is dropped too. What is on screen is therefore
 * always the forecast of some version, marked as behind while a newer one is computed.
 */
import type { JobDocument } from '#core/job/document.ts';
import type { JobForecast } from '#core/job/forecast.ts';
import type { ForecastShop, Question, Reply } from './messages.ts';

export interface Shown {
  readonly forecast: JobForecast | null;
  /** The document the forecast belongs to. */
  readonly of: JobDocument | null;
  readonly behind: boolean;
  readonly failed: string | null;
}

/** What the engine needs of a Worker. */
export interface WorkerPort {
  postMessage(question: Question): void;
  onReply(listen: (reply: Reply) => void): void;
  onCrash(listen: (reason: string) => void): void;
}

interface Wanted extends ForecastShop {
  readonly document: JobDocument;
}

const NO_CARDS: NonNullable<ForecastShop['cards']> = [];
const NOTHING: Shown = { forecast: null, of: null, behind: true, failed: null };

export class ForecastEngine {
  readonly #port: WorkerPort;
  readonly #waiting = new Map<string, Wanted>();
  readonly #shown = new Map<string, Shown>();
  readonly #latest = new Map<string, Wanted>();
  readonly #listeners = new Set<() => void>();
  #busy: { readonly number: number; readonly key: string; readonly wanted: Wanted } | null = null;
  #count = 0;
  #changes = 0;

  constructor(port: WorkerPort) {
    this.#port = port;
    port.onReply((reply) => this.#answer(reply));
    port.onCrash((reason) => {
      if (this.#busy !== null) this.#answer({ number: this.#busy.number, failed: reason });
    });
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Grows with every change of what is shown. */
  count(): number {
    return this.#changes;
  }

  read(key: string): Shown {
    return this.#shown.get(key) ?? NOTHING;
  }

  /** Asks for a forecast; asking again for the same document, rates, units and cards does nothing. */
  want(key: string, document: JobDocument, { rates, system, cards = NO_CARDS }: ForecastShop): void {
    const last = this.#latest.get(key);
    const same = last?.document === document && last.rates === rates && last.system === system;
    if (same && last.cards === cards) return;
    const wanted: Wanted = { document, rates, system, cards };
    this.#latest.set(key, wanted);
    this.#waiting.delete(key);
    this.#waiting.set(key, wanted);
    const now = this.read(key);
    if (!now.behind) this.#show(key, { ...now, behind: true });
    this.#next();
  }

  #next(): void {
    if (this.#busy !== null) return;
    // The newest question first: it is the one being looked at.
    const key = [...this.#waiting.keys()].at(-1);
    if (key === undefined) return;
    const wanted = this.#waiting.get(key)!;
    this.#waiting.delete(key);
    this.#count += 1;
    this.#busy = { number: this.#count, key, wanted };
    this.#port.postMessage({ number: this.#count, ...wanted });
  }

  #answer(reply: Reply): void {
    const busy = this.#busy;
    if (busy === null || reply.number !== busy.number) return;
    this.#busy = null;
    const newest = this.#latest.get(busy.key) === busy.wanted;
    const now = this.read(busy.key);
    if ('failed' in reply) {
      if (newest) this.#show(busy.key, { ...now, behind: false, failed: reply.failed });
    } else {
      this.#show(busy.key, {
        forecast: reply.forecast,
        of: busy.wanted.document,
        behind: !newest,
        failed: null,
      });
    }
    this.#next();
  }

  #show(key: string, shown: Shown): void {
    this.#shown.set(key, shown);
    this.#changes += 1;
    for (const listener of this.#listeners) listener();
  }
}
