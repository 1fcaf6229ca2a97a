/** The part of the acceptance suite about pours as they happened. */
import { describe, expect, it } from 'vitest';
import { type FrozenPour, freezePour } from '#core/pour/run/frozen-pour.ts';
import type { RunEvent } from '#core/pour/run/run-event.ts';
import { plan, request } from '#core/pour/run/sample-run.check.ts';
import type { Store } from './store.ts';

const AT = '2026-05-14T09:00:00.000Z';
const LATER = '2026-05-14T10:00:00.000Z';

let made = 0;
/** A new UUID of version 7. */
const uuid = () => {
  made += 1;
  const random = crypto.randomUUID();
  return `0192f0c0-${(made & 0xffff).toString(16).padStart(4, '0')}-7${random.slice(15)}`;
};
const frozen: FrozenPour = freezePour(request, plan, '1');

export function runAcceptance(store: () => Store): void {
  describe('runs', () => {
    const open = async (jobId = uuid(), at = AT) => {
      const run = { id: uuid(), jobId, title: 'Vanity, colour coat', pour: frozen, at };
      expect(await store().openRun(run)).toEqual({ outcome: 'saved', openedAt: at });
      return run;
    };
    const done = (run: string, step: string, at_s: number): RunEvent => ({
      ...{ id: uuid(), run, device: uuid(), at_s, wall_ms: 1, kind: 'done', step },
    });
    const add = (id: string, ...events: readonly RunEvent[]) =>
      store().addRunEvents({ id, events: events.map((event) => ({ event, happenedAt: AT })) });

    it('keep their frozen pour, and are opened once', async () => {
      const run = await open();
      expect(await store().openRun({ ...run, title: 'other', at: LATER })).toEqual({
        outcome: 'saved',
        openedAt: AT,
      });
      const { id, jobId, title } = run;
      const summary = { id, jobId, title, coatId: plan.coatId, openedAt: AT, lastEvent: 0 };
      expect(await store().getRun(id)).toEqual({ ...summary, pour: frozen });
      expect(await store().listRuns(jobId)).toEqual([summary]);
      expect(await store().listRuns()).toContainEqual(summary);
      expect(await store().getRun(uuid())).toBeNull();
    });

    it('keep events each once, numbered as they came in', async () => {
      const { id } = await open();
      const [a, b, c] = [done(id, 'mix-1', 200), done(id, 'pour-1', 250), done(id, 'mix-2', 90)];
      expect(await add(id, a, b, a)).toBe(2);
      expect(await add(id, b, a)).toBe(2);
      expect(await add(id, c)).toBe(3);
      expect(await add(id)).toBe(3);
      expect((await store().listRunEvents(id, 0))?.map(({ number, event }) => [number, event])).toEqual([
        [1, a],
        [2, b],
        [3, c],
      ]);
      expect((await store().listRunEvents(id, 2))?.map(({ event }) => event)).toEqual([c]);
      expect((await store().getRun(id))?.lastEvent).toBe(3);
    });

    it('pass over events of another run, and keep the first of two with one id', async () => {
      const { id } = await open();
      const first = done(id, 'mix-1', 200);
      expect(await add(id, first)).toBe(1);
      expect(await add(id, { ...first, at_s: 900 }, done(uuid(), 'mix-1', 1))).toBe(1);
      expect((await store().listRunEvents(id, 0))?.map(({ event }) => event)).toEqual([first]);
    });

    it('take events from many phones at the same moment without loss or gap', async () => {
      const { id } = await open();
      const each = Array.from({ length: 8 }, (_, i) => [done(id, 'mix-1', i), done(id, 'pour-1', i + 100)]);
      await Promise.all([...each, ...each].map((events) => add(id, ...events)));
      const kept = (await store().listRunEvents(id, 0))!;
      expect(kept.map(({ number }) => number)).toEqual(Array.from({ length: 16 }, (_, i) => i + 1));
      expect(new Set(kept.map(({ event }) => event.id))).toEqual(
        new Set(each.flat().map((event) => event.id)),
      );
    });

    it('that are not there are said so', async () => {
      expect(await add(uuid(), done(uuid(), 'mix-1', 1))).toBeNull();
      expect(await store().listRunEvents(uuid(), 0)).toBeNull();
    });

    it('keep texts that a database cannot hold as they stand', async () => {
      const { id } = await open();
      const odd: RunEvent = { ...done(id, 'mix-1', 1), kind: 'skipped', step: 'mix-1', why: 'a\0b\ud800' };
      expect(await add(id, odd)).toBe(1);
      expect((await store().listRunEvents(id, 0))?.[0]?.event).toMatchObject({ why: 'ab\ufffd' });
    });
  });
}
