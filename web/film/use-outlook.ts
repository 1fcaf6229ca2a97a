/** Film answers on the page: the newest question is asked, the last answer stays until the next is there. */
import { useEffect, useRef, useState } from 'react';
import type { FilmOutlook, FilmOutlookRequest } from '#core/pour/film-outlook.ts';
import type { OutlookReply } from './outlook-messages.ts';

export interface OutlookState {
  /** undefined: none yet; null: the film is gelled as it lands. */
  readonly outlook: FilmOutlook | null | undefined;
  readonly working: boolean;
  readonly failed: string | null;
}

/** @param request kept the same object while nothing changes; null: nothing is asked. */
export function useOutlook(request: FilmOutlookRequest | null): OutlookState {
  const [state, setState] = useState<OutlookState>({ outlook: undefined, working: true, failed: null });
  const worker = useRef<Worker | null>(null);
  const number = useRef(0);
  const asking = useRef<FilmOutlookRequest | null>(null);
  useEffect(
    () => () => {
      worker.current?.terminate();
      worker.current = null;
      asking.current = null;
    },
    [],
  );
  useEffect(() => {
    // Asked again for the same after a pause (everything was folded meanwhile): the answer is here or on its way.
    if (request === null || request === asking.current) return;
    asking.current = request;
    number.current += 1;
    const asked = number.current;
    setState((now) => ({ ...now, working: true, failed: null }));
    if (worker.current === null) {
      const made = new Worker(new URL('./outlook-worker.ts', import.meta.url), { type: 'module' });
      worker.current = made;
    }
    worker.current.onmessage = ({ data }: MessageEvent<OutlookReply>) => {
      if (data.number !== number.current) return;
      if ('failed' in data) setState((now) => ({ ...now, working: false, failed: data.failed }));
      else setState({ outlook: data.outlook, working: false, failed: null });
    };
    worker.current.onerror = (event) => {
      worker.current?.terminate();
      worker.current = null;
      asking.current = null;
      setState((now) => ({ ...now, working: false, failed: event.message || 'no answer from the worker' }));
    };
    worker.current.postMessage({ number: asked, request });
  }, [request]);
  return state;
}
