import { Hono } from 'hono';
import type { z } from 'zod';
import type { Store } from '#store/store.ts';
import { checkResin } from './check.ts';
import { type AppEnv, errorOf } from './context.ts';
import { jsonBody, resinIdOf } from './read-request.ts';
import { routes } from './routes.ts';
import { type NewResinBody, NewResinEnvelope, type SaveResinBody, SaveResinEnvelope } from './schemas.ts';
import type { ShopCards } from './shop-cards.ts';

const NO_RESIN = ['resin.missing', 'There is no such resin card.'] as const;
const UNUSABLE = [
  'resin.problems',
  'The resin card holds something that cannot be used. Nothing was stored.',
] as const;

/** Everything about resin cards; as for jobs, the store keeps the version rule. */
export function resinsApi(store: Store, cards: ShopCards, now: () => string) {
  return new Hono<AppEnv>()
    .get(routes.listResins.path, async (c) => c.json({ resins: [...(await store.listResins())] }, 200))
    .post(
      routes.createResin.path,
      jsonBody<typeof NewResinEnvelope, z.input<typeof NewResinBody>>(NewResinEnvelope),
      async (c) => {
        const { saveId, document } = c.req.valid('json');
        const checked = checkResin(document, cards);
        if (!checked.ok)
          return c.json({ error: errorOf(c, ...UNUSABLE), problems: [...checked.problems] }, 422);
        const { id } = checked.value;
        const outcome = await store.createResin({ id, saveId, document: checked.value, at: now() });
        if (outcome.outcome === 'saved')
          return c.json({ version: outcome.version, savedAt: outcome.savedAt }, 201);
        const error = errorOf(c, 'resin.exists', 'There is already a card with this id. Nothing was stored.');
        return c.json({ error, conflict: { current: outcome.current, base: null } }, 409);
      },
    )
    .get(routes.getResin.path, async (c) => {
      const resin = await store.getResin(resinIdOf(c));
      return resin === null ? c.json({ error: errorOf(c, ...NO_RESIN) }, 404) : c.json(resin, 200);
    })
    .put(
      routes.saveResin.path,
      jsonBody<typeof SaveResinEnvelope, z.input<typeof SaveResinBody>>(SaveResinEnvelope),
      async (c) => {
        const id = resinIdOf(c);
        const { baseVersion, saveId, document } = c.req.valid('json');
        const checked = checkResin(document, cards, id);
        if (!checked.ok)
          return c.json({ error: errorOf(c, ...UNUSABLE), problems: [...checked.problems] }, 422);
        const save = { id, baseVersion, saveId, document: checked.value, at: now() };
        const outcome = await store.saveResin(save);
        if (outcome.outcome === 'missing') return c.json({ error: errorOf(c, ...NO_RESIN) }, 404);
        if (outcome.outcome === 'saved')
          return c.json({ version: outcome.version, savedAt: outcome.savedAt }, 200);
        const { current, base } = outcome;
        const error = errorOf(
          c,
          'resin.conflict',
          `The card was saved by someone else in between: you edited version ${baseVersion}, the newest is ` +
            `${current.version}. Nothing was stored.`,
        );
        return c.json({ error, conflict: { current, base } }, 409);
      },
    )
    .post(routes.archiveResin.path, async (c) => {
      const found = await store.archiveResin(resinIdOf(c), now());
      return found ? c.json({ archived: true }, 200) : c.json({ error: errorOf(c, ...NO_RESIN) }, 404);
    })
    .post(routes.restoreResin.path, async (c) => {
      const found = await store.restoreResin(resinIdOf(c));
      return found ? c.json({ archived: false }, 200) : c.json({ error: errorOf(c, ...NO_RESIN) }, 404);
    })
    .get(routes.fittedResins.path, async (c) => c.json({ cards: [...(await cards.all())] }, 200));
}
