import type { Server } from 'node:http';
import { type AddressInfo, isIP } from 'node:net';
import { createAdaptorServer } from '@hono/node-server';

/** What is served; an app has it. */
export interface Served {
  fetch(request: Request): Response | Promise<Response>;
}

export interface Listening {
  /** As a browser takes it: http://127.0.0.1:4180. */
  readonly address: string;
  /** Takes no new requests, lets running ones end (at most `grace_ms`), then closes. Repeating it is harmless. */
  stop(grace_ms?: number): Promise<void>;
}

/** How many ports after the wanted one are tried. */
const TRIES = 20;

/**
 * Puts an app on a port.
 * @param portGiven true: this port or none; false: the next free one will do.
 * @throws Error saying which port is taken and what to do; other errors of the operating system as they are.
 */
export async function listen(
  app: Served,
  host: string,
  port: number,
  portGiven: boolean,
): Promise<Listening> {
  const last = portGiven ? port : Math.min(port + TRIES, 65535);
  for (let next = port; next <= last; next += 1) {
    const server = createAdaptorServer({ fetch: (request) => app.fetch(request) }) as Server;
    try {
      await bound(server, host, next);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'EADDRINUSE') continue;
      throw error;
    }
    const actual = (server.address() as AddressInfo).port;
    const name = host === '0.0.0.0' || host === '::' ? '127.0.0.1' : isIP(host) === 6 ? `[${host}]` : host;
    return { address: `http://${name}:${actual}`, stop: stopper(server) };
  }
  throw new Error(
    portGiven
      ? `Port ${port} is taken by another program. Close it, or choose another port with --port.`
      : `Ports ${port} to ${last} are all taken. Choose one with --port.`,
  );
}

function bound(server: Server, host: string, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => {
      server.off('error', reject);
      resolve();
    });
  });
}

function stopper(server: Server): (grace_ms?: number) => Promise<void> {
  let stopped: Promise<void> | undefined;
  return (grace_ms = 5000) => {
    stopped ??= new Promise((resolve) => {
      const force = setTimeout(() => server.closeAllConnections(), grace_ms);
      server.close(() => {
        clearTimeout(force);
        resolve();
      });
      server.closeIdleConnections();
    });
    return stopped;
  };
}
