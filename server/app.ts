import { type Context, Hono } from 'hono';
import { compress } from 'hono/compress';
import { HTTPException } from 'hono/http-exception';
import type { Store } from '#store/store.ts';
import { aboutApi } from './about-api.ts';
import { calendarApi } from './calendar/calendar-api.ts';
import { type AppEnv, errorOf } from './context.ts';
import { hostGuard, originGuard, securityHeaders } from './guards.ts';
import { jobsApi } from './jobs-api.ts';
import { lookApi } from './look/look-api.ts';
import { offcutsApi } from './offcuts-api.ts';
import { Refusal } from './refusal.ts';
import { resinsApi } from './resins-api.ts';
import { type Route, routes } from './routes.ts';
import { runsApi } from './runs/runs-api.ts';
import { setOutApi } from './set-out/set-out-api.ts';
import { shopApi } from './shop-api.ts';
import { shopCards } from './shop-cards.ts';
import { staticFiles } from './static-files.ts';

export interface AppParts {
  readonly store: Store;
  /** The time, ISO 8601 in UTC. */
  readonly now: () => string;
  /** Of Pourwright itself. */
  readonly version: string;
  /** Ids of requests, for answers and the log. */
  readonly newId?: () => string;
  /** Folder of the built web app. */
  readonly webRoot?: string;
  /** Host names to answer under besides loopback ones; see `hostGuard`. */
  readonly hosts?: readonly string[];
  /** Gets one line for each request that failed: no bodies, no headers, no query. */
  readonly log?: (line: string) => void;
}

/** The whole server as one function from request to answer; `main.ts` puts it on a port, tests call `app.request`. */
export function createApp(parts: AppParts) {
  const { store, now, version, newId = () => crypto.randomUUID(), log = () => {} } = parts;
  const app = new Hono<AppEnv>();
  const cards = shopCards(store, (line) => log(`${now()} ${line}`));

  app.use(async (c, next) => {
    c.set('requestId', newId());
    await next();
    if (c.res.status >= 400)
      log(
        `${now()} ${c.res.status} ${c.req.method} ${new URL(c.req.url).pathname.slice(0, 200)} ` +
          `id=${c.get('requestId')}${c.error === undefined ? '' : ` ${sayError(c.error)}`}`,
      );
  });
  app.use(securityHeaders);
  app.use(hostGuard(parts.hosts ?? []));
  app.use(originGuard);
  app.use('/api/*', compress());
  app.use('/api/*', async (c, next) => {
    await next();
    c.header('Cache-Control', 'no-store');
  });

  const withApi = app
    .route('/', jobsApi(store, cards, now))
    .route('/', setOutApi(store, now))
    .route('/', lookApi(store, cards, now))
    .route('/', calendarApi(store, cards))
    .route('/', resinsApi(store, cards, now))
    .route('/', shopApi(store, now))
    .route('/', offcutsApi(store, now))
    .route('/', runsApi(store, now))
    .route('/', aboutApi(store, version));

  app.all('/api/*', (c) => refuseAddress(c));
  app.all('/api', (c) => refuseAddress(c));
  app.get('*', staticFiles(parts.webRoot));
  app.notFound((c) =>
    c.json({ error: errorOf(c, 'page.missing', 'There is nothing at this address.') }, 404),
  );
  app.onError((error, c) => {
    if (error instanceof Refusal)
      return c.json({ error: errorOf(c, error.code, error.message) }, error.status);
    if (error instanceof HTTPException)
      return c.json({ error: errorOf(c, 'request.refused', 'The request was refused.') }, error.status);
    const message = 'Something went wrong in the server; nothing you sent is to blame. The log has the id.';
    return c.json({ error: errorOf(c, 'server.fault', message) }, 500);
  });
  return withApi;
}

/** For the typed client: `hc<App>(address)`. */
export type App = ReturnType<typeof createApp>;

/** No such address under /api, or not with this method. */
function refuseAddress(c: Context<AppEnv>) {
  const methods = Object.values<Route>(routes)
    .filter((route) => matches(route.path, c.req.path))
    .map((route) => route.method.toUpperCase());
  if (methods.length === 0)
    return c.json({ error: errorOf(c, 'api.missing', 'The API has nothing at this address.') }, 404);
  c.header('Allow', methods.join(', '));
  const message = `${c.req.method.slice(0, 20)} is not possible here. Allowed: ${methods.join(', ')}.`;
  return c.json({ error: errorOf(c, 'api.method', message) }, 405);
}

function matches(pattern: string, path: string): boolean {
  const [want, got] = [pattern.split('/'), path.split('/')];
  return (
    want.length === got.length &&
    want.every((part, i) => (part.startsWith(':') ? got[i] !== '' : part === got[i]))
  );
}

/** For the log, one line. A refusal says its code; a fault its name, message and where, but never what was sent. */
function sayError(error: Error): string {
  if (error instanceof Refusal) return error.code;
  const where =
    error.stack
      ?.split('\n')
      .find((line) => line.startsWith('    at '))
      ?.trim() ?? '';
  return `${error.name}: ${error.message.split('\n')[0]?.slice(0, 300)} ${where}`;
}
