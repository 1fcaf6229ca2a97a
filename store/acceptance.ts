/** What every store must do, whatever database is under it. Run by sqlite.test.ts and postgres.test.ts. */
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { emptyJob, type JobDocument } from '#core/job/document.ts';
import { newShop } from './shop.ts';
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

    describe('the list', () => {
      it('shows what the newest version says', async () => {
        const coat = (id: string, startsAt: string): JobDocument['coats'][number] => ({
          ...{ id, startsAt, name: '', kind: 'colour coat', resin: '', film: '', faceFilm: '', crew: 1 },
          ...{ edges: 'wrapped', colours: [], allowance: '', resinTemperature: '', largestCup: '' },
        });
        const empty = emptyJob('vanity');
        const id = await create(empty);
        const document: JobDocument = {
          ...empty,
          customer: { ...empty.customer, name: 'A. Customer' },
          agreed: { ...empty.agreed, stage: 'building', handOver: '2026-06-01' },
          coats: [coat('c', '2026-05-21T09:00'), coat('d', ''), coat('e', '2026-05-20T14:30')],
        };
        expect((await store.listJobs()).find((j) => j.id === id)).toMatchObject({
          customerName: '',
          stage: 'enquiry',
          handOver: '',
          firstPourAt: '',
        });
        await store.saveJob({ id, baseVersion: 1, document, saveId: uuid(), at: LATER });
        expect((await store.listJobs()).find((j) => j.id === id)).toEqual({
          id,
          title: 'vanity',
          customerName: 'A. Customer',
          stage: 'building',
          handOver: '2026-06-01',
          firstPourAt: '2026-05-20T14:30',
          version: 2,
          updatedAt: LATER,
          archived: false,
        });
      });

      it('has the newest save first', async () => {
        const [a, b, c] = [await create(), await create(), await create()];
        const save = (id: string, at: string) =>
          store.saveJob({ id, baseVersion: 1, document: job('x'), saveId: uuid(), at });
        await save(b, '2027-01-03T00:00:00.000Z');
        await save(c, '2027-01-02T00:00:00.000Z');
        await save(a, '2027-01-01T00:00:00.000Z');
        expect((await store.listJobs()).slice(0, 3).map((j) => j.id)).toEqual([b, c, a]);
      });

      it('can be of the archive, of the rest, or of all', async () => {
        const [kept, put] = [await create(), await create()];
        expect(await store.archiveJob(put, LATER)).toBe(true);
        expect(await store.archiveJob(put, AT)).toBe(true);
        const ids = async (filter?: { archived: boolean }) => (await store.listJobs(filter)).map((j) => j.id);
        expect(await ids({ archived: true })).toContain(put);
        expect(await ids({ archived: true })).not.toContain(kept);
        expect(await ids({ archived: false })).toContain(kept);
        expect(await ids({ archived: false })).not.toContain(put);
        expect(await ids()).toEqual(expect.arrayContaining([kept, put]));
        expect(await store.getJob(put)).toMatchObject({ archived: true, version: 1 });
        const save = { id: put, baseVersion: 1, document: job('late'), saveId: uuid(), at: LATER };
        expect(await store.saveJob(save)).toMatchObject({ outcome: 'saved', version: 2 });
        expect(await ids({ archived: true })).toContain(put);
        expect(await store.restoreJob(put)).toBe(true);
        expect(await store.restoreJob(put)).toBe(true);
        expect(await ids({ archived: false })).toContain(put);
        expect(await store.getJob(put)).toMatchObject({ archived: false, version: 2 });
      });

      it('of the archive does not take a job that does not exist', async () => {
        expect(await store.archiveJob(uuid(), AT)).toBe(false);
        expect(await store.restoreJob(uuid())).toBe(false);
      });
    });

    describe('the shop', () => {
      const shop = (name: string) => ({ ...newShop(), name });

      it('is nothing until it is saved, then follows the version rule', async () => {
        expect(await store.getShop()).toBeNull();
        const wrong = { baseVersion: 3, shop: shop('too early'), saveId: uuid(), at: AT };
        expect(await store.saveShop(wrong)).toEqual({
          outcome: 'conflict',
          current: { version: 0, document: newShop() },
          base: null,
        });
        const first = { baseVersion: 0, shop: shop('Bench One'), saveId: uuid(), at: AT };
        expect(await store.saveShop(first)).toEqual({ outcome: 'saved', version: 1, savedAt: AT });
        expect(await store.getShop()).toEqual({ version: 1, savedAt: AT, shop: shop('Bench One') });
        const second = {
          ...shop('Bench Two'),
          system: 'metric' as const,
          currency: 'EUR',
          rates: { ...newShop().rates, mix_s: 200 },
        };
        expect(
          await store.saveShop({ baseVersion: 1, shop: second, saveId: uuid(), at: LATER }),
        ).toMatchObject({ outcome: 'saved', version: 2 });
        expect(await store.saveShop({ ...first, shop: shop('changed'), at: LATER })).toEqual({
          outcome: 'saved',
          version: 1,
          savedAt: AT,
        });
        expect(
          await store.saveShop({ baseVersion: 1, shop: shop('late'), saveId: uuid(), at: LATER }),
        ).toEqual({
          outcome: 'conflict',
          current: { version: 2, document: second },
          base: shop('Bench One'),
        });
        expect(await store.getShop()).toEqual({ version: 2, savedAt: LATER, shop: second });
      });

      it('saved by many on the same base at the same moment is stored once', async () => {
        const base = (await store.getShop())?.version ?? 0;
        const outcomes = await Promise.all(
          Array.from({ length: 8 }, (_, i) =>
            store.saveShop({ baseVersion: base, shop: shop(`client ${i}`), saveId: uuid(), at: AT }),
          ),
        );
        const winners = outcomes.flatMap((outcome, i) => (outcome.outcome === 'saved' ? [i] : []));
        expect(winners).toHaveLength(1);
        expect(await store.getShop()).toMatchObject({
          version: base + 1,
          shop: { name: `client ${winners[0]}` },
        });
      });
    });

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
