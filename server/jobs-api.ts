import { Hono } from 'hono';
import type { z } from 'zod';
import type { Store } from '#store/store.ts';
import { checkDocument } from './check.ts';
import { type AppEnv, errorOf } from './context.ts';
import { attachment } from './job-file-name.ts';
import { idOf, jsonBody, query, versionOf } from './read-request.ts';
import { routes } from './routes.ts';
import { ListQuery, type NewJobBody, NewJobEnvelope, type SaveJobBody, SaveJobEnvelope } from './schemas.ts';
import type { ShopCards } from './shop-cards.ts';

const NO_JOB = ['job.missing', 'There is no such job.'] as const;
const UNUSABLE = [
  'job.problems',
  'The job holds something that cannot be used. Nothing was stored.',
] as const;

/** Everything about jobs. The store keeps the version rule; here requests are checked and outcomes become answers. */
export function jobsApi(store: Store, cards: ShopCards, now: () => string) {
  return new Hono<AppEnv>()
    .get(routes.listJobs.path, query(ListQuery), async (c) => {
      const { archived } = c.req.valid('query');
      const filter = archived === undefined ? {} : { archived: archived === 'true' };
      return c.json({ jobs: [...(await store.listJobs(filter))] }, 200);
    })
    .post(
      routes.createJob.path,
      jsonBody<typeof NewJobEnvelope, z.input<typeof NewJobBody>>(NewJobEnvelope),
      async (c) => {
        const { id, saveId, document } = c.req.valid('json');
        const checked = await checkDocument(document, cards);
        if (!checked.ok)
          return c.json({ error: errorOf(c, ...UNUSABLE), problems: [...checked.problems] }, 422);
        const outcome = await store.createJob({ id, saveId, document: checked.value, at: now() });
        if (outcome.outcome === 'saved')
          return c.json({ version: outcome.version, savedAt: outcome.savedAt }, 201);
        const error = errorOf(c, 'job.exists', 'There is already a job with this id. Nothing was stored.');
        return c.json({ error, conflict: { current: outcome.current, base: null } }, 409);
      },
    )
    .get(routes.getJob.path, async (c) => {
      const job = await store.getJob(idOf(c));
      return job === null ? c.json({ error: errorOf(c, ...NO_JOB) }, 404) : c.json(job, 200);
    })
    .put(
      routes.saveJob.path,
      jsonBody<typeof SaveJobEnvelope, z.input<typeof SaveJobBody>>(SaveJobEnvelope),
      async (c) => {
        const id = idOf(c);
        const { baseVersion, saveId, document } = c.req.valid('json');
        const checked = await checkDocument(document, cards);
        if (!checked.ok)
          return c.json({ error: errorOf(c, ...UNUSABLE), problems: [...checked.problems] }, 422);
        const save = { id, baseVersion, saveId, document: checked.value, at: now() };
        const outcome = await store.saveJob(save);
        if (outcome.outcome === 'missing') return c.json({ error: errorOf(c, ...NO_JOB) }, 404);
        if (outcome.outcome === 'saved')
          return c.json({ version: outcome.version, savedAt: outcome.savedAt }, 200);
        const { current, base } = outcome;
        const error = errorOf(
          c,
          'job.conflict',
          `The job was saved by someone else in between: you edited version ${baseVersion}, the newest is ` +
            `${current.version}. Nothing was stored.`,
        );
        return c.json({ error, conflict: { current, base } }, 409);
      },
    )
    .get(routes.jobFile.path, async (c) => {
      const job = await store.getJob(idOf(c));
      if (job === null) return c.json({ error: errorOf(c, ...NO_JOB) }, 404);
      c.header('Content-Disposition', attachment(job.document.title));
      return c.json(job.document, 200);
    })
    .get(routes.listVersions.path, async (c) => {
      const versions = await store.listVersions(idOf(c));
      if (versions === null) return c.json({ error: errorOf(c, ...NO_JOB) }, 404);
      return c.json({ versions: [...versions] }, 200);
    })
    .get(routes.getVersion.path, async (c) => {
      const version = await store.getVersion(idOf(c), versionOf(c));
      if (version !== null) return c.json(version, 200);
      const error = errorOf(c, 'version.missing', 'There is no such job, or it has no such version.');
      return c.json({ error }, 404);
    })
    .post(routes.archiveJob.path, async (c) => {
      const found = await store.archiveJob(idOf(c), now());
      return found ? c.json({ archived: true }, 200) : c.json({ error: errorOf(c, ...NO_JOB) }, 404);
    })
    .post(routes.restoreJob.path, async (c) => {
      const found = await store.restoreJob(idOf(c));
      return found ? c.json({ archived: false }, 200) : c.json({ error: errorOf(c, ...NO_JOB) }, 404);
    });
}
