/** The part of the acceptance suite about the list of jobs and the archive. */
import { describe, expect, it } from 'vitest';
import { emptyJob, type JobDocument } from '#core/job/document.ts';
import type { Store } from './store.ts';

const AT = '2026-05-14T09:00:00.000Z';
const LATER = '2026-05-14T10:00:00.000Z';
const uuid = () => crypto.randomUUID();

function job(title: string): JobDocument {
  return { ...emptyJob(title), record: `about ${title}` };
}

/** @param create makes a job, with this document if given, at 09:00, and answers with its id. */
export function listAcceptance(
  store: () => Store,
  create: (document?: JobDocument) => Promise<string>,
): void {
  describe('the list', () => {
    it('shows what the newest version says', async () => {
      const coat = (id: string, startsAt: string): JobDocument['coats'][number] => ({
        ...{ id, startsAt, name: '', kind: 'colour coat', resin: '', film: '', faceFilm: '', crew: 1 },
        ...{ edges: 'wrapped', colours: [], look: null, allowance: '', resinTemperature: '' },
        ...{ largestCup: '', pieces: [] },
      });
      const empty = emptyJob('vanity');
      const id = await create(empty);
      const document: JobDocument = {
        ...empty,
        customer: { ...empty.customer, name: 'A. Customer' },
        agreed: { ...empty.agreed, stage: 'building', handOver: '2026-06-01' },
        coats: [coat('c', '2026-05-21T09:00'), coat('d', ''), coat('e', '2026-05-20T14:30')],
      };
      expect((await store().listJobs()).find((j) => j.id === id)).toMatchObject({
        customerName: '',
        stage: 'enquiry',
        handOver: '',
        firstPourAt: '',
      });
      await store().saveJob({ id, baseVersion: 1, document, saveId: uuid(), at: LATER });
      expect((await store().listJobs()).find((j) => j.id === id)).toEqual({
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
        store().saveJob({ id, baseVersion: 1, document: job('x'), saveId: uuid(), at });
      await save(b, '2027-01-03T00:00:00.000Z');
      await save(c, '2027-01-02T00:00:00.000Z');
      await save(a, '2027-01-01T00:00:00.000Z');
      expect((await store().listJobs()).slice(0, 3).map((j) => j.id)).toEqual([b, c, a]);
    });

    it('can be of the archive, of the rest, or of all', async () => {
      const [kept, put] = [await create(), await create()];
      expect(await store().archiveJob(put, LATER)).toBe(true);
      expect(await store().archiveJob(put, AT)).toBe(true);
      const ids = async (filter?: { archived: boolean }) => (await store().listJobs(filter)).map((j) => j.id);
      expect(await ids({ archived: true })).toContain(put);
      expect(await ids({ archived: true })).not.toContain(kept);
      expect(await ids({ archived: false })).toContain(kept);
      expect(await ids({ archived: false })).not.toContain(put);
      expect(await ids()).toEqual(expect.arrayContaining([kept, put]));
      expect(await store().getJob(put)).toMatchObject({ archived: true, version: 1 });
      const save = { id: put, baseVersion: 1, document: job('late'), saveId: uuid(), at: LATER };
      expect(await store().saveJob(save)).toMatchObject({ outcome: 'saved', version: 2 });
      expect(await ids({ archived: true })).toContain(put);
      expect(await store().restoreJob(put)).toBe(true);
      expect(await store().restoreJob(put)).toBe(true);
      expect(await ids({ archived: false })).toContain(put);
      expect(await store().getJob(put)).toMatchObject({ archived: false, version: 2 });
    });

    it('of the archive does not take a job that does not exist', async () => {
      expect(await store().archiveJob(uuid(), AT)).toBe(false);
      expect(await store().restoreJob(uuid())).toBe(false);
    });
  });
}
