/** One thickness map on the page: asks the worker, follows its progress, and keeps the last map while a newer one is worked out. */
import { useCallback, useEffect, useRef, useState } from 'react';
import type { FilmMapRequest } from '#core/film/film-map.ts';
import type { FilmMapResult } from '#core/film/map-result.ts';
import { workerPort } from '#web/worker/port.ts';
import type { MapAsk, MapReply } from './map-messages.ts';

export interface MapState {
  readonly phase: 'idle' | 'working' | 'done' | 'cancelled' | 'failed';
  /** 0 to 1 while working. */
  readonly share: number;
  /** The newest finished map; stays while the next is worked out. */
  readonly result: FilmMapResult | null;
  /** What the result answers. */
  readonly of: FilmMapRequest | null;
  /** What was said of that request when it was asked. */
  readonly about: string;
  /** From asking to the answer, s. */
  readonly took_s: number;
  readonly message: string;
}

const NOTHING: MapState = {
  phase: 'idle',
  share: 0,
  result: null,
  of: null,
  about: '',
  took_s: 0,
  message: '',
};

export interface MapDesk {
  readonly state: MapState;
  readonly draw: (request: FilmMapRequest, about: string) => void;
  readonly cancel: () => void;
}

export function useMap(): MapDesk {
  const [state, setState] = useState<MapState>(NOTHING);
  const [port] = useState(() =>
    workerPort<MapAsk, MapReply>(
      () => new Worker(new URL('./map-worker.ts', import.meta.url), { type: 'module' }),
      'its worker could not be started',
    ),
  );
  const asked = useRef<{ number: number; request: FilmMapRequest | null; about: string; at_ms: number }>({
    number: 0,
    request: null,
    about: '',
    at_ms: 0,
  });

  const hear = useCallback((reply: MapReply) => {
    const { number, request, about, at_ms } = asked.current;
    if (reply.number !== number || request === null) return;
    if (reply.kind === 'progress') setState((now) => ({ ...now, phase: 'working', share: reply.share }));
    else if (reply.kind === 'done') {
      const took_s = (performance.now() - at_ms) / 1000;
      setState({ phase: 'done', share: 1, result: reply.result, of: request, about, took_s, message: '' });
    } else if (reply.kind === 'failed')
      setState((now) => ({ ...now, phase: 'failed', message: reply.message }));
  }, []);

  useEffect(() => {
    port.onReply(hear);
    port.onCrash((message) => setState((now) => ({ ...now, phase: 'failed', message })));
    return port.close;
  }, [port, hear]);

  const draw = useCallback(
    (request: FilmMapRequest, about: string) => {
      const number = asked.current.number + 1;
      asked.current = { number, request, about, at_ms: performance.now() };
      setState((now) => ({ ...now, phase: 'working', share: 0, message: '' }));
      port.postMessage({ kind: 'draw', number, request });
    },
    [port],
  );

  const cancel = useCallback(() => {
    asked.current = { ...asked.current, number: asked.current.number + 1, request: null };
    port.postMessage({ kind: 'cancel' });
    setState((now) => ({ ...now, phase: 'cancelled', share: 0 }));
  }, [port]);

  return { state, draw, cancel };
}
