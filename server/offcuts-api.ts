import { Hono } from 'hono';
import type { z } from 'zod';
import type { Store } from '#store/store.ts';
import { type AppEnv, errorOf } from './context.ts';
import { jsonBody } from './read-request.ts';
import { routes } from './routes.ts';
import { MovementBody } from './schemas.ts';

/** Offcuts on the shelf; the store keeps the rule that only what is there can be taken. */
export function offcutsApi(store: Store, now: () => string) {
  return new Hono<AppEnv>()
    .get(routes.listOffcutMovements.path, async (c) =>
      c.json({ movements: [...(await store.listOffcutMovements())] }, 200),
    )
    .post(
      routes.moveOffcuts.path,
      jsonBody<typeof MovementBody, z.input<typeof MovementBody>>(MovementBody),
      async (c) => {
        const outcome = await store.moveOffcuts({ ...c.req.valid('json'), at: now() });
        if (outcome.outcome === 'saved')
          return c.json({ number: outcome.number, savedAt: outcome.savedAt }, 201);
        const [first] = outcome.problems;
        const said = `${first?.message ?? 'The offcuts cannot be moved.'} Nothing was stored.`;
        return c.json({ error: errorOf(c, 'offcuts.refused', said), problems: [...outcome.problems] }, 422);
      },
    );
}
