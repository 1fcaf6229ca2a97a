/** What every store must do, whatever database is under it. Run by sqlite.test.ts and postgres.test.ts. */
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { emptyJob, type JobDocument } from '#core/job/document.ts';
import { listAcceptance } from './acceptance-list.ts';
import { offcutAcceptance } from './acceptance-offcuts.ts';
import { resinAcceptance } from './acceptance-resins.ts';
import { runAcceptance } from './acceptance-runs.ts';
import { shopAcceptance } from './acceptance-shop.ts';
import type { Store } from './store.ts';
import { twoClientsLoseNothing } from './two-clients.ts';

const AT = '2026-05-14T09:00:00.000Z';
const LATER = '2026-05-14T10:00:00.000Z';
const uuid = () => crypto.randomUUID();

function job(title: string): JobDocument {
  return { ...emptyJob(title), record: `about ${title}` };
}

/** @param open makes an empty store; called once for each group, which then uses it alone. */
export function storeAcceptance(name: string, open: () => Promise<Store>): void {
  describe(name, () => {
    let store: Store;
    beforeAll(async () => {
      store = await open();
    }, 60_000);
    afterAll(async () => {
      await store.close();
    });

    const create = async (document = job('a top')) => {
      const id = uuid();
      await store.createJob({ id, document, saveId: uuid(), at: AT });
      return id;
    };

    describe('a new job', () => {
      it('is version 1 and comes back as it was given', async () => {
        const id = uuid();
        const document = { ...job('bar "top" ½ – ☕ 面'), record: 'line\nline\ttab \0 nul \ud800 half' };
        const outcome = await store.createJob({ id, document, saveId: uuid(), at: AT });
        expect(outcome).toEqual({ outcome: 'saved', version: 1, savedAt: AT });
        expect(await store.getJob(id)).toEqual({ id, version: 1, savedAt: AT, archived: false, document });
      });

      it('is made once however often it is sent', async () => {
        const first = { id: uuid(), document: job('once'), saveId: uuid(), at: AT };
        await store.createJob(first);
        const again = await store.createJob({ ...first, document: job('other'), at: LATER });
        expect(again).toEqual({ outcome: 'saved', version: 1, savedAt: AT });
        expect((await store.getJob(first.id))?.document.title).toBe('once');
        expect(await store.listVersions(first.id)).toHaveLength(1);
      });

      it('is made once when it is sent several times at the same moment', async () => {
        const first = { id: uuid(), document: job('at once'), saveId: uuid(), at: AT };
        const outcomes = await Promise.all([1, 2, 3, 4].map(() => store.createJob(first)));
        for (const outcome of outcomes)
          expect(outcome).toEqual({ outcome: 'saved', version: 1, savedAt: AT });
        expect(await store.listVersions(first.id)).toHaveLength(1);
      });

      it('does not overwrite another one with the same id', async () => {
        const id = await create(job('mine'));
        const outcome = await store.createJob({ id, document: job('yours'), saveId: uuid(), at: LATER });
        expect(outcome).toEqual({ outcome: 'exists', current: { version: 1, document: job('mine') } });
        expect((await store.getJob(id))?.document.title).toBe('mine');
      });

      it('keeps a title that a text column cannot hold, exact in the document and readable in the list', async () => {
        const id = await create(job('a\0b\ud800c'));
        expect((await store.getJob(id))?.document.title).toBe('a\0b\ud800c');
        expect((await store.listJobs()).find((j) => j.id === id)?.title).toBe('ab\ufffdc');
      });
    });

    describe('saving', () => {
      it('makes the next version and keeps the earlier ones', async () => {
        const id = await create(job('v1'));
        const saveId = uuid();
        const outcome = await store.saveJob({ id, baseVersion: 1, document: job('v2'), saveId, at: LATER });
        expect(outcome).toEqual({ outcome: 'saved', version: 2, savedAt: LATER });
        expect(await store.getJob(id)).toMatchObject({ version: 2, savedAt: LATER, document: job('v2') });
        expect(await store.getVersion(id, 1)).toEqual({ version: 1, savedAt: AT, document: job('v1') });
        expect(await store.getVersion(id, 2)).toEqual({ version: 2, savedAt: LATER, document: job('v2') });
        const notes = await store.listVersions(id);
        expect(notes?.map((n) => [n.version, n.savedAt])).toEqual([
          [1, AT],
          [2, LATER],
        ]);
        expect(notes?.[1]?.saveId).toBe(saveId);
      });

      it('on an old version is told of the conflict, with the newest and the one it was based on', async () => {
        const id = await create(job('v1'));
        await store.saveJob({ id, baseVersion: 1, document: job('v2'), saveId: uuid(), at: AT });
        const outcome = await store.saveJob({
          id,
          baseVersion: 1,
          document: job('mine'),
          saveId: uuid(),
          at: AT,
        });
        expect(outcome).toEqual({
          outcome: 'conflict',
          current: { version: 2, document: job('v2') },
          base: job('v1'),
        });
        expect(await store.listVersions(id)).toHaveLength(2);
      });

      it.each([0, 7, -1, 2 ** 31, 2 ** 40])(
        'on version %d, which never was, has no base',
        async (baseVersion) => {
          const id = await create(job('v1'));
          const outcome = await store.saveJob({
            id,
            baseVersion,
            document: job('mine'),
            saveId: uuid(),
            at: AT,
          });
          expect(outcome).toEqual({
            outcome: 'conflict',
            current: { version: 1, document: job('v1') },
            base: null,
          });
        },
      );

      it('again under the same save id answers as the first time, even after others have saved', async () => {
        const id = await create(job('v1'));
        const save = { id, baseVersion: 1, document: job('v2'), saveId: uuid(), at: AT };
        await store.saveJob(save);
        await store.saveJob({ id, baseVersion: 2, document: job('v3'), saveId: uuid(), at: AT });
        const again = await store.saveJob({ ...save, baseVersion: 3, document: job('changed'), at: LATER });
        expect(again).toEqual({ outcome: 'saved', version: 2, savedAt: AT });
        expect(await store.getJob(id)).toMatchObject({ version: 3, document: job('v3') });
        expect((await store.getVersion(id, 2))?.document).toEqual(job('v2'));
      });

      it('may use a save id that another job has used', async () => {
        const saveId = uuid();
        for (const id of [await create(), await create()]) {
          const outcome = await store.saveJob({ id, baseVersion: 1, document: job('v2'), saveId, at: AT });
          expect(outcome).toEqual({ outcome: 'saved', version: 2, savedAt: AT });
        }
      });

      it('of a job that does not exist is missing, and makes nothing', async () => {
        const id = uuid();
        const save = { id, baseVersion: 1, document: job('ghost'), saveId: uuid(), at: AT };
        expect(await store.saveJob(save)).toEqual({ outcome: 'missing' });
        expect(await store.getJob(id)).toBeNull();
        expect(await store.listVersions(id)).toBeNull();
      });

      it('by many on the same base at the same moment stores exactly one', async () => {
        const id = await create(job('v1'));
        const outcomes = await Promise.all(
          Array.from({ length: 12 }, (_, i) =>
            store.saveJob({ id, baseVersion: 1, document: job(`client ${i}`), saveId: uuid(), at: AT }),
          ),
        );
        const winners = outcomes.flatMap((outcome, i) => (outcome.outcome === 'saved' ? [i] : []));
        expect(winners).toHaveLength(1);
        expect((await store.getJob(id))?.document.title).toBe(`client ${winners[0]}`);
        for (const outcome of outcomes)
          if (outcome.outcome !== 'saved')
            expect(outcome).toMatchObject({ outcome: 'conflict', current: { version: 2 }, base: job('v1') });
      });

      it('by two clients in any order, with repeats, loses no acknowledged save and leaves no gap', async () => {
        await twoClientsLoseNothing(store);
      }, 120_000);
    });

    describe('versions', () => {
      it.each([0, 2, -1, 1.5, 2 ** 40])('number %d of a job with one version is null', async (version) => {
        expect(await store.getVersion(await create(), version)).toBeNull();
      });

      it('of a job that does not exist are null', async () => {
        expect(await store.getVersion(uuid(), 1)).toBeNull();
        expect(await store.listVersions(uuid())).toBeNull();
        expect(await store.getJob("' or 1=1 --")).toBeNull();
      });
    });

    listAcceptance(() => store, create);
    resinAcceptance(() => store);
    offcutAcceptance(() => store);
    runAcceptance(() => store);
    shopAcceptance(() => store);

    it('any text a person can type comes back exactly', async () => {
      const texts = fc.record({
        title: fc.string({ unit: 'binary', maxLength: 60 }),
        record: fc.string({ unit: 'binary', maxLength: 200 }),
      });
      await fc.assert(
        fc.asyncProperty(texts, async ({ title, record }) => {
          const document = { ...emptyJob(title), record };
          expect((await store.getJob(await create(document)))?.document).toEqual(document);
        }),
        { numRuns: 25 },
      );
    }, 60_000);
  });
}
