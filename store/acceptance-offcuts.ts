/** The part of the acceptance suite about offcuts on the shelf. */
import { describe, expect, it } from 'vitest';
import { type Offcut, OffcutMovement, offcutsOnShelf } from '#core/shelf/offcuts.ts';
import type { Store } from './store.ts';

const AT = '2026-05-14T09:00:00.000Z';
const LATER = '2026-05-14T10:00:00.000Z';
const uuid = () => crypto.randomUUID();
const offcut = (): Offcut => ({
  ...{ id: uuid(), board: 'plywood', thickness_m: 0.018, length_m: 0.9, width_m: 0.35 },
});
const movement = (more: object) => OffcutMovement.parse({ id: uuid(), why: 'cut as planned', ...more });

export function offcutAcceptance(store: () => Store): void {
  describe('offcuts', () => {
    const shelf = async () =>
      offcutsOnShelf((await store().listOffcutMovements()).map((each) => each.movement));
    const add = (made: OffcutMovement, at = AT) => store().moveOffcuts({ movement: made, at });

    it('are kept as movements in their order, each once however often it is sent', async () => {
      const before = (await store().listOffcutMovements()).length;
      const [a, b] = [offcut(), offcut()];
      const cut = movement({ jobId: uuid(), puts: [a, b] });
      const outcomes = await Promise.all([1, 2, 3].map(() => add(cut)));
      for (const outcome of outcomes)
        expect(outcome).toEqual({ outcome: 'saved', number: before + 1, savedAt: AT });
      expect(await add(cut, LATER)).toEqual({ outcome: 'saved', number: before + 1, savedAt: AT });
      expect((await store().listOffcutMovements()).at(-1)).toEqual({
        number: before + 1,
        at: AT,
        movement: cut,
      });
      expect(await shelf()).toEqual(expect.arrayContaining([a, b]));
      const taken = movement({ takes: [a.id], why: 'taken by hand' });
      expect(await add(taken, LATER)).toMatchObject({ outcome: 'saved', number: before + 2 });
      expect(await shelf()).toContainEqual(b);
      expect(await shelf()).not.toContainEqual(a);
      expect(await add(movement({ why: 'reversed', reverses: taken.id }))).toMatchObject({
        outcome: 'saved',
      });
      expect(await shelf()).toContainEqual(a);
    });

    it('that are not there any more are refused, and nothing is stored', async () => {
      const one = offcut();
      await add(movement({ puts: [one] }));
      await add(movement({ takes: [one.id], why: 'taken by hand' }));
      const count = (await store().listOffcutMovements()).length;
      const refused = await add(movement({ takes: [one.id], puts: [offcut()] }));
      expect(refused).toMatchObject({
        outcome: 'refused',
        problems: [{ path: 'takes.0', code: 'offcut.gone', read: one.id }],
      });
      expect(await store().listOffcutMovements()).toHaveLength(count);
    });

    it('are taken by one of many that want the same at the same moment', async () => {
      const one = offcut();
      await add(movement({ puts: [one] }));
      const outcomes = await Promise.all(
        Array.from({ length: 6 }, () => add(movement({ takes: [one.id], puts: [offcut()] }))),
      );
      expect(outcomes.filter(({ outcome }) => outcome === 'saved')).toHaveLength(1);
      const numbers = (await store().listOffcutMovements()).map(({ number }) => number);
      expect(numbers).toEqual(numbers.map((_, i) => i + 1));
    });
  });
}
