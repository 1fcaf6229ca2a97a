import type { Context } from 'hono';

/** What the app's first middleware gives every request. */
export interface AppEnv {
  Variables: { requestId: string };
}

/** The `error` part of every answer that is not what was asked for. */
export function errorOf(c: Context<AppEnv>, code: string, message: string) {
  return { id: c.get('requestId'), code, message };
}
