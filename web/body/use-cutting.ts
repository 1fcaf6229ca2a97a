/** The cutting plan on the page: the newest question is asked, an answer once given is kept for paper and for coming back. */
import { useEffect, useRef, useState } from 'react';
import type { CuttingPlan } from '#core/piece/cutting/cutting.ts';
import { planCutting } from '#core/piece/cutting/plan-cutting.ts';
import type { Result } from '#core/quantity/problem.ts';
import { workerPort } from '#web/worker/port.ts';
import type { CuttingAsk, CuttingReply, CuttingRequest } from './cutting-messages.ts';

export interface CuttingState {
  /** Of the request at hand; null while it is worked on, or when nothing was asked. */
  readonly plan: Result<CuttingPlan> | null;
  readonly working: boolean;
  readonly failed: string | null;
}

const MOST_KEPT = 12;
const kept = new Map<string, Result<CuttingPlan>>();

function keep(key: string, plan: Result<CuttingPlan>): void {
  kept.set(key, plan);
  for (const oldest of kept.keys()) if (kept.size > MOST_KEPT) kept.delete(oldest);
}

/** The plan that was shown, else one made at once with little search: paper does not wait. */
export function cuttingForPaper(request: CuttingRequest): Result<CuttingPlan> {
  const key = JSON.stringify(request);
  const plan = kept.get(key) ?? planCutting(request.parts, request.stock, quick(request));
  keep(key, plan);
  return plan;
}

function quick({ parts, options }: CuttingRequest) {
  const count = parts.reduce((sum, part) => sum + (part.count ?? 1), 0);
  const rounds = Math.max(20, Math.min(250, Math.floor(2000 / Math.max(1, count))));
  return { ...options, rounds, tidyRounds: Math.ceil(rounds / 4) };
}

/** @param request kept the same object while nothing changes; null: nothing is asked. */
export function useCutting(request: CuttingRequest | null): CuttingState {
  const [answer, setAnswer] = useState<{ readonly of: CuttingRequest; readonly state: CuttingState } | null>(
    null,
  );
  const [port] = useState(() =>
    workerPort<CuttingAsk, CuttingReply>(
      () => new Worker(new URL('./cutting-worker.ts', import.meta.url), { type: 'module' }),
      'no answer from the worker',
    ),
  );
  const number = useRef(0);
  const asking = useRef<CuttingRequest | null>(null);
  useEffect(() => {
    const answered = (state: CuttingState) => {
      if (asking.current !== null) setAnswer({ of: asking.current, state });
    };
    const fail = (failed: string) => answered({ plan: null, working: false, failed });
    port.onReply((reply) => {
      if (reply.number !== number.current || asking.current === null) return;
      if ('failed' in reply) return fail(reply.failed);
      keep(JSON.stringify(asking.current), reply.plan);
      answered({ plan: reply.plan, working: false, failed: null });
    });
    port.onCrash(fail);
    return () => port.close();
  }, [port]);
  useEffect(() => {
    if (request === null) return;
    number.current += 1;
    asking.current = request;
    const known = kept.get(JSON.stringify(request));
    if (known === undefined) port.postMessage({ number: number.current, request });
    else setAnswer({ of: request, state: { plan: known, working: false, failed: null } });
  }, [port, request]);
  if (request === null) return { plan: null, working: false, failed: null };
  return answer !== null && answer.of === request
    ? answer.state
    : { plan: null, working: true, failed: null };
}
