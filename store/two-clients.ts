/** The property behind optimistic saving: see `twoClientsLoseNothing`. */
import fc from 'fast-check';
import { expect } from 'vitest';
import { emptyJob, type JobDocument } from '#core/job/document.ts';
import type { JobSave, Store } from './store.ts';

const AT = '2026-05-14T09:00:00.000Z';

/** What a client does next: saves on the version it knows, sends an earlier save again, or reads the newest version. */
type Act = 'save' | 'repeat' | 'read';

interface Step {
  readonly client: 0 | 1;
  readonly act: Act;
  /** Begin the next step before this one has been answered. */
  readonly dontWait: boolean;
  /** Which earlier save to repeat, counted back from the last. */
  readonly back: number;
}

interface Client {
  knows: number;
  readonly sent: JobSave[];
}

const step: fc.Arbitrary<Step> = fc.record({
  client: fc.constantFrom(0, 1),
  act: fc.constantFrom<Act[]>('save', 'save', 'repeat', 'read'),
  dontWait: fc.boolean(),
  back: fc.nat({ max: 3 }),
});

/**
 * For random interleavings of two clients: every save answered "saved" is found under its version, as it was sent; a repeat is
 * answered like the first time; versions are 1..n without a gap; and n counts the distinct acknowledged saves.
 */
export async function twoClientsLoseNothing(store: Store, runs = 40): Promise<void> {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 24 }), async (steps) => {
      const id = crypto.randomUUID();
      const first = { id, document: emptyJob('first'), saveId: crypto.randomUUID(), at: AT };
      await store.createJob(first);
      const acknowledged = new Map<string, { version: number; document: JobDocument }>();
      acknowledged.set(first.saveId, { version: 1, document: first.document });
      const clients: [Client, Client] = [
        { knows: 1, sent: [] },
        { knows: 1, sent: [] },
      ];
      const send = async (client: Client, save: JobSave) => {
        const outcome = await store.saveJob(save);
        expect(outcome.outcome).not.toBe('missing');
        if (outcome.outcome !== 'saved') return;
        client.knows = Math.max(client.knows, outcome.version);
        const before = acknowledged.get(save.saveId);
        if (before === undefined)
          acknowledged.set(save.saveId, { version: outcome.version, document: save.document });
        else expect(outcome.version).toBe(before.version);
      };
      let count = 0;
      const perform = async ({ client: who, act, back }: Step) => {
        const client = clients[who];
        const earlier = client.sent.at(-1 - back);
        if (act === 'read') client.knows = (await store.getJob(id))?.version ?? Number.NaN;
        else if (act === 'repeat') {
          if (earlier !== undefined) await send(client, earlier);
        } else {
          count += 1;
          const save = {
            id,
            baseVersion: client.knows,
            document: emptyJob(`client ${who} save ${count}`),
            saveId: crypto.randomUUID(),
            at: AT,
          };
          client.sent.push(save);
          await send(client, save);
        }
      };
      const running: Promise<void>[] = [];
      for (const next of steps) {
        const done = perform(next);
        if (next.dontWait) running.push(done);
        else await done;
      }
      await Promise.all(running);

      const notes = await store.listVersions(id);
      expect(notes?.map((n) => n.version)).toEqual(Array.from(acknowledged, (_, i) => i + 1));
      for (const [saveId, { version, document }] of acknowledged) {
        expect(notes?.[version - 1]?.saveId).toBe(saveId);
        expect((await store.getVersion(id, version))?.document).toEqual(document);
      }
      expect((await store.getJob(id))?.version).toBe(acknowledged.size);
    }),
    { numRuns: runs },
  );
}
