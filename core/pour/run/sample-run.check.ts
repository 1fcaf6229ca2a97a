/** A small pour and events of it for the tests of this folder. */
import { planCoat } from '../plan-coat.ts';
import { QUICK_20, requestOf } from '../sample-request.check.ts';
import type { RunEvent } from './run-event.ts';

export const request = requestOf({ card: QUICK_20, crew: 1 });
export const plan = planCoat({ ...request, waysOut: false });

export const uuid = (n: number) => `0192f0c0-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;

type Without<E> = E extends RunEvent ? Omit<E, 'id' | 'run' | 'device' | 'wall_ms'> : never;

/** An event with the n-th id. */
export function event(n: number, what: Without<RunEvent>, device = 1): RunEvent {
  return {
    id: uuid(n),
    run: uuid(0xffff),
    device: uuid(0xff00 + device),
    wall_ms: 1_790_000_000_000 + Math.round(what.at_s * 1000),
    ...what,
  } as RunEvent;
}

export const started = event(1, { kind: 'started', at_s: 0 });
