/** A worker as a desk to ask at: started with the first question, and again with the next one after a crash. */

type Started = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>;

export interface WorkerPort<Ask, Reply> {
  postMessage(ask: Ask): void;
  onReply(listen: (reply: Reply) => void): void;
  /** The worker is gone, and with it what it was at. */
  onCrash(listen: (reason: string) => void): void;
  /** Ends the worker; a later question starts another. */
  close(): void;
}

/**
 * @param start makes the worker. Its `new Worker(new URL('./x.ts', import.meta.url), …)` must stand in the caller: the bundler looks for it there.
 * @param silent the reason told of a crash that gives none
 */
export function workerPort<Ask, Reply>(start: () => Started, silent: string): WorkerPort<Ask, Reply> {
  let reply: (reply: Reply) => void = () => {};
  let crash: (reason: string) => void = () => {};
  let worker: Started | null = null;
  const close = (): void => {
    worker?.terminate();
    worker = null;
  };
  const open = (): Started => {
    const made = start();
    // A worker that was ended may still have spoken: it is not heard any more.
    made.onmessage = (event: MessageEvent<Reply>) => {
      if (worker === made) reply(event.data);
    };
    made.onerror = (event) => {
      if (worker !== made) return;
      close();
      crash(event.message || silent);
    };
    return made;
  };
  return {
    postMessage: (ask) => {
      worker ??= open();
      worker.postMessage(ask);
    },
    onReply: (listen) => {
      reply = listen;
    },
    onCrash: (listen) => {
      crash = listen;
    },
    close,
  };
}
