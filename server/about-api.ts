/** What the server says about itself: is it well, and how is it spoken to. */
import { Hono } from 'hono';
import { jobSchema } from '#core/job/job-schema.ts';
import type { Store } from '#store/store.ts';
import { type AppEnv, errorOf } from './context.ts';
import { openApi } from './openapi.ts';
import { routes } from './routes.ts';

export function aboutApi(store: Store, version: string) {
  const description = openApi(version);
  const schema = jobSchema();
  return new Hono<AppEnv>()
    .get(routes.health.path, async (c) => {
      try {
        await store.getShop();
        return c.json({ ok: true as const, version }, 200);
      } catch {
        const error = errorOf(c, 'store.down', 'The database does not answer.');
        return c.json({ error }, 503);
      }
    })
    .get(routes.openapi.path, (c) => c.json(description, 200))
    .get(routes.jobSchema.path, (c) => {
      c.header('Content-Type', 'application/schema+json');
      return c.body(JSON.stringify(schema), 200);
    });
}
