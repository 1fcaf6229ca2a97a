import { useEffect, useSyncExternalStore } from 'react';
import type { JobDocument } from '#core/job/document.ts';
import { ForecastEngine, type Shown, type WorkerPort } from './engine.ts';
import type { ForecastShop, Reply } from './messages.ts';

/** A worker that is started again after a crash. */
function workerPort(): WorkerPort {
  let reply: (reply: Reply) => void = () => {};
  let crash: (reason: string) => void = () => {};
  let worker: Worker | null = null;
  const start = () => {
    const made = new Worker(new URL('../forecast-worker.ts', import.meta.url), { type: 'module' });
    made.onmessage = (event: MessageEvent<Reply>) => reply(event.data);
    made.onerror = (event) => {
      made.terminate();
      worker = null;
      crash(event.message || 'The forecast could not be started.');
    };
    return made;
  };
  return {
    postMessage: (question) => {
      worker ??= start();
      worker.postMessage(question);
    },
    onReply: (listen) => {
      reply = listen;
    },
    onCrash: (listen) => {
      crash = listen;
    },
  };
}

const NO_CARDS: NonNullable<ForecastShop['cards']> = [];
let engine: ForecastEngine | null = null;

export function forecastEngine(): ForecastEngine {
  engine ??= new ForecastEngine(workerPort());
  return engine;
}

/** The newest forecast of a job that there is, and whether a newer one is on its way. */
export function useForecast(jobId: string, document: JobDocument | null, shop: ForecastShop): Shown {
  const using = forecastEngine();
  const { rates, system, cards = NO_CARDS } = shop;
  useEffect(() => {
    if (document !== null) using.want(jobId, document, { rates, system, cards });
  }, [using, jobId, document, rates, system, cards]);
  return useSyncExternalStore(using.subscribe, () => using.read(jobId));
}

/** The same for several jobs at once. */
export function useForecasts(
  jobs: readonly { readonly id: string; readonly document: JobDocument }[],
  shop: ForecastShop,
): readonly Shown[] {
  const using = forecastEngine();
  useEffect(() => {
    for (const job of jobs) using.want(job.id, job.document, shop);
  });
  const stamp = useSyncExternalStore(using.subscribe, () => using.count());
  void stamp;
  return jobs.map((job) => using.read(job.id));
}
