/** The chance of a planned coat on the page: asked a moment after the plan stands still, kept for paper and for coming back. */
import { useCallback, useEffect, useRef, useState } from 'react';
import { type Chance, chanceToFinish } from '#core/pour/chance/chance.ts';
import type { PourSpreads } from '#core/pour/chance/spreads.ts';
import type { WayChance } from '#core/pour/chance/ways-chance.ts';
import type { CoatPlan } from '#core/pour/plan.ts';
import type { OrderOffer } from '#core/pour/search/order-of-plan.ts';
import { workerPort } from '#web/worker/port.ts';
import type { ChanceAsk, ChanceOf, ChanceReply } from './chance-messages.ts';

interface Told {
  readonly spreads: PourSpreads;
  readonly chance: Chance;
  readonly order: OrderOffer | null;
  readonly ways: readonly WayChance[] | null;
}

export interface ChanceState {
  /** Of the plan at hand; null until it is worked out. */
  readonly chance: Chance | null;
  /** Another order worth offering; null: none, or not known yet. */
  readonly order: OrderOffer | null;
  readonly ways: readonly WayChance[] | null;
  /** Ways out are being worked out. */
  readonly waysWorking: boolean;
  readonly failed: string | null;
  readonly askWays: () => void;
}

/** Above this a maker is not troubled with ways out unasked. */
export const SURE_ENOUGH = 0.95;

/** Typing makes a plan a moment; only one that stays is thrown. */
const STANDS_STILL_ms = 500;

const told = new WeakMap<CoatPlan, Told>();

const known = (of: ChanceOf): Told | null => {
  const has = told.get(of.plan);
  return has !== undefined && has.spreads === of.spreads ? has : null;
};

/** What was shown, else thrown at once with fewer pours: paper does not wait. */
export function chanceForPaper(of: ChanceOf): Chance {
  const has = known(of);
  if (has !== null) return has.chance;
  return chanceToFinish({ ...of, pours: 2000, resins: 12 });
}

/** @param of kept the same object while nothing changes; null: nothing is asked. */
export function useChance(of: ChanceOf | null): ChanceState {
  const [, show] = useState(0);
  const [failed, setFailed] = useState<string | null>(null);
  const [waysWorking, setWaysWorking] = useState(false);
  const [port] = useState(() =>
    workerPort<ChanceAsk, ChanceReply>(
      () => new Worker(new URL('./chance-worker.ts', import.meta.url), { type: 'module' }),
      'no answer from the worker',
    ),
  );
  const number = useRef(0);
  const asked = useRef<ChanceOf | null>(null);
  const ask = useCallback(
    (what: 'chance' | 'ways', about: ChanceOf) => {
      asked.current = about;
      number.current += 1;
      setFailed(null);
      setWaysWorking(what === 'ways');
      port.postMessage({ number: number.current, what, of: about });
    },
    [port],
  );
  useEffect(() => {
    const fail = (why: string) => {
      asked.current = null;
      setWaysWorking(false);
      setFailed(why);
    };
    port.onReply((reply) => {
      const about = asked.current;
      if (about === null || reply.number !== number.current) return;
      if (reply.what === 'failed') return fail(reply.failed);
      if (reply.what === 'chance') {
        const { chance, order } = reply;
        told.set(about.plan, { spreads: about.spreads, chance, order, ways: null });
        asked.current = null;
        if (reply.chance.chance < SURE_ENOUGH) ask('ways', about);
      } else {
        const has = known(about);
        if (has !== null) told.set(about.plan, { ...has, ways: reply.ways });
        asked.current = null;
        setWaysWorking(false);
      }
      show((count) => count + 1);
    });
    port.onCrash(fail);
    return () => {
      asked.current = null;
      port.close();
    };
  }, [port, ask]);
  useEffect(() => {
    if (of === null || known(of) !== null) return;
    const timer = setTimeout(() => {
      // Pours of an older plan are not thrown to the end.
      if (asked.current !== null) port.close();
      ask('chance', of);
    }, STANDS_STILL_ms);
    return () => clearTimeout(timer);
  }, [of, port, ask]);
  const has = of === null ? null : known(of);
  return {
    chance: has?.chance ?? null,
    order: has?.order ?? null,
    ways: has?.ways ?? null,
    waysWorking,
    failed,
    askWays: () => {
      if (of !== null && !waysWorking) ask('ways', of);
    },
  };
}
