/** An app over an empty store in memory, for tests. */
import { openSqlite } from '#store/sqlite.ts';
import type { Store } from '#store/store.ts';
import { type AppParts, createApp } from './app.ts';

export const AT = '2026-05-14T09:00:00.000Z';

export async function testApp(parts: Partial<AppParts> = {}) {
  const store: Store = parts.store ?? (await openSqlite(':memory:', AT));
  const log: string[] = [];
  const app = createApp({ now: () => AT, version: '0.0.0', log: (line) => log.push(line), ...parts, store });
  /** A request as a program on this computer sends it. */
  const call = async (method: string, path: string, body?: unknown, headers: Record<string, string> = {}) => {
    const response = await app.request(`http://localhost:4180${path}`, {
      method,
      headers: { ...(body === undefined ? {} : { 'content-type': 'application/json' }), ...headers },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    });
    const text = await response.text();
    const json = /json/.test(response.headers.get('content-type') ?? '');
    return { status: response.status, headers: response.headers, text, body: json ? JSON.parse(text) : null };
  };
  return { app, store, log, call };
}
