/** Asks for the windows of a pour: one question at a time, always the newest; without a worker it is computed here. */
import { forecastRun, type RunForecast, type RunForecastRequest } from '#core/pour/run/forecast-run.ts';
import { type WorkerPort, workerPort } from '#web/worker/port.ts';
import type { RunQuestion, RunReply } from './run-messages.ts';

export interface RunEngine {
  ask(request: RunForecastRequest, take: (forecast: RunForecast) => void, fail: (why: string) => void): void;
  close(): void;
}

const startWorker = (): WorkerPort<RunQuestion, RunReply> =>
  workerPort<RunQuestion, RunReply>(
    () => new Worker(new URL('./run-worker.ts', import.meta.url), { type: 'module' }),
    'the calculation of the pour stopped',
  );

export function runEngine(port: WorkerPort<RunQuestion, RunReply> = startWorker()): RunEngine {
  type Asked = Parameters<RunEngine['ask']>;
  let busy: Asked | null = null;
  let next: Asked | null = null;
  let number = 0;
  const send = (asked: Asked) => {
    busy = asked;
    number += 1;
    port.postMessage({ ...asked[0], number });
  };
  const free = () => {
    busy = null;
    const waiting = next;
    next = null;
    if (waiting !== null) send(waiting);
  };
  port.onReply((reply) => {
    if (busy === null || reply.number !== number) return;
    const [, take, fail] = busy;
    if ('forecast' in reply) take(reply.forecast);
    else fail(reply.failed);
    free();
  });
  port.onCrash(() => {
    // The pour must go on without the worker: slower, on this thread.
    if (busy === null) return;
    const [request, take, fail] = busy;
    try {
      take(forecastRun(request));
    } catch (error) {
      fail(error instanceof Error ? error.message : String(error));
    }
    free();
  });
  return {
    ask(...asked) {
      if (busy === null) send(asked);
      else next = asked;
    },
    close: () => port.close(),
  };
}
