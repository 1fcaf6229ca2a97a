/**
 * Keeps one worker busy with the newest question of each kind. A question that a newer one of its slot overtakes before it was sent
 * is answered with null; so is one whose slot has moved on when the answer comes.
 */
import type { Answers, Ask, Question, Reply } from './fit-messages.ts';

/** What the client needs of a Worker. */
export interface FitPort {
  postMessage(question: Question): void;
  onReply(listen: (reply: Reply) => void): void;
  onCrash(listen: (reason: string) => void): void;
}

interface Waiting {
  readonly slot: string;
  readonly ask: Ask;
  readonly resolve: (answer: Answers[keyof Answers] | null) => void;
  readonly reject: (error: Error) => void;
}

export class FitClient {
  readonly #port: FitPort;
  #waiting: Waiting[] = [];
  #busy: (Waiting & { readonly number: number; overtaken: boolean }) | null = null;
  #count = 0;

  constructor(port: FitPort) {
    this.#port = port;
    port.onReply((reply) => this.#take(reply));
    port.onCrash((reason) => {
      if (this.#busy !== null) this.#take({ number: this.#busy.number, failed: reason });
    });
  }

  /** Rejects with the worker's words when the model gives up. */
  ask<K extends Ask['kind']>(
    slot: string,
    ask: Extract<Ask, { readonly kind: K }>,
  ): Promise<Answers[K] | null> {
    for (const old of this.#waiting) if (old.slot === slot) old.resolve(null);
    this.#waiting = this.#waiting.filter((old) => old.slot !== slot);
    if (this.#busy?.slot === slot) this.#busy.overtaken = true;
    return new Promise((resolve, reject) => {
      this.#waiting.push({ slot, ask, resolve: resolve as Waiting['resolve'], reject });
      this.#next();
    });
  }

  #next(): void {
    if (this.#busy !== null) return;
    const next = this.#waiting.shift();
    if (next === undefined) return;
    this.#count += 1;
    this.#busy = { ...next, number: this.#count, overtaken: false };
    this.#port.postMessage({ number: this.#count, ask: next.ask });
  }

  #take(reply: Reply): void {
    const busy = this.#busy;
    if (busy === null || reply.number !== busy.number) return;
    this.#busy = null;
    if (busy.overtaken) busy.resolve(null);
    else if ('failed' in reply) busy.reject(new Error(reply.failed));
    else busy.resolve(reply.answer);
    this.#next();
  }
}
