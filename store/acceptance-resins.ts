/** The part of the acceptance suite about resin cards. */
import { describe, expect, it } from 'vitest';
import { ResinCardDocument } from '#core/resin/card-document.ts';
import type { Store } from './store.ts';

const AT = '2026-05-14T09:00:00.000Z';
const LATER = '2026-05-14T10:00:00.000Z';
const uuid = () => crypto.randomUUID();
let count = 0;

function card(id: string, name: string): ResinCardDocument {
  return ResinCardDocument.parse({
    format: 'pourwright resin 1',
    id,
    name,
    mix: { byVolume: '2:1' },
    label: [{ kind: 'working time', value: '40 min' }],
    observations: [{ id: 'o1', kind: 'gel', note: `line\n\ttab "½" 面 of ${name}` }],
  });
}

export function resinAcceptance(store: () => Store): void {
  describe('resin cards', () => {
    const create = async (name = 'slow') => {
      count += 1;
      const id = `${name}-${count}`;
      await store().createResin({ id, document: card(id, name), saveId: uuid(), at: AT });
      return id;
    };

    it('come back as they were given, version 1, and are made once however often they are sent', async () => {
      const id = 'sent-often';
      const first = { id, document: card(id, 'Once'), saveId: uuid(), at: AT };
      const made = { outcome: 'saved', version: 1, savedAt: AT };
      const outcomes = await Promise.all([1, 2, 3, 4].map(() => store().createResin(first)));
      for (const outcome of outcomes) expect(outcome).toEqual(made);
      expect(await store().createResin({ ...first, document: card(id, 'Other'), at: LATER })).toEqual(made);
      expect(await store().getResin(id)).toEqual({
        id,
        version: 1,
        savedAt: AT,
        archived: false,
        document: first.document,
      });
    });

    it('do not overwrite another one with the same id', async () => {
      const id = await create('mine');
      const outcome = await store().createResin({
        id,
        document: card(id, 'yours'),
        saveId: uuid(),
        at: LATER,
      });
      expect(outcome).toEqual({ outcome: 'exists', current: { version: 1, document: card(id, 'mine') } });
    });

    it('follow the version rule: saved on the newest, in conflict on an older one, the same on a repeat', async () => {
      const id = await create('v1');
      const save = { id, baseVersion: 1, document: card(id, 'v2'), saveId: uuid(), at: LATER };
      expect(await store().saveResin(save)).toEqual({ outcome: 'saved', version: 2, savedAt: LATER });
      expect(await store().saveResin({ ...save, document: card(id, 'changed') })).toEqual({
        outcome: 'saved',
        version: 2,
        savedAt: LATER,
      });
      expect(await store().saveResin({ ...save, document: card(id, 'late'), saveId: uuid() })).toEqual({
        outcome: 'conflict',
        current: { version: 2, document: card(id, 'v2') },
        base: card(id, 'v1'),
      });
      expect(await store().saveResin({ ...save, baseVersion: 2 ** 40, saveId: uuid() })).toMatchObject({
        outcome: 'conflict',
        base: null,
      });
      expect(await store().getResin(id)).toMatchObject({ version: 2, document: card(id, 'v2') });
    });

    it('saved by many on the same base at the same moment are stored once', async () => {
      const id = await create('v1');
      const outcomes = await Promise.all(
        Array.from({ length: 8 }, (_, i) =>
          store().saveResin({ id, baseVersion: 1, document: card(id, `c${i}`), saveId: uuid(), at: AT }),
        ),
      );
      const winners = outcomes.flatMap((outcome, i) => (outcome.outcome === 'saved' ? [i] : []));
      expect(winners).toHaveLength(1);
      expect((await store().getResin(id))?.document.name).toBe(`c${winners[0]}`);
    });

    it('go into the archive and come back, and are listed by name either way', async () => {
      const [b, a] = [await create('bbb'), await create('aaa')];
      const names = async () =>
        (await store().listResins()).filter((each) => each.id === a || each.id === b).map((each) => each.id);
      expect(await names()).toEqual([a, b]);
      expect(await store().archiveResin(a, AT)).toBe(true);
      expect(await store().archiveResin(a, LATER)).toBe(true);
      expect(await store().getResin(a)).toMatchObject({ archived: true, version: 1 });
      expect(await names()).toEqual([a, b]);
      expect(await store().restoreResin(a)).toBe(true);
      expect(await store().getResin(a)).toMatchObject({ archived: false });
    });

    it('that do not exist are missing, whatever is asked of them', async () => {
      const save = { id: 'ghost', baseVersion: 1, document: card('ghost', 'x'), saveId: uuid(), at: AT };
      expect(await store().saveResin(save)).toEqual({ outcome: 'missing' });
      expect(await store().getResin('ghost')).toBeNull();
      expect(await store().archiveResin('ghost', AT)).toBe(false);
      expect(await store().restoreResin('ghost')).toBe(false);
    });
  });
}
