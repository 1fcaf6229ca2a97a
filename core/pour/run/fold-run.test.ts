import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldRun } from './fold-run.ts';
import { joinEvents, RunEvent } from './run-event.ts';
import { event, plan, started, uuid } from './sample-run.check.ts';

const ids = plan.steps.map(({ id }) => id);

const anyEvent = fc
  .tuple(fc.integer({ min: 2, max: 40 }), fc.integer({ min: 0, max: 3000 }))
  .chain(([n, at_s]) =>
    fc.oneof(
      fc.constantFrom(...ids).map((step) => event(n, { kind: 'done', step, at_s })),
      fc.constantFrom(...ids).map((step) => event(n, { kind: 'began', step, at_s })),
      fc.constantFrom(...ids).map((step) => event(n, { kind: 'skipped', step, why: '', at_s })),
      fc.integer({ min: 1, max: 40 }).map((of) => event(n, { kind: 'undone', event: uuid(of), at_s })),
      fc
        .double({ min: 285, max: 305, noNaN: true })
        .map((temperature_K) => event(n, { kind: 'reading', of: 'air', cup: null, temperature_K, at_s })),
      fc.boolean().map((on) => event(n, { kind: 'ticked', item: 'gloves', on, at_s })),
    ),
  );
const anyEvents = fc.array(anyEvent, { maxLength: 30 });

describe('events of a run', () => {
  it('give the same state in any order and with any repeats', () => {
    fc.assert(
      fc.property(anyEvents, fc.infiniteStream(fc.nat()), (events, order) => {
        const first = foldRun(plan.steps, [started, ...events]);
        const shuffled = [...events, started, ...events]
          .map((each) => [order.next().value as number, each] as const)
          .sort(([a], [b]) => a - b)
          .map(([, each]) => each);
        expect(foldRun(plan.steps, shuffled)).toEqual(first);
      }),
    );
  });

  it('join idempotently, commutatively and associatively', () => {
    fc.assert(
      fc.property(anyEvents, anyEvents, anyEvents, (a, b, c) => {
        expect(joinEvents(a, a)).toEqual(joinEvents(a));
        expect(joinEvents(a, b)).toEqual(joinEvents(b, a));
        expect(joinEvents(joinEvents(a, b), c)).toEqual(joinEvents(a, joinEvents(b, c)));
      }),
    );
  });

  it('are read by a schema that refuses strange ids, times and temperatures by name', () => {
    expect(RunEvent.safeParse(started).success).toBe(true);
    const paths = (what: object) =>
      RunEvent.safeParse({ ...started, ...what }).error?.issues.map(({ path }) => path.join('.'));
    expect(paths({ id: 'x' })).toEqual(['id']);
    expect(paths({ at_s: Number.NaN })).toEqual(['at_s']);
    expect(paths({ kind: 'reading', of: 'air', cup: null, temperature_K: 10 })).toEqual(['temperature_K']);
    expect(RunEvent.safeParse({ ...started, extra: 1 }).success).toBe(false);
  });
});

describe('the state of a run', () => {
  const mixed = event(2, { kind: 'done', step: 'mix-1', at_s: 200 });
  const poured = event(3, { kind: 'done', step: 'pour-1', at_s: 260 });

  it('begins a step when the same person finished the one before', () => {
    const { steps } = foldRun(plan.steps, [started, mixed, poured]);
    expect(steps.get('mix-1')).toMatchObject({ state: 'done', began_s: 0, done_s: 200 });
    expect(steps.get('pour-1')).toMatchObject({ state: 'done', began_s: 200, done_s: 260 });
  });

  it('keeps the first done when two phones say it', () => {
    const again = event(9, { kind: 'done', step: 'mix-1', at_s: 230 }, 2);
    expect(foldRun(plan.steps, [again, started, mixed]).steps.get('mix-1')).toMatchObject({ done_s: 200 });
  });

  it('takes an event back, and the taking back too', () => {
    const undo = event(4, { kind: 'undone', event: poured.id, at_s: 270 });
    const redo = event(5, { kind: 'undone', event: undo.id, at_s: 280 });
    const of = (...events: readonly RunEvent[]) => foldRun(plan.steps, [started, mixed, poured, ...events]);
    expect(of(undo).steps.get('pour-1')).toEqual({ state: 'to do' });
    expect(of(undo).undoable).toEqual(mixed);
    expect(of(undo, redo).steps.get('pour-1')).toMatchObject({ state: 'done', done_s: 260 });
  });

  it('tells events of steps that the plan does not have', () => {
    const odd = event(6, { kind: 'done', step: 'polish', at_s: 10 });
    expect(foldRun(plan.steps, [started, odd]).strange).toEqual([odd.id]);
  });
});
