/** Film answers on the page: the newest question is asked, the last answer stays until the next is there. */
import { useEffect, useRef, useState } from 'react';
import type { FilmOutlook, FilmOutlookRequest } from '#core/pour/film-outlook.ts';
import { workerPort } from '#web/worker/port.ts';
import type { OutlookAsk, OutlookReply } from './outlook-messages.ts';

export interface OutlookState {
  /** undefined: none yet; null: the film is gelled as it lands. */
  readonly outlook: FilmOutlook | null | undefined;
  readonly working: boolean;
  readonly failed: string | null;
}

/** @param request kept the same object while nothing changes; null: nothing is asked. */
export function useOutlook(request: FilmOutlookRequest | null): OutlookState {
  const [state, setState] = useState<OutlookState>({ outlook: undefined, working: true, failed: null });
  const [port] = useState(() =>
    workerPort<OutlookAsk, OutlookReply>(
      () => new Worker(new URL('./outlook-worker.ts', import.meta.url), { type: 'module' }),
      'no answer from the worker',
    ),
  );
  const number = useRef(0);
  const asking = useRef<FilmOutlookRequest | null>(null);
  useEffect(() => {
    port.onReply((reply) => {
      if (reply.number !== number.current) return;
      if ('failed' in reply) setState((now) => ({ ...now, working: false, failed: reply.failed }));
      else setState({ outlook: reply.outlook, working: false, failed: null });
    });
    port.onCrash((failed) => {
      asking.current = null;
      setState((now) => ({ ...now, working: false, failed }));
    });
    return () => {
      port.close();
      asking.current = null;
    };
  }, [port]);
  useEffect(() => {
    // Asked again for the same after a pause (everything was folded meanwhile): the answer is here or on its way.
    if (request === null || request === asking.current) return;
    asking.current = request;
    number.current += 1;
    setState((now) => ({ ...now, working: true, failed: null }));
    port.postMessage({ number: number.current, request });
  }, [port, request]);
  return state;
}
