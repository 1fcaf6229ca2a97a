import { Hono } from 'hono';
import type { z } from 'zod';
import { newShop } from '#store/shop.ts';
import type { Store } from '#store/store.ts';
import { type AppEnv, errorOf } from './context.ts';
import { jsonBody } from './read-request.ts';
import { routes } from './routes.ts';
import { SaveShopBody } from './schemas.ts';

export function shopApi(store: Store, now: () => string) {
  return new Hono<AppEnv>()
    .get(routes.getShop.path, async (c) =>
      c.json((await store.getShop()) ?? { version: 0, savedAt: null, shop: newShop() }, 200),
    )
    .put(
      routes.saveShop.path,
      jsonBody<typeof SaveShopBody, z.input<typeof SaveShopBody>>(SaveShopBody),
      async (c) => {
        const outcome = await store.saveShop({ ...c.req.valid('json'), at: now() });
        if (outcome.outcome === 'saved')
          return c.json({ version: outcome.version, savedAt: outcome.savedAt }, 200);
        const { current, base } = outcome;
        const error = errorOf(c, 'shop.conflict', 'The shop was saved in between. Nothing was stored.');
        return c.json({ error, conflict: { current, base } }, 409);
      },
    );
}
