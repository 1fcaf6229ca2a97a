import { Hono } from 'hono';
import type { z } from 'zod';
import { FrozenPourDocument, frozenText } from '#core/pour/run/frozen-pour.ts';
import type { Store } from '#store/store.ts';
import { type AppEnv, errorOf } from '../context.ts';
import { idOf, jsonBody, query } from '../read-request.ts';
import { runRoutes as routes } from './routes.ts';
import { ExchangeBody, OpenRunBody, RunsQuery } from './schemas.ts';

const NO_RUN = ['run.missing', 'There is no such run.'] as const;

/** An event cannot have happened longer ago than this: what its device says of the time is not believed then. */
const LONGEST_AGO_ms = 30 * 86_400_000;

/** Pours as they happened. Phones open runs and hand in events when there is a network; all of it may be sent again. */
export function runsApi(store: Store, now: () => string) {
  return new Hono<AppEnv>()
    .get(routes.listRuns.path, query(RunsQuery), async (c) =>
      c.json({ runs: [...(await store.listRuns(c.req.valid('query').job))] }, 200),
    )
    .put(
      routes.openRun.path,
      jsonBody<typeof OpenRunBody, z.input<typeof OpenRunBody>>(OpenRunBody),
      async (c) => {
        const { jobId, title, pour } = c.req.valid('json');
        const read = FrozenPourDocument.safeParse(pour);
        if (!read.success) {
          const [issue] = read.error.issues;
          const said = `The pour cannot be used: ${issue?.path.join('.') ?? ''} ${issue?.message ?? ''}. Nothing was stored.`;
          return c.json({ error: errorOf(c, 'run.pour', said) }, 422);
        }
        const { openedAt } = await store.openRun({ id: idOf(c), jobId, title, pour: read.data, at: now() });
        return c.json({ openedAt }, 200);
      },
    )
    .get(routes.getRun.path, async (c) => {
      const run = await store.getRun(idOf(c));
      if (run === null) return c.json({ error: errorOf(c, ...NO_RUN) }, 404);
      return c.json({ ...run, pour: JSON.parse(frozenText(run.pour)) as { readonly format: string } }, 200);
    })
    .post(
      routes.exchangeEvents.path,
      jsonBody<typeof ExchangeBody, z.input<typeof ExchangeBody>>(ExchangeBody),
      async (c) => {
        const id = idOf(c);
        const { after, now_ms, events } = c.req.valid('json');
        const server_ms = Date.parse(now());
        const last = await store.addRunEvents({
          id,
          events: events.map((event) => ({
            event,
            happenedAt: new Date(server_ms - agoOf(now_ms - event.wall_ms)).toISOString(),
          })),
        });
        if (last === null) return c.json({ error: errorOf(c, ...NO_RUN) }, 404);
        const newer = (await store.listRunEvents(id, after)) ?? [];
        return c.json(
          {
            last,
            now_ms: server_ms,
            events: newer.map(({ number, happenedAt, event }) => ({
              number,
              happened_ms: Date.parse(happenedAt),
              event,
            })),
          },
          200,
        );
      },
    );
}

/** How long ago an event was, by the one clock that knows both: the device's, however wrong it is. */
const agoOf = (by_device_ms: number) => Math.min(LONGEST_AGO_ms, Math.max(0, by_device_ms));
