import { useEffect, useSyncExternalStore } from 'react';
import type { JobDocument } from '#core/job/document.ts';
import { workerPort } from '#web/worker/port.ts';
import { ForecastEngine, type Shown, type WorkerPort } from './engine.ts';
import type { ForecastShop, Question, Reply } from './messages.ts';

const port = (): WorkerPort =>
  workerPort<Question, Reply>(
    () => new Worker(new URL('../forecast-worker.ts', import.meta.url), { type: 'module' }),
    'The forecast could not be started.',
  );

const NO_CARDS: NonNullable<ForecastShop['cards']> = [];
let engine: ForecastEngine | null = null;

export function forecastEngine(): ForecastEngine {
  engine ??= new ForecastEngine(port());
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
